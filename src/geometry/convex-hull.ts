/** Convex hulls, by turf. */
import { convex, multiPoint } from '@turf/turf';
import type { Point } from './point';
import { ringSignedArea, type Ring } from './polyline';

/**
 * The convex hull, counter-clockwise; empty when the points span no area. turf's `convex` orders
 * points by their plain coordinates, so it is right in planar feet.
 */
export function convexHull(points: readonly Point[]): Ring {
  if (points.length < 3) return [];
  const hull = convex(multiPoint(points.map((p) => [p.x, p.y])));
  const ring = (hull?.geometry.coordinates[0] ?? []).slice(0, -1);
  const out = ring.map(([x, y]) => ({ x: x!, y: y! }));
  return ringSignedArea(out) < 0 ? out.reverse() : out;
}
