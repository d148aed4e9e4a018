/** The set-out area: where stakes, pins and strings stand, and no powered machine may be. */
import { pointOrientation, type Point } from '../geometry/point';
import type { Ring } from '../geometry/polyline';
import { regionOffset, type Region } from '../geometry/region';

/** Room round the graphic for pins and for people with tapes, feet; assumption. */
export const SET_OUT_MARGIN_FT = 10;

/** The convex hull of the graphic grown by the margin; empty without a graphic. */
export function setOutArea(graphic: Region): Region {
  const hull = convexHull(graphic.flat());
  return hull.length < 3 ? [] : regionOffset([hull], SET_OUT_MARGIN_FT);
}

/** Andrew's monotone chain (1979), counter-clockwise. */
function convexHull(points: readonly Point[]): Ring {
  const sorted = [...points].sort((a, b) => a.x - b.x || a.y - b.y);
  const lower = halfHull(sorted);
  const upper = halfHull(sorted.reverse());
  return [...lower.slice(0, -1), ...upper.slice(0, -1)];
}

function halfHull(sorted: readonly Point[]): Point[] {
  const hull: Point[] = [];
  for (const p of sorted) {
    while (
      hull.length > 1 &&
      pointOrientation(hull[hull.length - 2]!, hull[hull.length - 1]!, p) <= 0
    ) {
      hull.pop();
    }
    hull.push(p);
  }
  return hull;
}
