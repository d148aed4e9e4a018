/** The stakes stage: strings and swings, stakes by round, the stake in hand with its two ties. */
import { arcBetween, pathFlatten } from '../../geometry/arc';
import type { Point } from '../../geometry/point';
import { polylineNearest } from '../../geometry/polyline';
import { bendArc } from '../../stakeout/bend';
import type { Contour, OutlinePiece, Stake, StakePlan, Tie } from '../../stakeout/model';
import { isShort, methodControls } from '../../stakeout/ties';
import { compact } from '../text/figures';
import { COLOUR } from './colours';
import { trace } from './draw-passes';
import { overlap, placeLabels, type Box } from './labels';
import type { PaintJob } from './paint';
import type { Size } from './viewport';
import { disc, pin, ring, triangle, diamond } from './symbols';

type Place = (p: Point) => Point;
type Points = ReadonlyMap<string, Point>;

/** Every named point that tapes or pieces refer to. */
export function namedPoints(stakes: StakePlan): Points {
  const points = new Map<string, Point>();
  for (const c of stakes.controls) points.set(c.id, c.at);
  for (const s of stakes.stakes) points.set(s.id, s.at);
  return points;
}

export function drawStakes(ctx: CanvasRenderingContext2D, job: PaintJob, place: Place): void {
  const plan = job.plan.stakes;
  if (!plan) return;
  const points = namedPoints(plan);
  const hand = plan.stakes.find((s) => s.id === job.stake);
  const round = hand?.round ?? null;
  drawPieces(ctx, plan.contours, points, place, hand?.id);
  const held = hand ? heldAt(hand) : [];
  const taken: Box[] = [];
  if (hand) drawTies(ctx, hand, points, place, taken);
  for (const s of plan.stakes) drawStake(ctx, s, place(s.at), round, held);
  for (const c of plan.controls) {
    if (c.kind === 'fixed') triangle(ctx, place(c.at), 9, { held: held.includes(c.id), bar: true });
  }
  if (hand) {
    ring(ctx, place(hand.at));
    drawPlates(ctx, job, hand, points, place, taken);
  }
  drawNames(ctx, job, plan, hand, place, taken);
}

/** The two controls whose tapes meet at the stake, or the ends of the line it is set from. */
export const heldAt = (stake: Stake): readonly string[] => methodControls(stake.set);

/** Readings pulled straight from a control or stake to the stake. */
function straightPulls({ set }: Stake): readonly Tie[] {
  if (set.method === 'ties') return [set.tie1, set.tie2];
  return set.method === 'line' ? [set.tie1] : [];
}

/** A piece of outline as points in feet. */
export function pieceLine(piece: OutlinePiece, points: Points): readonly Point[] {
  if (piece.kind === 'circle') {
    const c = points.get(piece.pin);
    if (!c) return [];
    const arc = {
      kind: 'arc',
      centre: c,
      radius: piece.radius.ft,
      startAngle: 0,
      sweep: 2 * Math.PI,
    } as const;
    return pathFlatten([arc], false);
  }
  const from = points.get(piece.from);
  const to = points.get(piece.to);
  if (!from || !to) return [];
  if (piece.kind === 'string') return [from, to];
  if (piece.kind === 'bend') {
    return pathFlatten([bendArc(from, to, piece.offset.ft, piece.side)], false);
  }
  const centre = points.get(piece.pin);
  if (!centre) return [from, to];
  return pathFlatten([arcBetween(centre, from, to, piece.sweep === 'ccw' ? 1 : -1)], false);
}

function drawPieces(
  ctx: CanvasRenderingContext2D,
  contours: readonly Contour[],
  points: Points,
  place: Place,
  hand: string | undefined,
): void {
  const pieces = contours.flatMap((c) => c.pieces);
  ctx.lineCap = 'round';
  ctx.lineJoin = 'round';
  ctx.strokeStyle = COLOUR.ink;
  ctx.lineWidth = 0.8;
  for (const near of [false, true]) {
    ctx.globalAlpha = near ? 0.8 : 0.16;
    ctx.beginPath();
    for (const p of pieces) {
      if (p.kind === 'swing' && near === touches(p, hand)) traceRadii(ctx, p, points, place);
    }
    ctx.stroke();
  }
  ctx.globalAlpha = 1;
  ctx.lineWidth = 1.8;
  ctx.setLineDash([8, 3.5, 0.1, 3.5]);
  ctx.beginPath();
  for (const p of pieces) {
    if (p.kind === 'swing' || p.kind === 'circle') trace(ctx, pieceLine(p, points), place);
  }
  ctx.stroke();
  ctx.setLineDash([3, 3]);
  ctx.beginPath();
  for (const p of pieces) if (p.kind === 'bend') trace(ctx, pieceLine(p, points), place);
  ctx.stroke();
  ctx.setLineDash([]);
  ctx.lineWidth = 2;
  ctx.beginPath();
  for (const p of pieces) if (p.kind === 'string') trace(ctx, pieceLine(p, points), place);
  ctx.stroke();
}

