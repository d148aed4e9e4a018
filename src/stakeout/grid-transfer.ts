/**
 * The customary way for comparison: square strings over the art, a mark wherever the outline crosses
 * one and at every corner, marks joined smoothly by hand. The hand is taken as the centripetal
 * Catmull-Rom curve through the marks (Catmull & Rom 1974; Yuksel, Schaefer & Keyser 2011), which makes
 * no cusp or loop between them, sharp at corners.
 */
import type { LengthSystem } from '../base/quantity';
import type { Feet } from '../base/units';
import { pointDistance, type Point } from '../geometry/point';
import { edgeIndex, nearestEdgeDistance, type EdgeIndex } from './edge-index';
import { gridMarks, type Grid, type GridMark } from './grid-marks';
import { readingStepFt } from './ties';
import { tracePoint, type Trace } from './trace';

export interface GridTransfer {
  /** The largest cell whose joined marks keep the tolerance both ways wherever the strings fall. */
  readonly cellFt: Feet;
  /** Marks to set with that cell, on average over where the strings fall. */
  readonly marks: number;
}

const LARGEST_CELL_FT = 12;
const SMALLEST_CELL_FT = 0.25;
/** Each cell tried is this much smaller than the one before, in whole steps of the tape. */
const CELL_RATIO = 0.98;
/** A crew chooses its cell before it knows where the strings fall on the art: thirds, each way. */
const FALLS = [0, 1, 2].flatMap((x) => [0, 1, 2].map((y) => ({ x: x / 3, y: y / 3 })));
/** Joined marks are held against the art at places this far apart. */
const SAMPLE_FT = 0.25;
const CELL_FT = 1.5;

/**
 * Tries cells from the largest down. `tubeFt`: how far the drawn line may stray. Null when not even the
 * smallest cell serves.
 */
export function gridTransfer(
  traces: readonly Trace[],
  tubeFt: Feet,
  system: LengthSystem,
): GridTransfer | null {
  const step = readingStepFt(system);
  const corner = lowerLeft(traces);
  const art = edgeIndex(traces.flatMap(traceEdges), CELL_FT);
  const task: Task = { traces: [...traces], art, tubeFt, worstAt: new Map() };
  let steps = Math.floor(LARGEST_CELL_FT / step);
  for (; steps * step >= SMALLEST_CELL_FT; steps = nextSteps(steps)) {
    const cellFt = steps * step;
    const grids = FALLS.map((f) => ({
      origin: { x: corner.x - f.x * cellFt, y: corner.y - f.y * cellFt },
      cellFt,
    }));
    const counts = countAll(task, grids);
    if (counts) return { cellFt, marks: Math.round(counts / FALLS.length) };
  }
  return null;
}

const nextSteps = (steps: number): number => Math.min(steps - 1, Math.round(steps * CELL_RATIO));

interface Task {
  /** The contour that refused the last cell first: it is likely to refuse the next. */
  readonly traces: Trace[];
  readonly art: EdgeIndex<null>;
  readonly tubeFt: Feet;
  /** Where along each contour the joined marks strayed last. */
  readonly worstAt: Map<Trace, Feet>;
}

/** Marks of all grids together; null when one of them strays. */
function countAll(task: Task, grids: readonly Grid[]): number | null {
  const drawn = grids.map((): Drawn[] => []);
  for (const [i, t] of task.traces.entries()) {
    for (const [g, grid] of grids.entries()) {
      const one = drawMarks(task, t, gridMarks(t, grid));
      if (!one) {
        task.traces.unshift(...task.traces.splice(i, 1));
        return null;
      }
      drawn[g]!.push(one);
    }
  }
  if (!drawn.every((d) => reachesAll(d, task.tubeFt))) return null;
  return drawn.flat().reduce((sum, d) => sum + d.marks, 0);
}

/** A contour's joined marks, and the places of the art that the curve beside them does not reach. */
interface Drawn {
  readonly marks: number;
  readonly curve: readonly (readonly Point[])[];
  readonly missed: readonly Point[];
}

function lowerLeft(traces: readonly Trace[]): Point {
  let [x, y] = [Infinity, Infinity];
  for (const t of traces) {
    for (let i = 0; i < t.count; i++) {
      x = Math.min(x, t.x[i]!);
      y = Math.min(y, t.y[i]!);
    }
  }
  return { x, y };
}

const traceEdges = (t: Trace) =>
  Array.from({ length: t.count }, (_, i) => ({
    a: tracePoint(t, i),
    b: tracePoint(t, i + 1),
    tag: null,
  }));

/** The joined marks; null when they stray, or when so few marks enclose nothing. */
function drawMarks(task: Task, t: Trace, marks: readonly GridMark[]): Drawn | null {
  const n = marks.length;
  if (n < 3) return null;
  const curve: Point[][] = marks.map(() => []);
  const missed: Point[] = [];
  const from = task.worstAt.get(t) ?? 0;
  const first = Math.max(0, marks.findIndex((m) => m.along > from) - 1);
  for (let k = 0; k < n; k++) {
    const i = (first + k) % n;
    const span = joinSpan(marks, i);
    const stretch = stretchOf(t, marks, i);
    if (span.some((p) => strays(task, stretch, p))) {
      task.worstAt.set(t, marks[i]!.along);
      return null;
    }
    const line = [...span, marks[(i + 1) % n]!.at];
    for (const p of stretch) if (!isNear(line, p, task.tubeFt)) missed.push(p);
    curve[i] = span;
  }
  return { marks: n, curve, missed };
}

