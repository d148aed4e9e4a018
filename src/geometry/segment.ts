/** Straight segments. */
import { SINGULAR } from './tolerance';
import {
  pointAlong,
  pointDistance,
  pointSubtract,
  vectorCross,
  vectorDot,
  type Point,
} from './point';

/** The point of segment a–b nearest to p, with its parameter t in [0, 1] and its distance. */
export function segmentNearest(
  a: Point,
  b: Point,
  p: Point,
): { readonly point: Point; readonly t: number; readonly distance: number } {
  const d = pointSubtract(b, a);
  const length2 = vectorDot(d, d);
  const t =
    length2 === 0 ? 0 : Math.min(1, Math.max(0, vectorDot(pointSubtract(p, a), d) / length2));
  const nearest = pointAlong(a, d, t);
  return { point: nearest, t, distance: pointDistance(nearest, p) };
}

/** Where a–b and c–d cross (ends included), as parameters on each; null when parallel or apart. */
export function segmentIntersection(
  a: Point,
  b: Point,
  c: Point,
  d: Point,
): { readonly point: Point; readonly t: number; readonly u: number } | null {
  const r = pointSubtract(b, a);
  const s = pointSubtract(d, c);
  const det = vectorCross(r, s);
  if (Math.abs(det) < SINGULAR) return null;
  const ac = pointSubtract(c, a);
  const t = vectorCross(ac, s) / det;
  const u = vectorCross(ac, r) / det;
  return t < 0 || t > 1 || u < 0 || u > 1 ? null : { point: pointAlong(a, r, t), t, u };
}
