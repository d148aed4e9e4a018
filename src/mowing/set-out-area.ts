/** The set-out area: where stakes, pins and strings stand, and no powered machine may be. */
import { convexHull } from '../geometry/convex-hull';
import { regionOffset, type Region } from '../geometry/region';

/** Room round the graphic for pins and for people with tapes, feet; assumption. */
export const SET_OUT_MARGIN_FT = 10;

/** The convex hull of the graphic grown by the margin; empty without a graphic. */
export function setOutArea(graphic: Region): Region {
  const hull = convexHull(graphic.flat());
  return hull.length < 3 ? [] : regionOffset([hull], SET_OUT_MARGIN_FT);
}
