/** Lines to be stroked: flattened, with their true corners marked, and cut into dashes. */
import {
  pointDistance,
  pointLerp,
  pointSubtract,
  vectorCross,
  vectorDot,
  vectorUnit,
  type Point,
} from '../../geometry/point';
import { SAME_POINT } from '../../geometry/tolerance';
import { flattenSubpath } from '../flatten-outline';
import type { Curve, Subpath } from '../outline';

/** Directions in and out of a corner, unit vectors. */
export interface Corner {
  readonly into: Point;
  readonly out: Point;
}

export interface TrackPoint {
  readonly at: Point;
  /** Set where the line turns sharply; a smooth bend has none. */
  readonly corner: Corner | null;
}

/** A flattened line. When `closed`, the first point is repeated as the last. */
export interface Track {
  readonly points: readonly TrackPoint[];
  readonly closed: boolean;
}

/**
 * Turns smaller than this (radians) are joined round whatever the join: the difference to a mitre or
 * a bevel is under 1/800 of half the width.
 */
const SMOOTH_TURN = 0.1;

/** The subpath as a track; curves stay within `chord` of the true line. Repeated points are dropped. */
export function trackOf(sub: Subpath, chord: number): Track {
  const curves = closedCurves(sub);
  const points: TrackPoint[] = [{ at: sub.start, corner: null }];
  let from = sub.start;
  let before: Point | null = null;
  let first: Point | null = null;
  for (const curve of curves) {
    const out = departure(from, curve);
    if (out) {
      first ??= out;
      markCorner(points, before, out);
      appendCurve(points, from, curve, chord);
      before = arrival(from, curve) ?? before;
    }
    from = curve.to;
  }
  if (sub.closed && first) {
    markCorner(points, before, first);
    return { points: [{ ...points[points.length - 1]! }, ...points.slice(1)], closed: true };
  }
  return { points, closed: false };
}

/** With the closing line, when the path is closed and does not end where it began. */
function closedCurves(sub: Subpath): readonly Curve[] {
  const last = sub.curves[sub.curves.length - 1];
  if (!sub.closed || !last || pointDistance(last.to, sub.start) === 0) return sub.curves;
  return [...sub.curves, { kind: 'line', to: sub.start }];
}

function appendCurve(points: TrackPoint[], from: Point, curve: Curve, chord: number): void {
  const flat = flattenSubpath({ start: from, curves: [curve], closed: false }, chord);
  for (const at of flat.slice(1)) {
    if (pointDistance(at, points[points.length - 1]!.at) > 0) points.push({ at, corner: null });
  }
}

function markCorner(points: TrackPoint[], into: Point | null, out: Point): void {
  if (!into) return;
  const turn = Math.abs(Math.atan2(vectorCross(into, out), vectorDot(into, out)));
  const last = points.length - 1;
  if (turn > SMOOTH_TURN) points[last] = { at: points[last]!.at, corner: { into, out } };
}

/** Direction in which a curve leaves `from`; null for a curve of no length. */
function departure(from: Point, curve: Curve): Point | null {
  const ahead = curve.kind === 'line' ? [curve.to] : [curve.c1, curve.c2, curve.to];
  for (const p of ahead) {
    const unit = vectorUnit(pointSubtract(p, from));
    if (unit) return unit;
  }
  return null;
}

/** Direction in which a curve reaches its end. */
function arrival(from: Point, curve: Curve): Point | null {
  const behind = curve.kind === 'line' ? [from] : [curve.c2, curve.c1, from];
  for (const p of behind) {
    const unit = vectorUnit(pointSubtract(curve.to, p));
    if (unit) return unit;
  }
  return null;
}

/** Length along the track from its first point to its last. */
export function trackLength(track: Track): number {
  let sum = 0;
  for (let i = 1; i < track.points.length; i++) {
    sum += pointDistance(track.points[i - 1]!.at, track.points[i]!.at);
  }
  return sum;
}

/** The painted parts of a dashed track; `dashes` alternate on and off, and sum to more than 0. */
export function cutDashes(track: Track, dashes: readonly number[], offset: number): Track[] {
  const out: Track[] = [];
  let { index, left } = dashAt(dashes, offset);
  let current: TrackPoint[] = [{ at: track.points[0]!.at, corner: null }];
  const turnOver = (at: Point): void => {
    if (index % 2 === 0) out.push(openTrack(current, at));
    current = [{ at, corner: null }];
    index = (index + 1) % dashes.length;
    left = dashes[index]!;
  };
  for (let i = 1; i < track.points.length; i++) {
    const end = track.points[i]!;
    let from = track.points[i - 1]!.at;
    let rest = pointDistance(from, end.at);
    // A dash that ends on a corner ends there, without a join; so does one that starts there.
    while (rest > SAME_POINT && rest >= left - SAME_POINT) {
      from = pointLerp(from, end.at, Math.min(1, left / rest));
      turnOver(from);
      rest = pointDistance(from, end.at);
    }
    if (rest > SAME_POINT) {
      left -= rest;
      current.push(end);
    }
  }
  if (index % 2 === 0 && current.length > 1) out.push({ points: current, closed: false });
  return out;
}

const openTrack = (points: readonly TrackPoint[], end: Point): Track => ({
  points: [...points, { at: end, corner: null }],
  closed: false,
});

/** Which dash a line starts in, and how much of it is left. */
function dashAt(dashes: readonly number[], offset: number): { index: number; left: number } {
  const cycle = dashes.reduce((n, d) => n + d, 0);
  let rest = ((offset % cycle) + cycle) % cycle;
  let index = 0;
  while (rest >= dashes[index]! && index < dashes.length - 1) {
    rest -= dashes[index]!;
    index += 1;
  }
  return { index, left: dashes[index]! - rest };
}
