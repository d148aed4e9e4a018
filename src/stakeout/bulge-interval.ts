/**
 * The exact test whether one circular arc follows a stretch of a contour. An arc over the chord
 * p→q is given by its bulge b = tan(sweep/4), positive when its centre lies left of the chord. Each
 * point of the stretch, within its tube, leaves one interval of b: with the chord from (−h, 0) to
 * (h, 0) and a point (x, y), Q = x² + y² − h² − tube²,
 *   (y − tube)·h·b² + Q·b − (y + tube)·h ≤ 0   and   (y + tube)·h·b² + Q·b − (y − tube)·h ≥ 0.
 * The arc follows the stretch when the intervals of all its points meet.
 */
import {
  LEAST_BEND_OFFSET_FT,
  LONGEST_BEND_FT,
  LONGEST_SWING_FT,
  PLANNED_SHORTEST_SWING_FT,
  PLANNED_SWEEP,
} from './limits';
import type { Trace } from './trace';

export interface BulgeInterval {
  low: number;
  high: number;
}

const MAX_BULGE = Math.tan(PLANNED_SWEEP / 4);

/**
 * The bulges that keep points `from`..`to` of the trace (indices run on past `count`, round
 * the contour) within their tubes, written into `out`. False when there is none that is a swing or a
 * bend.
 */
export function bulgeInterval(
  t: Trace,
  tube: Float64Array,
  from: number,
  to: number,
  out: BulgeInterval,
): boolean {
  const start = from % t.count;
  const end = to % t.count;
  const ax = t.x[start]!;
  const ay = t.y[start]!;
  const chord = Math.hypot(t.x[end]! - ax, t.y[end]! - ay);
  const h = chord / 2;
  if (!(h > 0) || h > LONGEST_SWING_FT) return false;
  const ux = (t.x[end]! - ax) / chord;
  const uy = (t.y[end]! - ay) / chord;
  const cap = mayBend(h) ? MAX_BULGE : bulgeCap(h);
  out.low = -cap;
  out.high = cap;
  const flat = mayBend(h) ? Math.min(flattestBend(h), flattestBulge(h)) : flattestBulge(h);
  const steps = to - from;
  for (let stride = firstStride(steps); stride >= 1; stride >>= 1) {
    const skip = stride << 1;
    for (let k = stride; k < steps; k += skip) {
      const i = (from + k) % t.count;
      const dx = t.x[i]! - ax;
      const dy = t.y[i]! - ay;
      narrow(out, h, dx * ux + dy * uy - h, dy * ux - dx * uy, tube[i]!);
      if (out.low > out.high) return false;
    }
  }
  return out.high >= flat || out.low <= -flat;
}

/** Odd multiples of shrinking powers of two visit every point once, coarse ones first. */
export const firstStride = (steps: number): number =>
  steps < 2 ? 0 : 1 << (31 - Math.clz32(steps - 1));

const mayBend = (h: number): boolean => 2 * h <= LONGEST_BEND_FT;

/** Smallest bulge of a bend: its offset is h times the bulge. */
const flattestBend = (h: number): number => LEAST_BEND_OFFSET_FT / h;

/** The parts of an interval that are swings over half a chord `h`, feet. */
export const swingIntervals = (interval: BulgeInterval, h: number): BulgeInterval[] =>
  clipBothSides(interval, flattestBulge(h), bulgeCap(h));

/** The parts of an interval that are bends over half a chord `h`, feet. */
export const bendIntervals = (interval: BulgeInterval, h: number): BulgeInterval[] =>
  mayBend(h) ? clipBothSides(interval, flattestBend(h), MAX_BULGE) : [];

/** What of the interval has a size between the two, on either side of zero. */
function clipBothSides({ low, high }: BulgeInterval, least: number, most: number): BulgeInterval[] {
  const left = { low: Math.max(least, low), high: Math.min(most, high) };
  const right = { low: Math.max(-most, low), high: Math.min(-least, high) };
  return [left, right].filter((part) => part.low <= part.high);
}

/** Largest bulge of a swing: half a turn (less a margin), and no radius under the shortest swing. */
function bulgeCap(h: number): number {
  const r = PLANNED_SHORTEST_SWING_FT;
  return h >= r ? MAX_BULGE : Math.min(MAX_BULGE, (r - Math.sqrt(r * r - h * h)) / h);
}

/** Smallest bulge that is still a swing: the longest radius. */
function flattestBulge(h: number): number {
  const r = LONGEST_SWING_FT;
  return h >= r ? 1 : h / (r + Math.sqrt(r * r - h * h));
}

function narrow(out: BulgeInterval, h: number, x: number, y: number, tube: number): void {
  if (Math.abs(x) > h + tube) {
    out.high = -Infinity;
    return;
  }
  const q = x * x + y * y - h * h - tube * tube;
  if (y > tube) {
    if (out.high > 0 || !keepsBoth(out, h, q, y, tube)) sideInterval(out, h, q, y, tube, 1);
  } else if (y < -tube) {
    if (out.low < 0 || !keepsBoth(out, h, q, y, tube)) sideInterval(out, h, q, -y, tube, -1);
  } else nearInterval(out, h, q, y, tube);
}

/**
 * Whether a point beside the chord leaves the interval, all on the other side of zero, as it is: most do,
 * and that is told without a root.
 */
const keepsBoth = (out: BulgeInterval, h: number, q: number, y: number, tube: number): boolean =>
  keeps(out.low, h, q, y, tube) && keeps(out.high, h, q, y, tube);

/** Whether the arc of bulge `b` passes within the point's tube. */
function keeps(b: number, h: number, q: number, y: number, tube: number): boolean {
  const linear = q * b;
  const square = h * b * b;
  const inner = (y - tube) * square + linear - (y + tube) * h;
  return inner <= 0 && (y + tube) * square + linear - (y - tube) * h >= 0;
}

/** A point beside the chord: an interval on the other side of zero (mirrored for `side` −1). */
function sideInterval(
  out: BulgeInterval,
  h: number,
  q: number,
  y: number,
  tube: number,
  side: 1 | -1,
): void {
  const far = negativeRoot((y - tube) * h, q, -(y + tube) * h);
  const near = negativeRoot((y + tube) * h, q, -(y - tube) * h);
  const low = side > 0 ? far : -near;
  const high = side > 0 ? near : -far;
  if (low > out.low) out.low = low;
  if (high < out.high) out.high = high;
}

/** The negative root of a·b² + q·b + c with a > 0 > c, without cancellation. */
function negativeRoot(a: number, q: number, c: number): number {
  const root = Math.sqrt(q * q - 4 * a * c);
  return q > 0 ? (-q - root) / (2 * a) : (2 * c) / (-q + root);
}

/** A point whose tube reaches the chord: an interval round zero. */
function nearInterval(out: BulgeInterval, h: number, q: number, y: number, tube: number): void {
  limitByRoot(out, (y - tube) * h, q, -(y + tube) * h, q > 0);
  limitByRoot(out, (y + tube) * h, q, -(y - tube) * h, q < 0);
}

/** The root nearest zero, when there is one, bounds the interval above or below. */
function limitByRoot(out: BulgeInterval, a: number, q: number, c: number, above: boolean): void {
  const d = q * q - 4 * a * c;
  if (!(d > 0) || q === 0) return;
  const root = (-2 * c) / (q + Math.sign(q) * Math.sqrt(d));
  if (above) {
    if (root < out.high) out.high = root;
  } else if (root > out.low) out.low = root;
}
