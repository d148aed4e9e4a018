/**
 * Bends: short curves drawn by hand through three places, two stakes and a mark square to the middle of
 * the straight line between them (the middle ordinate).
 */
import { invariant } from '../base/result';
import type { Feet } from '../base/units';
import { arcBetween, type ArcSegment } from '../geometry/arc';
import { pointDistance, type Point } from '../geometry/point';
import { bendIntervals, bulgeInterval } from './bulge-interval';
import { bulgeCentre, type Link } from './chain';
import { tracePoint, type Trace } from './trace';

/** The arc from→to through the mark `offset` feet left or right of the middle; at most half a turn. */
export function bendArc(from: Point, to: Point, offset: Feet, side: 'L' | 'R'): ArcSegment {
  const h = pointDistance(from, to) / 2;
  invariant(offset > 0 && h > 0, 'a bend has an offset and two ends');
  // A mark on the right: the arc turns counter-clockwise about a centre on the left.
  const bulge = (side === 'R' ? offset : -offset) / h;
  return arcBetween(bulgeCentre(from, to, bulge), from, to, side === 'R' ? 1 : -1);
}

/** Offsets tried across the feasible ones. */
const SAMPLES = 16;

/** The signed offset (right positive) that follows the stretch best; null when the tube allows none. */
export function bestBend(t: Trace, tube: Float64Array, link: Link): number | null {
  const interval = { low: 0, high: 0 };
  if (!bulgeInterval(t, tube, link.from, link.to, interval)) return null;
  const a = tracePoint(t, link.from);
  const b = tracePoint(t, link.to);
  const h = pointDistance(a, b) / 2;
  let best: number | null = null;
  let least = Infinity;
  for (const part of bendIntervals(interval, h)) {
    for (let k = 0; k < SAMPLES; k++) {
      const offset = h * (part.low + ((k + 0.5) / SAMPLES) * (part.high - part.low));
      const gap = bendGap(t, link, a, b, offset);
      if (gap >= least) continue;
      least = gap;
      best = offset;
    }
  }
  return best;
}

/** Largest distance of the stretch from the circle of a bend drawn between `from` and `to`, feet. */
export function bendGap(t: Trace, link: Link, from: Point, to: Point, offset: number): number {
  const centre = bulgeCentre(from, to, offset / (pointDistance(from, to) / 2));
  const radius = pointDistance(centre, from);
  let worst = 0;
  for (let i = link.from + 1; i < link.to; i++) {
    const k = i % t.count;
    const gap = Math.abs(Math.hypot(t.x[k]! - centre.x, t.y[k]! - centre.y) - radius);
    if (gap > worst) worst = gap;
  }
  return worst;
}
