/** Where a swing's pin goes: an existing stake that serves it, or the best free place. */
import { pointDistance, type Point } from '../geometry/point';
import { bulgeInterval, swingIntervals } from './bulge-interval';
import { bulgeCentre, type Link } from './chain';
import {
  LONGEST_STEP_FT,
  LONGEST_SWING_FT,
  PLANNED_SHORTEST_SWING_FT,
  PLANNED_SWEEP,
} from './limits';
import { tracePoint, type Trace } from './trace';

/** A shared pin may leave the two ends this far off one circle; rounding needs the rest. */
const SHARED_STEP_FT = LONGEST_STEP_FT / 3;
const PIN_SAMPLES = 24;

/** Whether the stake at `pin` serves as the centre of the swing within the tube. */
export function pinServes(t: Trace, tube: Float64Array, link: Link, pin: Point): boolean {
  const a = tracePoint(t, link.from);
  const b = tracePoint(t, link.to);
  const da = pointDistance(pin, a);
  const db = pointDistance(pin, b);
  const radius = (da + db) / 2;
  if (Math.abs(da - db) > 2 * SHARED_STEP_FT) return false;
  if (radius < PLANNED_SHORTEST_SWING_FT || radius > LONGEST_SWING_FT) return false;
  const chord = pointDistance(a, b);
  if (chord > 2 * radius * Math.sin(PLANNED_SWEEP / 2)) return false;
  return runsAlong(t, tube, link, pin, radius);
}

/** Whether every point between lies within its tube of the minor arc about `pin`. */
function runsAlong(t: Trace, tube: Float64Array, link: Link, pin: Point, radius: number): boolean {
  const a = tracePoint(t, link.from);
  const b = tracePoint(t, link.to);
  const mid = { x: (a.x + b.x) / 2 - pin.x, y: (a.y + b.y) / 2 - pin.y };
  for (let i = link.from + 1; i < link.to; i++) {
    const dx = t.x[i % t.count]! - pin.x;
    const dy = t.y[i % t.count]! - pin.y;
    if (dx * mid.x + dy * mid.y <= 0) return false;
    if (Math.abs(Math.hypot(dx, dy) - radius) > tube[i % t.count]!) return false;
  }
  return true;
}

/** +1 when the swing turns counter-clockwise about `pin` from its first end to its last. */
export function swingSense(t: Trace, link: Link, pin: Point): 1 | -1 {
  const a = tracePoint(t, link.from);
  const b = tracePoint(t, link.to);
  const cross = (a.x - pin.x) * (b.y - pin.y) - (a.y - pin.y) * (b.x - pin.x);
  return cross >= 0 ? 1 : -1;
}

/**
 * The free place with the least mean gap to the art among samples across the feasible bulges; null
 * when none is free.
 */
export function bestFreePin(
  t: Trace,
  tube: Float64Array,
  link: Link,
  isFree: (p: Point) => boolean,
): Point | null {
  const a = tracePoint(t, link.from);
  let best: Point | null = null;
  let least = Infinity;
  for (const centre of possiblePins(t, tube, link)) {
    if (!isFree(centre)) continue;
    const gap = meanGap(t, link, centre, pointDistance(centre, a));
    if (gap >= least) continue;
    least = gap;
    best = centre;
  }
  return best;
}

/** Samples of where the pin may be for the swing to keep the tube. */
export function possiblePins(t: Trace, tube: Float64Array, link: Link): Point[] {
  const interval = { low: 0, high: 0 };
  if (!bulgeInterval(t, tube, link.from, link.to, interval)) return [];
  const a = tracePoint(t, link.from);
  const b = tracePoint(t, link.to);
  return swingIntervals(interval, pointDistance(a, b) / 2).flatMap((part) =>
    Array.from({ length: PIN_SAMPLES }, (_, k) => {
      const share = (k + 0.5) / PIN_SAMPLES;
      return bulgeCentre(a, b, part.low + share * (part.high - part.low));
    }),
  );
}

function meanGap(t: Trace, link: Link, centre: Point, radius: number): number {
  let sum = 0;
  for (let i = link.from + 1; i < link.to; i++) {
    const dx = t.x[i % t.count]! - centre.x;
    const dy = t.y[i % t.count]! - centre.y;
    sum += Math.abs(Math.hypot(dx, dy) - radius);
  }
  return sum / Math.max(1, link.to - link.from - 1);
}
