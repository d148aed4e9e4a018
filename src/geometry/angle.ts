/**
 * Angles. `angle`: radians counter-clockwise from +x. `bearing`: degrees clockwise from +y (from
 * home plate toward second base and centre field).
 */
import type { Point } from './point';

const TURN = 2 * Math.PI;

export const vectorAngle = (v: Point): number => Math.atan2(v.y, v.x);
export const unitFromAngle = (angle: number): Point => ({ x: Math.cos(angle), y: Math.sin(angle) });

/** Angle in [0, 2π). */
export function angleNormalise(angle: number): number {
  const a = angle % TURN;
  return a < 0 ? a + TURN : a;
}

/** Signed difference a − b in (−π, π]. */
export function angleDifference(a: number, b: number): number {
  const d = angleNormalise(a - b);
  return d > Math.PI ? d - TURN : d;
}

/** The same bearing in [0, 360). */
export function bearingNormalise(bearingDeg: number): number {
  const b = bearingDeg % 360;
  return b < 0 ? b + 360 : b;
}

export const unitFromBearing = (bearingDeg: number): Point => {
  const a = (bearingDeg * Math.PI) / 180;
  return { x: Math.sin(a), y: Math.cos(a) };
};

/** Bearing of a vector, degrees in [0, 360). */
export const vectorBearing = (v: Point): number =>
  bearingNormalise((Math.atan2(v.x, v.y) * 180) / Math.PI);

/** Smallest angle between two bearings, degrees in [0, 180]. */
export function bearingDifference(aDeg: number, bDeg: number): number {
  const d = bearingNormalise(aDeg - bDeg);
  return d > 180 ? 360 - d : d;
}