/** Farther than the tube from the art: from the stretch beside it, and from all of it. */
const strays = ({ art, tubeFt }: Task, stretch: readonly Point[], p: Point): boolean =>
  !isNear(stretch, p, tubeFt) && nearestEdgeDistance(art, p, 2 * tubeFt) > tubeFt;

/** Whether the places that the nearest span does not reach are reached by some other. */
function reachesAll(drawn: readonly Drawn[], tubeFt: Feet): boolean {
  if (drawn.every((d) => d.missed.length === 0)) return true;
  const edges = drawn.flatMap(({ curve }) => {
    const ring = curve.flat();
    return ring.map((a, i) => ({ a, b: ring[(i + 1) % ring.length]!, tag: null }));
  });
  const index = edgeIndex(edges, CELL_FT);
  return drawn.every((d) =>
    d.missed.every((p) => nearestEdgeDistance(index, p, 2 * tubeFt) <= tubeFt),
  );
}

/** The art from mark i to the next, ends included. */
function stretchOf(t: Trace, marks: readonly GridMark[], i: number): Point[] {
  const from = marks[i]!;
  const to = marks[(i + 1) % marks.length]!;
  const end = to.along > from.along ? to.along : to.along + t.perimeter;
  const out = [from.at];
  let k = firstAfter(t, from.along);
  while (alongAt(t, k) < end) out.push(tracePoint(t, k++));
  return [...out, to.at];
}

const alongAt = (t: Trace, k: number): Feet =>
  k < t.count ? t.along[k]! : t.along[k - t.count]! + t.perimeter;

/** The first point of the trace beyond `along`, by halving. */
function firstAfter(t: Trace, along: Feet): number {
  let [low, high] = [0, t.count];
  while (low < high) {
    const mid = (low + high) >> 1;
    if (t.along[mid]! <= along) low = mid + 1;
    else high = mid;
  }
  return low;
}

/** Points of the curve from mark i to the next, the next left out. */
function joinSpan(marks: readonly GridMark[], i: number): Point[] {
  const n = marks.length;
  const [b, c] = [marks[i]!, marks[(i + 1) % n]!];
  const a = b.corner ? beyond(c.at, b.at) : marks[(i - 1 + n) % n]!.at;
  const d = c.corner ? beyond(b.at, c.at) : marks[(i + 2) % n]!.at;
  const pieces = Math.max(1, Math.ceil(pointDistance(b.at, c.at) / SAMPLE_FT));
  const curve = catmullRom(a, b.at, c.at, d);
  return Array.from({ length: pieces }, (_, k) => curve(k / pieces));
}

/** As far beyond `to` as `from` lies before it: a curve that ends at a corner runs out straight. */
const beyond = (from: Point, to: Point): Point => ({
  x: 2 * to.x - from.x,
  y: 2 * to.y - from.y,
});

/** The centripetal curve from b to c at a share of its way, by the pyramid of Barry & Goldman 1988. */
function catmullRom(a: Point, b: Point, c: Point, d: Point): (share: number) => Point {
  const t1 = Math.sqrt(pointDistance(a, b));
  const t2 = t1 + Math.sqrt(pointDistance(b, c));
  const t3 = t2 + Math.sqrt(pointDistance(c, d));
  return (share) => {
    const t = t1 + share * (t2 - t1);
    const a1 = mix(a, b, t / t1);
    const a2 = mix(b, c, (t - t1) / (t2 - t1));
    const a3 = mix(c, d, (t - t2) / (t3 - t2));
    const b1 = mix(a1, a2, t / t2);
    const b2 = mix(a2, a3, (t - t1) / (t3 - t1));
    return mix(b1, b2, (t - t1) / (t2 - t1));
  };
}

const mix = (p: Point, q: Point, s: number): Point => ({
  x: p.x + s * (q.x - p.x),
  y: p.y + s * (q.y - p.y),
});

/** Whether p lies within `within` feet of a line through points. */
function isNear(line: readonly Point[], p: Point, within: Feet): boolean {
  const most = within * within;
  for (let i = 1; i < line.length; i++) {
    const a = line[i - 1]!;
    const b = line[i]!;
    const dx = b.x - a.x;
    const dy = b.y - a.y;
    const px = p.x - a.x;
    const py = p.y - a.y;
    const length2 = dx * dx + dy * dy;
    const s = length2 > 0 ? Math.min(1, Math.max(0, (px * dx + py * dy) / length2)) : 0;
    if ((px - s * dx) ** 2 + (py - s * dy) ** 2 <= most) return true;
  }
  return false;
}
