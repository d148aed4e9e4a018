/** A frame turned to a lay: x across it (to the right of the driver), y along it. */
import { unitFromBearing } from '../geometry/angle';
import type { Point } from '../geometry/point';
import type { Polyline } from '../geometry/polyline';
import type { Region } from '../geometry/region';

export interface LayFrame {
  readonly bearingDeg: number;
  readonly along: Point;
  readonly across: Point;
}

/** The frame of a bearing in degrees; a rotation, so areas and turning senses stay. */
export function layFrame(bearingDeg: number): LayFrame {
  const along = unitFromBearing(bearingDeg);
  return { bearingDeg, along, across: { x: along.y, y: -along.x } };
}

/** A point of the field in the lay frame. */
export const intoFrame = (f: LayFrame, p: Point): Point => ({
  x: f.across.x * p.x + f.across.y * p.y,
  y: f.along.x * p.x + f.along.y * p.y,
});

/** A point of the lay frame back on the field. */
export const outOfFrame = (f: LayFrame, p: Point): Point => ({
  x: f.across.x * p.x + f.along.x * p.y,
  y: f.across.y * p.x + f.along.y * p.y,
});

/** Rings into the lay frame. */
export const regionIntoFrame = (f: LayFrame, region: Region): Region =>
  region.map((ring) => ring.map((p) => intoFrame(f, p)));

/** Lines or rings of the lay frame back on the field. */
export const linesOutOfFrame = (f: LayFrame, lines: readonly Polyline[]): Polyline[] =>
  lines.map((line) => line.map((p) => outOfFrame(f, p)));
