/**
 * Lines that crossed are parted: where two stretches of the art run within two tubes of each other, each
 * is planned on its own side of the middle between them. What that takes from the side that faces the
 * other line stays on the side that looks away, so that few more stakes are needed.
 */
import { inches } from '../base/units';
import type { Point } from '../geometry/point';
import type { ContourTask } from './draft-outline';
import { edgeIndex, nearestEdge, type EdgeIndex } from './edge-index';
import { traceAlong, tracePoint, type Trace } from './trace';

/** A stretch of a contour as one piece draws it, trace indices; `to` may run past the contour's count. */
export interface Stretch {
  readonly task: ContourTask;
  readonly from: number;
  readonly to: number;
  readonly straight: boolean;
}

/** Kept free on either side: printed readings put a line off by up to this much, or a share of the tube. */
const ROUNDING_FT = inches(0.3);
const ROUNDING_SHARE = 1 / 3;
/** A string that leaves its art by more than this share of the tube gives way like a curve. */
const STRAY_SHARE = 0.2;
/** What a string that keeps its place may still be moved by when its contour is fitted again. */
const STRING_TUBE_FT = inches(0.1);
const CELL_FT = 1.5;
/** The other line is looked at this far beyond the stretch that crossed. */
const BEYOND_FT = 2;

/**
 * Keeps the first stretch on its side of the other, as far along as the two run close. A curve gives way
 * to a straight string, which keeps its place; two of a kind meet half way. False when nothing changes:
 * it was parted before, or the two are neighbours on one contour.
 */
export function partFrom(stretch: Stretch, other: Stretch): boolean {
  const { task } = stretch;
  if (task === other.task && areNeighbours(stretch, other)) return false;
  const edges = edgeIndex(facingEdges(stretch, other), CELL_FT);
  const moved = { x: task.trace.x.slice(), y: task.trace.y.slice() };
  let changed = false;
  for (const i of closePlaces(stretch, edges)) {
    const tube = task.tube[i]!;
    const side = sideOf(task.art, i, edges, reachOf(tube));
    if (!side || task.parted[i] === 1) continue;
    const { shift, half } = roomBeside(stretch, other, tube, side.distance);
    if (half >= tube) continue;
    moved.x[i]! += shift * side.away.x;
    moved.y[i]! += shift * side.away.y;
    task.tube[i] = half;
    task.parted[i] = 1;
    changed = true;
  }
  if (changed) task.trace = { ...task.trace, ...moved, ...traceAlong(moved.x, moved.y) };
  return changed;
}

/** Lines farther apart than this cannot meet. */
const reachOf = (tube: number): number => 2 * (tube + ROUNDING_FT);

/** How far the tube's middle moves from the art, and its half width there. */
function roomBeside(
  stretch: Stretch,
  other: Stretch,
  tube: number,
  distance: number,
): { readonly shift: number; readonly half: number } {
  const rounding = Math.min(ROUNDING_FT, ROUNDING_SHARE * tube);
  if (stretch.straight !== other.straight) {
    const stray = strayFt(stretch.straight ? stretch : other) + STRING_TUBE_FT;
    if (stray <= STRAY_SHARE * tube) {
      if (stretch.straight) return { shift: 0, half: stray };
      return besideAt(tube, distance - stray - 2 * rounding);
    }
  }
  return besideAt(tube, distance / 2 - rounding);
}

/** The tube that reaches `free` towards the other line and as far as before the other way. */
function besideAt(tube: number, free: number) {
  return { shift: Math.max(0, (tube - free) / 2), half: (tube + free) / 2 };
}

/** How far a straight stretch's art leaves the line between its ends, feet. */
function strayFt({ task, from, to }: Stretch): number {
  const { art } = task;
  const [a, b] = [tracePoint(art, from), tracePoint(art, to)];
  const length = Math.hypot(b.x - a.x, b.y - a.y) || 1;
  let stray = 0;
  for (let i = from + 1; i < to; i++) {
    const p = tracePoint(art, i);
    const off = Math.abs((b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x)) / length;
    stray = Math.max(stray, off);
  }
  return stray;
}

