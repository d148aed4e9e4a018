/** Which way a band is laid at a place. */
import { bearingDifference, vectorBearing } from '../geometry/angle';
import { pathFlatten } from '../geometry/arc';
import { pointSubtract, type Point } from '../geometry/point';
import { polylineNearest } from '../geometry/polyline';
import type { Region } from '../geometry/region';
import type { BandLay } from '../pattern/guide-band';

/** Bearing in degrees of the lay at `p`: along a guide, that of its nearest piece. */
export function layBearingAt(lay: BandLay, p: Point): number {
  if ('bearingDeg' in lay) return lay.bearingDeg;
  const line = pathFlatten(lay.guide, false);
  const { index } = polylineNearest(line, p);
  return vectorBearing(pointSubtract(line[index + 1]!, line[index]!));
}

/** Largest angle in degrees between the lays at two places of a region's outline, seen from its first. */
export function layTurn(lay: BandLay, region: Region): number {
  if ('bearingDeg' in lay) return 0;
  const bearings = region.flat().map((p) => layBearingAt(lay, p));
  return Math.max(0, ...bearings.map((b) => bearingDifference(b, bearings[0]!)));
}
