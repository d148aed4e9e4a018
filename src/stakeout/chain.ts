/** Chains of straight strings and swings over a trace, before stakes are numbered. */
import type { Point } from '../geometry/point';
import { bulgeInterval, firstStride, flattestBulge, type BulgeInterval } from './bulge-interval';
import { tracePoint, type Trace } from './trace';

/** A piece between two places on the trace; `to` may run past `count`, round the contour. */
export interface Link {
  readonly kind: 'string' | 'swing';
  readonly from: number;
  readonly to: number;
}

/** A closed chain; empty when the contour is too small for three stakes. */
export interface Chain {
  readonly links: readonly Link[];
  /** True when some link had to leave the tube: no chain of stakes this far apart stays in it. */
  readonly strained: boolean;
}

/** Bulges tried for a pin, across the interval, middle first. */
const PIN_TRIES = [0.5, 0.3, 0.7, 0.12, 0.88, 0.02, 0.98];

/** Centre of the arc over chord a→b with bulge `bulge` (not zero). */
export function bulgeCentre(a: Point, b: Point, bulge: number): Point {
  const k = (1 - bulge * bulge) / (4 * bulge);
  return {
    x: (a.x + b.x) / 2 - k * (b.y - a.y),
    y: (a.y + b.y) / 2 + k * (b.x - a.x),
  };
}

/** The parts of an interval that are real swings: neither too flat nor across zero. */
export function swingIntervals(interval: BulgeInterval, flat: number): BulgeInterval[] {
  const out: BulgeInterval[] = [];
  if (interval.high >= flat) out.push({ low: Math.max(flat, interval.low), high: interval.high });
  if (interval.low <= -flat) out.push({ low: interval.low, high: Math.min(-flat, interval.high) });
  return out;
}

/** Whether some swing over from→to has its pin where `mayStand` allows one. */
export function swingExists(
  t: Trace,
  tube: Float64Array,
  from: number,
  to: number,
  mayStand: (p: Point) => boolean,
  scratch: BulgeInterval,
): boolean {
  if (!bulgeInterval(t, tube, from, to, scratch)) return false;
  const a = tracePoint(t, from);
  const b = tracePoint(t, to);
  const flat = flattestBulge(Math.hypot(b.x - a.x, b.y - a.y) / 2);
  const intervals = swingIntervals(scratch, flat);
  return PIN_TRIES.some((share) =>
    intervals.some((i) => mayStand(bulgeCentre(a, b, i.low + share * (i.high - i.low)))),
  );
}

/** Whether the straight string from→to keeps every point between within its tube. */
export function stringFollows(t: Trace, tube: Float64Array, from: number, to: number): boolean {
  return stringExcess(t, tube, from, to, 0) <= 0;
}

/**
 * How far the worst point between leaves its tube, feet; stops at the first above `enough`. Coarse
 * points first, so that most refusals are quick.
 */
export function stringExcess(
  t: Trace,
  tube: Float64Array,
  from: number,
  to: number,
  enough: number,
): number {
  const start = from % t.count;
  const end = to % t.count;
  const ax = t.x[start]!;
  const ay = t.y[start]!;
  const length = Math.hypot(t.x[end]! - ax, t.y[end]! - ay);
  if (!(length > 0)) return Infinity;
  const ux = (t.x[end]! - ax) / length;
  const uy = (t.y[end]! - ay) / length;
  const steps = to - from;
  let worst = -Infinity;
  for (let stride = firstStride(steps); stride >= 1; stride >>= 1) {
    for (let k = stride; k < steps; k += 2 * stride) {
      const i = (from + k) % t.count;
      const dx = t.x[i]! - ax;
      const dy = t.y[i]! - ay;
      const s = dx * ux + dy * uy;
      const beyond = s < 0 ? -s : Math.max(0, s - length);
      const off = Math.abs(dy * ux - dx * uy);
      const gap = beyond > 0 ? Math.sqrt(off * off + beyond * beyond) : off;
      if (gap - tube[i]! > worst) worst = gap - tube[i]!;
      if (worst > enough) return worst;
    }
  }
  return worst;
}
