/**
 * The fence between its measured points. Straight: straight pieces. Smooth: three points give the
 * one circle through them, when home lies inside it; otherwise distance is a cubic spline of bearing,
 * kept monotone between the points (Hyman 1983), so that it never bulges beyond them.
 */
import { degrees } from '../base/units';
import { unitFromBearing } from '../geometry/angle';
import {
  arcBetween,
  circleThrough,
  lineSegment,
  type ArcSegment,
  type Path,
} from '../geometry/arc';
import { pointDistance, pointLerp, pointScale, vectorLength, type Point } from '../geometry/point';
import type { Polyline } from '../geometry/polyline';
import { FLATTEN, SAME_ANGLE } from '../geometry/tolerance';
import type { FencePoint } from './model';

/** Right pole to left pole (counter-clockwise about the field). */
export type FenceShape =
  | { readonly kind: 'circle'; readonly arc: ArcSegment }
  | { readonly kind: 'line'; readonly line: Polyline };

/** `points` run left pole to right pole with increasing bearings, at least three. */
export function shapeFence(
  points: readonly FencePoint[],
  shape: 'smooth' | 'straight',
): FenceShape {
  const corners = points.map(fencePosition).reverse();
  if (shape === 'straight') return { kind: 'line', line: corners };
  const arc = points.length === 3 ? circleFence(corners) : null;
  return arc ? { kind: 'circle', arc } : { kind: 'line', line: curveFence(points).reverse() };
}

/** A fence point in the field frame. */
export const fencePosition = (p: FencePoint): Point =>
  pointScale(unitFromBearing(p.bearingDeg), p.distanceFt);

/** The fence as a path, right pole to left pole. */
export function fencePath(fence: FenceShape): Path {
  if (fence.kind === 'circle') return [fence.arc];
  return fence.line.slice(1).map((to, i) => lineSegment(fence.line[i]!, to));
}

function circleFence(corners: readonly Point[]): ArcSegment | null {
  const [right, middle, left] = corners as [Point, Point, Point];
  const circle = circleThrough(right, middle, left);
  if (!circle || vectorLength(circle.centre) >= circle.radius) return null;
  return arcBetween(circle.centre, right, left, 1);
}

function curveFence(points: readonly FencePoint[]): Point[] {
  const slopes = monotoneSlopes(points);
  const at = (i: number, bearingDeg: number): Point =>
    fencePosition({ bearingDeg, distanceFt: hermite(points, slopes, i, bearingDeg) });
  const out: Point[] = [];
  for (let i = 0; i + 1 < points.length; i++) {
    const from = points[i]!.bearingDeg;
    const to = points[i + 1]!.bearingDeg;
    out.push(at(i, from));
    // The halves first: a piece that turns both ways could pass through its own chord's middle.
    const middle = (from + to) / 2;
    flattenCurve((b) => at(i, b), from, middle, out);
    out.push(at(i, middle));
    flattenCurve((b) => at(i, b), middle, to, out);
  }
  out.push(fencePosition(points[points.length - 1]!));
  return out;
}

/** Points strictly between two bearings so that every chord stays within `FLATTEN` of the curve. */
function flattenCurve(
  at: (bearingDeg: number) => Point,
  from: number,
  to: number,
  out: Point[],
): void {
  const middle = (from + to) / 2;
  const curve = at(middle);
  const gap = pointDistance(curve, pointLerp(at(from), at(to), 0.5));
  if (gap <= FLATTEN || degrees(to - from) < SAME_ANGLE) return;
  flattenCurve(at, from, middle, out);
  out.push(curve);
  flattenCurve(at, middle, to, out);
}

function hermite(
  points: readonly FencePoint[],
  slopes: readonly number[],
  i: number,
  bearingDeg: number,
): number {
  const a = points[i]!;
  const b = points[i + 1]!;
  const h = b.bearingDeg - a.bearingDeg;
  const t = (bearingDeg - a.bearingDeg) / h;
  const t2 = t * t;
  const t3 = t2 * t;
  return (
    (2 * t3 - 3 * t2 + 1) * a.distanceFt +
    (t3 - 2 * t2 + t) * h * slopes[i]! +
    (3 * t2 - 2 * t3) * b.distanceFt +
    (t3 - t2) * h * slopes[i + 1]!
  );
}

/**
 * Feet per degree at each point: those of the natural cubic spline, kept from overshooting. A curve
 * through them is smooth in its bend wherever nothing had to be kept back.
 */
function monotoneSlopes(points: readonly FencePoint[]): number[] {
  const h = points.slice(1).map((p, i) => p.bearingDeg - points[i]!.bearingDeg);
  const d = points.slice(1).map((p, i) => (p.distanceFt - points[i]!.distanceFt) / h[i]!);
  return splineSlopes(h, d).map((slope, i) => keepMonotone(slope, d[i - 1], d[i]));
}

/** Slopes of the natural cubic spline over steps `h` with chord slopes `d` (de Boor 1978, ch. IV). */
function splineSlopes(h: readonly number[], d: readonly number[]): number[] {
  const last = h.length;
  const rows = Array.from({ length: last + 1 }, (_, i) => {
    if (i === 0) return { below: 0, at: 2, above: 1, right: 3 * d[0]! };
    if (i === last) return { below: 1, at: 2, above: 0, right: 3 * d[last - 1]! };
    const [h0, h1] = [h[i - 1]!, h[i]!];
    const right = 3 * (h1 * d[i - 1]! + h0 * d[i]!);
    return { below: h1, at: 2 * (h0 + h1), above: h0, right };
  });
  return solveTridiagonal(rows);
}

interface Row {
  readonly below: number;
  readonly at: number;
  readonly above: number;
  readonly right: number;
}

/** Elimination down, substitution up; the rows are diagonally dominant. */
function solveTridiagonal(rows: readonly Row[]): number[] {
  const above: number[] = [];
  const right: number[] = [];
  rows.forEach((row, i) => {
    const pivot = row.at - row.below * (above[i - 1] ?? 0);
    above.push(row.above / pivot);
    right.push((row.right - row.below * (right[i - 1] ?? 0)) / pivot);
  });
  const out: number[] = [];
  for (let i = rows.length - 1; i >= 0; i--) out[i] = right[i]! - above[i]! * (out[i + 1] ?? 0);
  return out;
}

/** At most three times the gentler chord, and level at a turning point (Hyman 1983). */
function keepMonotone(slope: number, before?: number, after?: number): number {
  const chords = [before, after].filter((d) => d !== undefined);
  const up = chords.every((d) => d >= 0);
  const down = chords.every((d) => d <= 0);
  if (!up && !down) return 0;
  const most = 3 * Math.min(...chords.map(Math.abs));
  return up ? Math.min(Math.max(slope, 0), most) : Math.max(Math.min(slope, 0), -most);
}
