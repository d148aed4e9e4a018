/** Where a contour crosses the strings of a square grid. */
import { inches, type Feet } from '../base/units';
import type { Point } from '../geometry/point';
import { tracePoint, type Trace } from './trace';

/** Square strings, one through `origin` each way. */
export interface Grid {
  readonly origin: Point;
  readonly cellFt: Feet;
}

/** A mark on the contour. */
export interface GridMark {
  readonly at: Point;
  /** Distance along the contour. */
  readonly along: Feet;
  readonly corner: boolean;
}

/** Marks nearer than this along the contour are one. */
const ONE_MARK_FT = inches(1);

/** Every crossing with a string and every corner, in order along the contour. */
export function gridMarks(t: Trace, grid: Grid): GridMark[] {
  const marks: GridMark[] = [];
  for (let i = 0; i < t.count; i++) {
    if (t.corners[i]) marks.push({ at: tracePoint(t, i), along: t.along[i]!, corner: true });
    for (const share of crossings(t, i, grid)) marks.push(markAt(t, i, share));
  }
  return mergeMarks(marks, t.perimeter);
}

function markAt(t: Trace, i: number, share: number): GridMark {
  const a = tracePoint(t, i);
  const b = tracePoint(t, i + 1);
  return {
    at: { x: a.x + share * (b.x - a.x), y: a.y + share * (b.y - a.y) },
    along: t.along[i]! + share * (t.along[i + 1]! - t.along[i]!),
    corner: false,
  };
}

/** Shares of the edge from point i at which it crosses a string, rising. */
function crossings(t: Trace, i: number, { origin, cellFt }: Grid): number[] {
  const j = (i + 1) % t.count;
  const out: number[] = [];
  addCrossings(out, (t.x[i]! - origin.x) / cellFt, (t.x[j]! - origin.x) / cellFt);
  addCrossings(out, (t.y[i]! - origin.y) / cellFt, (t.y[j]! - origin.y) / cellFt);
  return out.length > 1 ? out.sort((a, b) => a - b) : out;
}

/** Whole numbers passed from a to b, as shares of the way; a start on one counts, an end does not. */
function addCrossings(out: number[], a: number, b: number): void {
  if (b > a) for (let k = Math.ceil(a); k < b; k++) out.push((k - a) / (b - a));
  else if (a > b) for (let k = Math.floor(a); k > b; k--) out.push((a - k) / (a - b));
}

/** A corner stays rather than the crossing beside it. */
function mergeMarks(marks: readonly GridMark[], perimeter: Feet): GridMark[] {
  const out: GridMark[] = [];
  for (const mark of marks) {
    const last = out[out.length - 1];
    if (!last || mark.along - last.along >= ONE_MARK_FT) out.push(mark);
    else if (mark.corner && !last.corner) out[out.length - 1] = mark;
    else if (mark.corner) out.push(mark);
  }
  const [first, last] = [out[0], out[out.length - 1]];
  const wraps =
    first && last && out.length > 1 && perimeter - last.along + first.along < ONE_MARK_FT;
  return wraps && !last.corner ? out.slice(0, -1) : out;
}
