/**
 * A picture of the lay as far as it is made. Going on in time paints what has been added; going back
 * starts from the nearest kept picture. Either way it is the same picture.
 */
import { COLOUR } from '../plan/colours';
import { toFeet } from '../plan/draw-field';
import { toneHex } from '../../view/colour';
import { jitter, layColour } from '../plan/grass';
import type { Size, Viewport } from '../plan/viewport';
import { stripsDone, type LayStrip } from './lay-strips';

/** How a picture is made; another view means another picture. */
export interface LayView {
  readonly strips: readonly LayStrip[];
  readonly viewport: Viewport;
  readonly size: Size;
  readonly dpr: number;
}

interface Kept {
  readonly done: number;
  readonly canvas: HTMLCanvasElement;
}

/** Pictures kept on the way, beside the one that is shown. */
const KEYFRAMES = 6;

export class LayCanvas {
  private view: LayView | null = null;
  private canvas: HTMLCanvasElement | null = null;
  private done = 0;
  private kept: Kept[] = [];

  /** The picture of every strip finished at `clockS`. */
  at(view: LayView, clockS: number): HTMLCanvasElement {
    const canvas = this.canvasOf(view);
    const wanted = stripsDone(view.strips, clockS);
    if (wanted < this.done) this.goBack(canvas, wanted);
    const every = Math.ceil(view.strips.length / (KEYFRAMES + 1));
    const ctx = canvas.getContext('2d');
    while (ctx && this.done < wanted) {
      paintStrip(ctx, view, view.strips[this.done]!, this.done);
      this.done += 1;
      if (this.done % every === 0) this.keep(canvas);
    }
    return canvas;
  }

  private canvasOf(view: LayView): HTMLCanvasElement {
    if (this.canvas && this.view && isSame(this.view, view)) return this.canvas;
    this.view = view;
    this.kept = [];
    this.done = 0;
    this.canvas = blank(view);
    return this.canvas;
  }

  private goBack(canvas: HTMLCanvasElement, wanted: number): void {
    const from = this.kept.filter((k) => k.done <= wanted).pop();
    const ctx = canvas.getContext('2d');
    if (!ctx) return;
    ctx.save();
    ctx.setTransform(1, 0, 0, 1, 0, 0);
    ctx.globalCompositeOperation = 'copy';
    ctx.drawImage(from?.canvas ?? blankLike(canvas), 0, 0);
    ctx.restore();
    this.done = from?.done ?? 0;
  }

  private keep(canvas: HTMLCanvasElement): void {
    if (this.kept.some((k) => k.done >= this.done)) return;
    const copy = blankLike(canvas);
    copy.getContext('2d')?.drawImage(canvas, 0, 0);
    this.kept.push({ done: this.done, canvas: copy });
  }
}

const isSame = (a: LayView, b: LayView): boolean =>
  a.strips === b.strips &&
  a.dpr === b.dpr &&
  a.size.width === b.size.width &&
  a.size.height === b.size.height &&
  a.viewport.cx === b.viewport.cx &&
  a.viewport.cy === b.viewport.cy &&
  a.viewport.scale === b.viewport.scale;

function blank({ viewport, size, dpr }: LayView): HTMLCanvasElement {
  const canvas = document.createElement('canvas');
  canvas.width = Math.round(size.width * dpr);
  canvas.height = Math.round(size.height * dpr);
  const ctx = canvas.getContext('2d');
  if (ctx) toFeet(ctx, viewport, size, dpr);
  return canvas;
}

function blankLike(like: HTMLCanvasElement): HTMLCanvasElement {
  const canvas = document.createElement('canvas');
  canvas.width = like.width;
  canvas.height = like.height;
  return canvas;
}

type Line = LayStrip['points'];

/** One strip, whole or (`line`) as far as it is made. The context is in feet. */
export function paintStrip(
  ctx: CanvasRenderingContext2D,
  { viewport }: LayView,
  strip: LayStrip,
  index: number,
  line: Line = strip.points,
): void {
  ctx.lineCap = 'butt';
  ctx.lineJoin = 'round';
  ctx.lineWidth = strip.widthFt;
  ctx.strokeStyle = strip.tone
    ? toneHex(strip.tone.shade)
    : layColour(strip.lean, strip.phase === 'graphic' || strip.phase === 'edge');
  ctx.globalAlpha = strip.tone?.over ?? 1;
  ctx.beginPath();
  const first = beforeStart(line, SEAM_PX / viewport.scale);
  ctx.moveTo(first.x, first.y);
  for (const p of line) ctx.lineTo(p.x, p.y);
  ctx.stroke();
  ctx.globalAlpha = 1;
  if (viewport.scale >= HAIRS_FROM) paintHairs(ctx, viewport, strip, index, line);
}

/** A strip begins this much early, so that no seam shows between two of one pass. */
const SEAM_PX = 0.6;

function beforeStart(line: Line, by: number): { x: number; y: number } {
  const [a, b] = [line[0]!, line[1] ?? line[0]!];
  const long = Math.hypot(b.x - a.x, b.y - a.y) || 1;
  return { x: a.x - ((b.x - a.x) / long) * by, y: a.y - ((b.y - a.y) / long) * by };
}

/** Pixels per foot from which blades are drawn; every how many square feet of strip there is one. */
const HAIRS_FROM = 1.2;
const HAIR_SQ_FT = 16;
const LEAST_HAIR = 1.5;

/** Short strokes along the lay, where they would be in the whole strip. */
function paintHairs(
  ctx: CanvasRenderingContext2D,
  viewport: Viewport,
  strip: LayStrip,
  index: number,
  line: Line,
): void {
  ctx.beginPath();
  for (let i = 1; i < line.length; i++) {
    const a = line[i - 1]!;
    const b = line[i]!;
    const whole = strip.points[i]!;
    const long = Math.hypot(whole.x - a.x, whole.y - a.y);
    const made = Math.hypot(b.x - a.x, b.y - a.y);
    const want = (long * strip.widthFt) / HAIR_SQ_FT;
    const count = Math.floor(want + jitter(index, i, 5));
    for (let k = 0; k < count; k++) {
      const t = jitter(index, i, 11 + k) * long;
      const side = (jitter(index, i, 41 + k) - 0.5) * strip.widthFt * 0.86;
      const reach = Math.min(Math.max(long - t, LEAST_HAIR), 1.6 + 3.4 * jitter(index, i, 71 + k));
      if (t > made) continue;
      const u = { x: (whole.x - a.x) / long, y: (whole.y - a.y) / long };
      const x = a.x + u.x * t - u.y * side;
      const y = a.y + u.y * t + u.x * side;
      ctx.moveTo(x, y);
      ctx.lineTo(x + u.x * reach, y + u.y * reach);
    }
  }
  const light = strip.lean <= 0;
  ctx.globalAlpha = light ? 0.34 : 0.16;
  ctx.strokeStyle = light ? COLOUR.white : COLOUR.ink;
  ctx.lineWidth = Math.min(0.9, 0.5 + viewport.scale / 12) / viewport.scale;
  ctx.stroke();
  ctx.globalAlpha = 1;
}