/** Whether the swing starts, ends or turns at the stake in hand: its radii stand out. */
const touches = (p: Extract<OutlinePiece, { kind: 'swing' }>, hand: string | undefined): boolean =>
  hand !== undefined && [p.from, p.to, p.pin].includes(hand);

function traceRadii(
  ctx: CanvasRenderingContext2D,
  piece: Extract<OutlinePiece, { kind: 'swing' }>,
  points: Points,
  place: Place,
): void {
  const centre = points.get(piece.pin);
  const from = points.get(piece.from);
  const to = points.get(piece.to);
  if (centre && from && to) trace(ctx, [from, centre, to], place);
}

function drawStake(
  ctx: CanvasRenderingContext2D,
  s: Stake,
  at: Point,
  round: number | null,
  held: readonly string[],
): void {
  const now = round === null || s.round === round;
  if (s.kind === 'control') triangle(ctx, at, 9, { held: held.includes(s.id), bar: false });
  else if (s.kind === 'pin') pin(ctx, at, now ? 5 : 3.6);
  else if (s.kind === 'guide') diamond(ctx, at, now ? 6 : 4);
  else disc(ctx, at, now ? 4 : 2.6);
}

function drawTies(
  ctx: CanvasRenderingContext2D,
  hand: Stake,
  points: Points,
  place: Place,
  taken: Box[],
): void {
  const { set } = hand;
  const target = place(hand.at);
  const check = points.get(hand.check.from);
  if (check) dashedCheck(ctx, place(check), target);
  if (set.method === 'line') {
    const far = points.get(set.lineTo);
    if (far) dashedCheck(ctx, place(far), target);
  }
  if (isShort(set)) drawOffset(ctx, hand, points, place, taken);
  for (const tie of straightPulls(hand)) {
    const from = points.get(tie.from);
    if (from) cased(ctx, place(from), target, taken);
  }
}

/** The short line, and the offset from its foot. */
function drawOffset(
  ctx: CanvasRenderingContext2D,
  hand: Stake,
  points: Points,
  place: Place,
  taken: Box[],
): void {
  const [a, b] = heldAt(hand).map((id) => points.get(id));
  if (!a || !b) return;
  dashedCheck(ctx, place(a), place(b));
  cased(ctx, place(polylineNearest([a, b], hand.at).point), place(hand.at), taken);
}

function drawPlates(
  ctx: CanvasRenderingContext2D,
  job: PaintJob,
  hand: Stake,
  points: Points,
  place: Place,
  taken: Box[],
): void {
  const target = place(hand.at);
  const controls = job.plan.stakes?.controls ?? [];
  const signs = [...controls.map((c) => place(c.at)), target].map(({ x, y }): Box => ({
    x: x - SIGN,
    y: y - SIGN,
    w: 2 * SIGN,
    h: 2 * SIGN,
  }));
  for (const tie of straightPulls(hand)) {
    const from = points.get(tie.from);
    if (!from) continue;
    const box = plate(ctx, job, place(from), target, compact(tie.reading.text), tie.from, signs);
    taken.push(box);
    signs.push(box);
  }
}

/** Half of a control's sign with room for its name, pixels. */
const SIGN = 16;

function dashedCheck(ctx: CanvasRenderingContext2D, a: Point, b: Point): void {
  ctx.setLineDash([3, 5]);
  ctx.strokeStyle = COLOUR.ink;
  ctx.lineWidth = 1.2;
  ctx.beginPath();
  ctx.moveTo(a.x, a.y);
  ctx.lineTo(b.x, b.y);
  ctx.stroke();
  ctx.setLineDash([]);
}

function cased(ctx: CanvasRenderingContext2D, a: Point, b: Point, taken: Box[]): void {
  ctx.lineCap = 'butt';
  for (const [colour, width] of [
    [COLOUR.white, 6.4],
    [COLOUR.flag, 2.6],
  ] as const) {
    ctx.strokeStyle = colour;
    ctx.lineWidth = width;
    ctx.beginPath();
    ctx.moveTo(a.x, a.y);
    ctx.lineTo(b.x, b.y);
    ctx.stroke();
  }
  const steps = Math.ceil(Math.hypot(b.x - a.x, b.y - a.y) / 8);
  for (let i = 0; i <= steps; i++) {
    const t = i / steps;
    taken.push({ x: a.x + (b.x - a.x) * t - 4, y: a.y + (b.y - a.y) * t - 4, w: 8, h: 8 });
  }
}

