/** A contour that is a circle within its tube: one pin and a radius. */
import type { Point } from '../geometry/point';
import { LONGEST_SWING_FT, PLANNED_SHORTEST_SWING_FT } from './limits';
import type { Trace } from './trace';

export interface FittedCircle {
  readonly centre: Point;
  readonly radius: number;
}

/**
 * The circle through the middle of the contour's spread about its centroid of length, when every
 * point keeps its tube; null otherwise.
 */
export function fitCircle(t: Trace, tube: Float64Array): FittedCircle | null {
  return circleAbout(t, tube, middle(t));
}

/** Whether a circle about the stake at `pin` keeps every point's tube. */
export const circleServes = (t: Trace, tube: Float64Array, pin: Point): boolean =>
  circleAbout(t, tube, pin) !== null;

function circleAbout(t: Trace, tube: Float64Array, centre: Point): FittedCircle | null {
  let near = Infinity;
  let far = 0;
  let tightest = Infinity;
  for (let i = 0; i < t.count; i++) {
    const d = Math.hypot(t.x[i]! - centre.x, t.y[i]! - centre.y);
    near = Math.min(near, d);
    far = Math.max(far, d);
    tightest = Math.min(tightest, tube[i]!);
  }
  const radius = (near + far) / 2;
  if ((far - near) / 2 > tightest) return null;
  if (radius < PLANNED_SHORTEST_SWING_FT || radius > LONGEST_SWING_FT) return null;
  return { centre, radius };
}

function middle(t: Trace): Point {
  let x = 0;
  let y = 0;
  for (let i = 0; i < t.count; i++) {
    const j = (i + 1) % t.count;
    const length = t.along[i + 1]! - t.along[i]!;
    x += ((t.x[i]! + t.x[j]!) / 2) * length;
    y += ((t.y[i]! + t.y[j]!) / 2) * length;
  }
  return { x: x / t.perimeter, y: y / t.perimeter };
}
