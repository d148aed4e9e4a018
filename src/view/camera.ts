/**
 * A pinhole camera at a seat. Its axis is level, so that uprights stay upright; the picture is
 * shifted up or down until the point looked at sits where the eye wants it.
 */
import { degrees, type Feet } from '../base/units';
import { invariant } from '../base/result';
import { vectorLeft, vectorDot, vectorUnit, pointSubtract, type Point } from '../geometry/point';
import type { SeatSpec } from './model';

/** Across the picture: about what a spectator takes in without turning his head. */
const ANGLE_OF_VIEW = degrees(42);
/** Where the point looked at sits, from the top of the picture. */
const LOOK_AT_HEIGHT = 0.38;
/** A seat that looks down more steeply than this keeps its target lower in the picture. */
const STEEPEST = Math.tan(degrees(70));
/** Nearer than this the picture plane cuts. */
export const NEAR_FT: Feet = 1;

export interface Camera {
  readonly width: number;
  readonly height: number;
  readonly eye: Point;
  readonly eyeHeightFt: Feet;
  /** Level unit vectors: the axis, and to the right of it. */
  readonly forward: Point;
  readonly right: Point;
  /** Distance of the picture plane, pixels. */
  readonly focal: number;
  readonly centreX: number;
  /** Row of the horizon, pixels from the top; may lie off the picture. */
  readonly horizonY: number;
}

/** A place in the picture: pixels from the top left corner, and feet along the axis. */
export interface Seen {
  readonly x: number;
  readonly y: number;
  readonly depthFt: Feet;
}

/** `width` and `height` in pixels. The seat must have passed `checkSeat`. */
export function makeCamera(seat: SeatSpec, width: number, height: number): Camera {
  const forward = vectorUnit(pointSubtract(seat.lookAt, seat.at));
  invariant(forward, 'a seat looks at a point other than its own place');
  invariant(seat.eyeHeightFt > 0, 'a seat is above the ground');
  const focal = width / 2 / Math.tan(ANGLE_OF_VIEW / 2);
  const down = seat.eyeHeightFt / vectorDot(pointSubtract(seat.lookAt, seat.at), forward);
  return {
    width,
    height,
    eye: seat.at,
    eyeHeightFt: seat.eyeHeightFt,
    forward,
    right: { x: -vectorLeft(forward).x, y: -vectorLeft(forward).y },
    focal,
    centreX: width / 2,
    horizonY: LOOK_AT_HEIGHT * height - focal * Math.min(down, STEEPEST),
  };
}

/** Where a point `upFt` above the ground is seen; null when it is not ahead of the camera. */
export function seePoint(camera: Camera, p: Point, upFt: Feet = 0): Seen | null {
  const from = pointSubtract(p, camera.eye);
  const depthFt = vectorDot(from, camera.forward);
  if (depthFt < NEAR_FT) return null;
  const scale = camera.focal / depthFt;
  return {
    x: camera.centreX + vectorDot(from, camera.right) * scale,
    y: camera.horizonY + (camera.eyeHeightFt - upFt) * scale,
    depthFt,
  };
}

/** The ground point seen at a place in the picture; null at or above the horizon. */
export function groundAt(camera: Camera, x: number, y: number): Point | null {
  if (y <= camera.horizonY) return null;
  const depthFt = (camera.eyeHeightFt * camera.focal) / (y - camera.horizonY);
  const sideFt = ((x - camera.centreX) * depthFt) / camera.focal;
  return {
    x: camera.eye.x + camera.forward.x * depthFt + camera.right.x * sideFt,
    y: camera.eye.y + camera.forward.y * depthFt + camera.right.y * sideFt,
  };
}

/** A point in space, feet. */
export interface SpacePoint extends Point {
  readonly up: Feet;
}

/** A closed ring in space as seen: cut at the near plane, empty when all of it is behind. */
export function seeRing(camera: Camera, ring: readonly SpacePoint[]): Seen[] {
  const depth = (p: Point): number => vectorDot(pointSubtract(p, camera.eye), camera.forward);
  const out: Seen[] = [];
  ring.forEach((b, i) => {
    const a = ring[(i === 0 ? ring.length : i) - 1]!;
    const da = depth(a) - NEAR_FT;
    const db = depth(b) - NEAR_FT;
    if (da < 0 !== db < 0) out.push(seeAhead(camera, spaceLerp(a, b, da / (da - db))));
    if (db >= 0) out.push(seeAhead(camera, b));
  });
  return out;
}

const spaceLerp = (a: SpacePoint, b: SpacePoint, t: number): SpacePoint => ({
  x: a.x + t * (b.x - a.x),
  y: a.y + t * (b.y - a.y),
  up: a.up + t * (b.up - a.up),
});

/** As `seePoint` for a point on or beyond the near plane, rounding forgiven. */
function seeAhead(camera: Camera, p: SpacePoint): Seen {
  const from = pointSubtract(p, camera.eye);
  const depthFt = Math.max(NEAR_FT, vectorDot(from, camera.forward));
  const scale = camera.focal / depthFt;
  return {
    x: camera.centreX + vectorDot(from, camera.right) * scale,
    y: camera.horizonY + (camera.eyeHeightFt - p.up) * scale,
    depthFt,
  };
}

/** Whether the seat is left of the edge: a counter-clockwise outer ring then shows its inner face. */
export const facesSeat = (camera: Camera, from: Point, to: Point): boolean =>
  vectorDot(vectorLeft(pointSubtract(to, from)), pointSubtract(camera.eye, from)) > 0;
