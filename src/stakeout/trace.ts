/** A contour of the art made ready for fitting: dense points, corners, and the tube it must keep. */
import { inches } from '../base/units';
import { angleDifference } from '../geometry/angle';
import { pointDistance, type Point } from '../geometry/point';
import {
  polylineResample,
  ringClean,
  ringPerimeter,
  ringSimplify,
  type Ring,
} from '../geometry/polyline';
import { CORNER_TURN, PLANNED_SPACING_FT } from './limits';

/** Spacing of the points that are tested, and of the places where a stake may stand. */
export const TRACE_STEP_FT = 0.25;
/** Dense art is thinned by this much first; it is taken off the tube. */
export const THINNING_IN = 0.1;
/** How far a fitted or joined line may stray from the thinned art, feet. */
export const plannedTubeFt = (toleranceIn: number): number =>
  inches(Math.max(toleranceIn - THINNING_IN, toleranceIn / 2));
/** A corner's turn is measured between the chords to points this far on either side. */
const CORNER_ARM_FT = 0.5;
/** Of corners nearer than this along the contour, only the sharpest can have a stake. */
const CORNERS_APART_FT = PLANNED_SPACING_FT * 1.05;

/** A closed contour: point 0 is where it is opened (its sharpest corner when it has one). */
export interface Trace {
  /** Which ring of the art it stands for. */
  readonly contour: number;
  readonly ring: Ring;
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** Distance along the contour of each point. */
  readonly along: Float64Array;
  readonly corners: Uint8Array;
  readonly perimeter: number;
  /** Number of points; index `count` is point 0 again. */
  readonly count: number;
}

/** Point `i` of the contour, counted on round it. */
export const tracePoint = (t: Trace, i: number): Point => ({
  x: t.x[i % t.count]!,
  y: t.y[i % t.count]!,
});

/** Ring number `contour` of the art as dense points, opened at its sharpest corner. Feet. */
export function traceContour(ring: Ring, contour: number): Trace {
  const thin = ringSimplify(ringClean(ring), inches(THINNING_IN));
  const dense = polylineResample(thin, TRACE_STEP_FT, true);
  const turns = cornerTurns(dense);
  const start = sharpest(turns);
  const order = [...dense.slice(start), ...dense.slice(0, start)];
  const marks = [...turns.slice(start), ...turns.slice(0, start)];
  return {
    contour,
    ring,
    x: Float64Array.from(order, (p) => p.x),
    y: Float64Array.from(order, (p) => p.y),
    along: distances(order),
    corners: Uint8Array.from(marks, (turn) => (turn > 0 ? 1 : 0)),
    perimeter: ringPerimeter(dense),
    count: order.length,
  };
}

function distances(points: readonly Point[]): Float64Array {
  const along = new Float64Array(points.length + 1);
  for (let i = 1; i <= points.length; i++) {
    along[i] = along[i - 1]! + pointDistance(points[i - 1]!, points[i % points.length]!);
  }
  return along;
}

function sharpest(turns: readonly number[]): number {
  let best = 0;
  turns.forEach((turn, i) => {
    if (turn > turns[best]!) best = i;
  });
  return best;
}

/** The turn at each point that is a corner, 0 elsewhere: the largest turn within reach. */
function cornerTurns(points: readonly Point[]): number[] {
  const n = points.length;
  const along = distances(points);
  const turns = points.map((_, i) => turnAt(points, along, i));
  return turns.map((turn, i) => {
    if (turn <= CORNER_TURN) return 0;
    for (let step = 1; step < n; step++) {
      const before = (i - step + n) % n;
      const after = (i + step) % n;
      const reach = Math.min(gap(along, before, i, n), gap(along, i, after, n));
      if (reach > CORNERS_APART_FT) break;
      if (turns[before]! >= turn || turns[after]! > turn) return 0;
    }
    return turn;
  });
}

function gap(along: Float64Array, from: number, to: number, n: number): number {
  const d = along[to]! - along[from]!;
  return d < 0 ? d + along[n]! : d;
}

function turnAt(points: readonly Point[], along: Float64Array, i: number): number {
  const n = points.length;
  const here = points[i]!;
  const arm = Math.min(CORNER_ARM_FT, along[n]! / 4);
  let before = i;
  let after = i;
  do before = (before - 1 + n) % n;
  while (gap(along, before, i, n) < arm && before !== i);
  do after = (after + 1) % n;
  while (gap(along, i, after, n) < arm && after !== i);
  const a = points[before]!;
  const b = points[after]!;
  return Math.abs(
    angleDifference(Math.atan2(b.y - here.y, b.x - here.x), Math.atan2(here.y - a.y, here.x - a.x)),
  );
}

/** Distances along a closed contour through these points, and once round it. */
export function traceAlong(x: Float64Array, y: Float64Array): Pick<Trace, 'along' | 'perimeter'> {
  const along = distances(Array.from(x, (_, i) => ({ x: x[i]!, y: y[i]! })));
  return { along, perimeter: along[x.length]! };
}
