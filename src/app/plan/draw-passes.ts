/** Passes of one set: thin lines with their numbers at the start and an arrowhead on the way. */
import { isGuided } from '../../guide/string-turns';
import type { Leg, Pass } from '../../mowing/model';
import type { Point } from '../../geometry/point';
import { polylineAt, polylineLength, type Polyline } from '../../geometry/polyline';
import { COLOUR } from './colours';
import { drawGuides } from './draw-guides';
import { placeLabels, type Box } from './labels';
import type { PaintJob } from './paint';
import { setOf } from './pass-sets';

type Place = (p: Point) => Point;

export function drawPasses(ctx: CanvasRenderingContext2D, job: PaintJob, place: Place): void {
  const set = setOf(job.plan, job.passSet);
  const legs = set?.legs ?? [];
  const passes = set?.passes ?? [];
  drawTravel(ctx, legs, place);
  ctx.strokeStyle = COLOUR.ink;
  ctx.lineWidth = 1.5;
  ctx.lineCap = 'butt';
  for (const p of passes) stroke(ctx, p.line, place);
  ctx.fillStyle = COLOUR.ink;
  for (const p of passes) passArrow(ctx, p, place);
  drawLifts(ctx, legs, place);
  const hand = passes.find((p) => p.number === job.pass?.number && p.machine === job.pass.machine);
  if (hand) drawInHand(ctx, hand, place, job.viewport.scale);
  const taken: Box[] = [];
  if (set && passes.some((p) => isGuided(job.plan.guides, p.patch, p.line))) {
    drawGuides(ctx, job, taken, place);
  }
  drawNumbers(ctx, job, passes, hand, taken, place);
  drawGate(ctx, place(job.project.mowing.gate));
}

/** A line of the field, as the context strokes. */
export function stroke(ctx: CanvasRenderingContext2D, line: Polyline, place: Place): void {
  ctx.beginPath();
  trace(ctx, line, place);
  ctx.stroke();
}

export function trace(ctx: CanvasRenderingContext2D, line: Polyline, place: Place): void {
  line.forEach((p, i) => {
    const s = place(p);
    if (i === 0) ctx.moveTo(s.x, s.y);
    else ctx.lineTo(s.x, s.y);
  });
}

function drawTravel(ctx: CanvasRenderingContext2D, legs: readonly Leg[], place: Place): void {
  ctx.strokeStyle = COLOUR.ink;
  ctx.lineWidth = 1;
  ctx.globalAlpha = 0.75;
  for (const l of legs) if (l.kind === 'turn') stroke(ctx, l.points, place);
  ctx.globalAlpha = 1;
  ctx.lineCap = 'round';
  ctx.lineWidth = 2.4;
  ctx.setLineDash([0.1, 5.5]);
  for (const l of legs) if (l.kind === 'run') stroke(ctx, l.points, place);
  ctx.setLineDash([]);
}

/** A solid head at 55 % of the pass, when it is long enough on screen to tell it from a turn. */
function passArrow(ctx: CanvasRenderingContext2D, pass: Pass, place: Place): void {
  const length = polylineLength(pass.line);
  const tip = place(polylineAt(pass.line, length * 0.55));
  const tail = place(polylineAt(pass.line, Math.max(0, length * 0.55 - 1)));
  const ends = [place(pass.line[0]!), place(pass.line[pass.line.length - 1]!)] as const;
  if (Math.hypot(ends[0].x - ends[1].x, ends[0].y - ends[1].y) < 20 && length < 60) return;
  head(ctx, tip, Math.atan2(tip.y - tail.y, tip.x - tail.x), 8);
}

/** A solid arrowhead about `at`, pixels, turned by `angle` on the screen. */
export function head(
  ctx: CanvasRenderingContext2D,
  at: Point,
  angle: number,
  length: number,
): void {
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  const half = length * 0.42;
  ctx.beginPath();
  ctx.moveTo(at.x + (c * length) / 2, at.y + (s * length) / 2);
  ctx.lineTo(at.x - (c * length) / 2 - s * half, at.y - (s * length) / 2 + c * half);
  ctx.lineTo(at.x - (c * length) / 2 + s * half, at.y - (s * length) / 2 - c * half);
  ctx.fill();
}

/** A small hollow square where the reels lift: at the start of every turn. */
function drawLifts(ctx: CanvasRenderingContext2D, legs: readonly Leg[], place: Place): void {
  ctx.fillStyle = COLOUR.sheet;
  ctx.strokeStyle = COLOUR.ink;
  ctx.lineWidth = 1.1;
  for (const l of legs) {
    if (l.kind !== 'turn' || !l.points[0]) continue;
    const p = place(l.points[0]);
    ctx.fillRect(p.x - 2.2, p.y - 2.2, 4.4, 4.4);
    ctx.strokeRect(p.x - 2.2, p.y - 2.2, 4.4, 4.4);
  }
}

/** The pass in hand, over the width it mows when `scale` (pixels per foot) is given. */
export function drawInHand(
  ctx: CanvasRenderingContext2D,
  pass: Pass,
  place: Place,
  scale: number | null,
): void {
  ctx.lineCap = 'butt';
  ctx.strokeStyle = COLOUR.flag;
  if (scale !== null) {
    ctx.globalAlpha = 0.22;
    ctx.lineWidth = Math.max(4, pass.widthFt * scale);
    stroke(ctx, pass.line, place);
    ctx.globalAlpha = 1;
  }
  ctx.strokeStyle = COLOUR.white;
  ctx.lineWidth = 6;
  stroke(ctx, pass.line, place);
  ctx.strokeStyle = COLOUR.flag;
  ctx.lineWidth = 2.6;
  stroke(ctx, pass.line, place);
  const length = polylineLength(pass.line);
  const tip = place(pass.line[pass.line.length - 1]!);
  const tail = place(polylineAt(pass.line, Math.max(0, length - 1)));
  ctx.fillStyle = COLOUR.flag;
  head(ctx, tip, Math.atan2(tip.y - tail.y, tip.x - tail.x), 15);
}

function drawNumbers(
  ctx: CanvasRenderingContext2D,
  job: PaintJob,
  passes: readonly Pass[],
  hand: Pass | undefined,
  taken: Box[],
  place: Place,
): void {
  const items = passes.map((p) => {
    const at = place(p.line[0]!);
    const next = place(polylineAt(p.line, Math.min(p.lengthFt, 12)));
    return {
      id: `${p.number}`,
      at,
      away: { x: at.x - next.x, y: at.y - next.y },
      first: p === hand,
    };
  });
  placeLabels(ctx, items, taken, job.size, {
    font: '600 12px "Archivo Variable"',
    plate: 0.86,
    rings: 3,
  });
}

/** Where machines come on. */
export function drawGate(ctx: CanvasRenderingContext2D, at: Point): void {
  ctx.fillStyle = COLOUR.ink;
  ctx.strokeStyle = COLOUR.white;
  ctx.lineWidth = 2;
  ctx.strokeRect(at.x - 6, at.y - 6, 12, 12);
  ctx.fillRect(at.x - 6, at.y - 6, 12, 12);
  ctx.font = '650 13px "Archivo Variable"';
  ctx.textAlign = 'center';
  ctx.lineWidth = 3.5;
  ctx.strokeStyle = COLOUR.sheet;
  ctx.strokeText('Gate', at.x, at.y + 20);
  ctx.fillText('Gate', at.x, at.y + 20);
}