/** Whether the two stretches are one, or follow each other along the contour. */
function areNeighbours(a: Stretch, b: Stretch): boolean {
  const { along, count, perimeter } = a.task.art;
  const at = (i: number): number => along[i % count]! + Math.floor(i / count) * perimeter;
  const gap = (p: Stretch, q: Stretch): number => {
    const d = (at(q.from) - at(p.to)) % perimeter;
    return d < 0 ? d + perimeter : d;
  };
  const lengths = at(a.to) - at(a.from) + at(b.to) - at(b.from);
  // Apart both ways round, the two gaps and the two stretches make up the whole contour.
  const whole = Math.abs(gap(a, b) + gap(b, a) + lengths - perimeter) < BEYOND_FT;
  return !whole || Math.min(gap(a, b), gap(b, a)) < 2 * BEYOND_FT;
}

/** The art's edges that the stretch faces. */
function facingEdges(stretch: Stretch, { task, from, to }: Stretch) {
  const { art } = task;
  const beyond = Math.ceil((BEYOND_FT * art.count) / art.perimeter);
  const all = stretch.task !== task;
  const first = all ? 0 : from - beyond + art.count;
  const steps = all ? art.count : to - from + 2 * beyond;
  return Array.from({ length: steps }, (_, k) => ({
    a: tracePoint(art, first + k),
    b: tracePoint(art, first + k + 1),
    tag: null,
  }));
}

/** Indices of the stretch, and of what goes on from its ends, that are close to the other line. */
function closePlaces({ task, from, to }: Stretch, edges: EdgeIndex<null>): number[] {
  const n = task.art.count;
  const close = (i: number): boolean =>
    nearestEdge(edges, tracePoint(task.art, i + n), reachOf(task.tube[(i + n) % n]!)) !== null;
  let [first, last] = [from, to];
  while (last - first < n - 1 && close(first - 1)) first--;
  while (last - first < n - 1 && close(last + 1)) last++;
  const length = Math.min(n, last - first + 1);
  return Array.from({ length }, (_, k) => (first + k + n) % n);
}

/** How far the other line is, and which way leads away from it; null when it is not near. */
function sideOf(art: Trace, i: number, edges: EdgeIndex<null>, limit: number) {
  const near = nearestEdge(edges, tracePoint(art, i), limit);
  if (!near) return null;
  const normal = normalAt(art, i);
  const sign = signFrom(art, i, edges, limit, normal);
  return { distance: near.distance, away: { x: sign * normal.x, y: sign * normal.y } };
}

/** Places on either side that are asked when the lines touch. */
const NEIGHBOURS = [0, 1, -1, 2, -2, 3, -3, 4, -4];
/** Nearer than this the side is not told reliably. */
const TOUCHING_FT = inches(0.02);

/** +1 when the normal leads away from the other line. */
function signFrom(
  art: Trace,
  i: number,
  edges: EdgeIndex<null>,
  limit: number,
  normal: Point,
): 1 | -1 {
  for (const k of NEIGHBOURS) {
    const p = tracePoint(art, i + k + art.count);
    const near = nearestEdge(edges, p, limit);
    if (!near || near.distance < TOUCHING_FT) continue;
    const q = nearestOn(near.edge.a, near.edge.b, p);
    const dot = (p.x - q.x) * normal.x + (p.y - q.y) * normal.y;
    return dot >= 0 ? 1 : -1;
  }
  return 1;
}

function nearestOn(a: Point, b: Point, p: Point): Point {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const length2 = dx * dx + dy * dy;
  const s = length2 > 0 ? ((p.x - a.x) * dx + (p.y - a.y) * dy) / length2 : 0;
  const t = Math.min(1, Math.max(0, s));
  return { x: a.x + t * dx, y: a.y + t * dy };
}

/** Square to the contour, on its left. */
function normalAt(art: Trace, i: number): Point {
  const a = tracePoint(art, i - 1 + art.count);
  const b = tracePoint(art, i + 1);
  const length = Math.hypot(b.x - a.x, b.y - a.y) || 1;
  return { x: -(b.y - a.y) / length, y: (b.x - a.x) / length };
}
