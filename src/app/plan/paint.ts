/** Paints one frame of the plan: paper, ground, then what the open stage adds. */
import type { Region } from '../../geometry/region';
import type { Plan } from '../../plan/model';
import type { Project } from '../../project/model';
import type { Stage } from '../state/stages';
import { drawDrive, drawDrivenGround } from '../drive/draw-drive';
import { COLOUR } from './colours';
import {
  drawFurniture,
  drawGround,
  drawLayArrows,
  drawPaper,
  toFeet,
  toPixels,
  type GrassStyle,
} from './draw-field';
import { drawPasses } from './draw-passes';
import { drawStakes } from './draw-stakes';
import { pathOfRegion } from './grass';
import type { Scene } from './scene';
import { toScreen, type Size, type Viewport } from './viewport';

export interface PaintJob {
  readonly stage: Stage;
  readonly plan: Plan;
  readonly project: Project;
  readonly scene: Scene;
  readonly viewport: Viewport;
  readonly size: Size;
  readonly ghost: { readonly graphic: Region; readonly quiet: Region } | null;
  readonly stake: string | null;
  readonly pass: { readonly machine: string; readonly number: number } | null;
  readonly passSet: string | null;
  /** Seconds into the visit at which the drive is shown; null for the whole plan. */
  readonly driveAt: number | null;
}

const STYLE: Readonly<Record<Stage, GrassStyle>> = {
  ground: { calm: true, arrows: false, strength: 0.8 },
  design: { calm: false, arrows: true, strength: 1 },
  look: { calm: false, arrows: false, strength: 1 },
  passes: { calm: false, arrows: false, strength: 0.5 },
  stakes: { calm: true, arrows: false, strength: 1 },
  hours: { calm: false, arrows: false, strength: 1 },
  packet: { calm: false, arrows: false, strength: 1 },
};

/** Sizes the canvas to the screen's own pixels and gives its context. */
export function prepare(
  canvas: HTMLCanvasElement,
  size: Size,
): { ctx: CanvasRenderingContext2D; dpr: number } | null {
  const dpr = Math.min(3, window.devicePixelRatio || 1);
  const width = Math.round(size.width * dpr);
  const height = Math.round(size.height * dpr);
  if (canvas.width !== width || canvas.height !== height) {
    canvas.width = width;
    canvas.height = height;
  }
  const ctx = canvas.getContext('2d');
  return ctx && { ctx, dpr };
}

export function paint(canvas: HTMLCanvasElement, job: PaintJob): void {
  const ready = prepare(canvas, job.size);
  if (!ready) return;
  const { ctx, dpr } = ready;
  const style = STYLE[job.stage];
  const driveAt = job.stage === 'passes' ? job.driveAt : null;
  const place = (p: { x: number; y: number }) => toScreen(job.viewport, job.size, p);
  toPixels(ctx, dpr);
  drawPaper(ctx, job.viewport, job.size);
  toFeet(ctx, job.viewport, job.size, dpr);
  if (driveAt === null) drawGround(ctx, job.scene, job.viewport, style);
  else drawDrivenGround(ctx, job, driveAt, dpr);
  if (job.ghost) drawGhost(ctx, job, job.ghost);
  drawFurniture(ctx, job.scene, job.viewport);
  toPixels(ctx, dpr);
  if (style.arrows) drawLayArrows(ctx, job.scene, place);
  if (job.stage === 'passes' && driveAt === null) drawPasses(ctx, job, place);
  if (driveAt !== null) drawDrive(ctx, job, driveAt, place, dpr);
  if (job.stage === 'stakes') drawStakes(ctx, job, place);
}

/** The graphic where it is now, until the plan catches up; the old one sinks into its ground. */
function drawGhost(
  ctx: CanvasRenderingContext2D,
  job: PaintJob,
  ghost: NonNullable<PaintJob['ghost']>,
): void {
  const quiet = job.scene.grass.find((g) => g.kind === 'quiet');
  const letter = job.scene.grass.find((g) => g.kind === 'graphic');
  const ground = quiet?.colour ?? COLOUR.light;
  ctx.fillStyle = ground;
  for (const g of job.scene.grass) if (g.graphic) ctx.fill(g.path, 'evenodd');
  ctx.fill(pathOfRegion(ghost.quiet), 'evenodd');
  ctx.fillStyle = letter?.colour ?? COLOUR.letterDark;
  ctx.fill(pathOfRegion(ghost.graphic), 'evenodd');
}
