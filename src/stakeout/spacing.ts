/** Points in square buckets, to ask which stand within a short distance. */
import { pointDistance, type Point } from '../geometry/point';

export interface SpacedPoint<T> {
  readonly at: Point;
  readonly tag: T;
}

export interface SpacingIndex<T> {
  readonly cell: number;
  readonly buckets: Map<number, SpacedPoint<T>[]>;
}

/** An empty index; `cell` is the longest distance that will be asked for. */
export const spacingIndex = <T>(cell: number): SpacingIndex<T> => ({ cell, buckets: new Map() });

/** Cells are numbered on a square of this many a side, centred on the origin. */
const SPAN = 1 << 22;
const bucketKey = (x: number, y: number): number => (x + SPAN / 2) * SPAN + y + SPAN / 2;

/** Adds a point with the caller's tag. */
export function spacingAdd<T>(index: SpacingIndex<T>, at: Point, tag: T): void {
  const key = bucketKey(Math.floor(at.x / index.cell), Math.floor(at.y / index.cell));
  const bucket = index.buckets.get(key);
  if (bucket) bucket.push({ at, tag });
  else index.buckets.set(key, [{ at, tag }]);
}

/** The points nearer than `within` (at most the index's cell). */
export function spacingNear<T>(
  index: SpacingIndex<T>,
  at: Point,
  within = index.cell,
): SpacedPoint<T>[] {
  const cx = Math.floor(at.x / index.cell);
  const cy = Math.floor(at.y / index.cell);
  const out: SpacedPoint<T>[] = [];
  for (let x = cx - 1; x <= cx + 1; x++) {
    for (let y = cy - 1; y <= cy + 1; y++) {
      const bucket = index.buckets.get(bucketKey(x, y));
      if (bucket === undefined) continue;
      for (const p of bucket) if (pointDistance(p.at, at) < within) out.push(p);
    }
  }
  return out;
}
