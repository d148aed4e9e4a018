/** Chains of straight strings, swings and bends over a trace, before stakes are numbered. */
import type { Point } from '../geometry/point';
import { firstStride } from './bulge-interval';
import type { Trace } from './trace';

/** A piece between two places on the trace; `to` may run past `count`, round the contour. */
export interface Link {
  readonly kind: 'string' | 'swing' | 'bend';
  readonly from: number;
  readonly to: number;
}

/** A closed chain; empty when the contour is too small for three stakes. */
export interface Chain {
  readonly links: readonly Link[];
  /** True when some link had to leave the tube: no chain of stakes this far apart stays in it. */
  readonly strained: boolean;
}

/** Centre of the arc over chord a→b with bulge `bulge` (not zero). */
export function bulgeCentre(a: Point, b: Point, bulge: number): Point {
  const k = (1 - bulge * bulge) / (4 * bulge);
  return {
    x: (a.x + b.x) / 2 - k * (b.y - a.y),
    y: (a.y + b.y) / 2 + k * (b.x - a.x),
  };
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