/** The reading on a plate near the middle of its tie, clear of `signs` where it can be, never rotated. */
function plate(
  ctx: CanvasRenderingContext2D,
  job: PaintJob,
  a: Point,
  b: Point,
  reading: string,
  from: string,
  signs: readonly Box[],
): Box {
  ctx.font = '650 20px "Archivo Variable"';
  const { width, height } = job.size;
  const away = a.x < 0 || a.y < 0 || a.x > width || a.y > height;
  const text = away ? `${from}  ${reading}` : reading;
  const w = ctx.measureText(text).width + 20;
  const h = 30;
  const boxes = visiblePlaces(job.size, a, b).map((p): Box => ({
    x: p.x - w / 2,
    y: p.y - h / 2,
    w,
    h,
  }));
  const box = boxes.find((one) => signs.every((sign) => overlap(one, sign) === 0)) ?? boxes[0]!;
  const middle = { x: box.x + w / 2, y: box.y + h / 2 };
  ctx.fillStyle = COLOUR.flag;
  ctx.fillRect(box.x, box.y, w, h);
  ctx.fillStyle = COLOUR.white;
  ctx.textAlign = 'center';
  ctx.textBaseline = 'middle';
  ctx.fillText(text, middle.x, middle.y + 1);
  ctx.textBaseline = 'alphabetic';
  return box;
}

/** Places along the part of the tie that is on screen, from its middle outward, then beside it. */
function visiblePlaces(size: Size, a: Point, b: Point): Point[] {
  const on = Array.from({ length: 41 }, (_, i) => i / 40).filter((t) => {
    const x = a.x + (b.x - a.x) * t;
    const y = a.y + (b.y - a.y) * t;
    return x > 50 && y > 30 && x < size.width - 50 && y < size.height - 90;
  });
  const middle = on.length > 0 ? (on[0]! + on[on.length - 1]!) / 2 : 0.5;
  const length = Math.hypot(b.x - a.x, b.y - a.y) || 1;
  const aside = { x: (BESIDE * (b.y - a.y)) / length, y: (-BESIDE * (b.x - a.x)) / length };
  const outward = [
    middle,
    ...on.toSorted((s, t) => Math.abs(s - middle) - Math.abs(t - middle)),
  ].map((t) => ({ x: a.x + (b.x - a.x) * t, y: a.y + (b.y - a.y) * t }));
  return [0, 1, -1].flatMap((k) =>
    outward.map((p) => ({ x: p.x + k * aside.x, y: p.y + k * aside.y })),
  );
}

/** A tie too short for its plate has it at its side, this far off, pixels. */
const BESIDE = 42;

/** Below 7 px per ft only the numbers this near in setting order are shown: what comes next. */
const NEAR = 14;

/** Numbers of the round in hand; pins get theirs from 7 px per ft; controls always. */
function drawNames(
  ctx: CanvasRenderingContext2D,
  job: PaintJob,
  plan: StakePlan,
  hand: Stake | undefined,
  place: Place,
  taken: Box[],
): void {
  const controls = plan.controls.map((c) => ({
    id: c.id,
    at: place(c.at),
    away: { x: 1, y: -0.4 },
  }));
  placeLabels(ctx, controls, taken, job.size, { font: '650 15px "Archivo Variable"', plate: 0.9 });
  const zoomed = job.viewport.scale >= 7;
  const centre = place({ x: 0, y: 0 });
  const order = new Map(plan.stakes.map((s, i) => [s, i]));
  const near = (s: Stake) =>
    hand !== undefined && Math.abs((order.get(s) ?? 0) - (order.get(hand) ?? 0)) <= NEAR;
  const isNamed = (s: Stake) =>
    s === hand ||
    (s.round === (hand?.round ?? s.round) && (zoomed || (near(s) && s.kind !== 'pin')));
  const named = plan.stakes.filter((s) => s.kind !== 'control' && isNamed(s));
  const items = named.map((s) => {
    const at = place(s.at);
    return { id: s.id, at, away: { x: 0, y: at.y < centre.y ? -1 : 1 }, first: s === hand };
  });
  placeLabels(ctx, items, taken, job.size, { font: '600 12px "Archivo Variable"', plate: 0.84 });
}
