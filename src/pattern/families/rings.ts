/** Bands along circles about a point: rings, or arcs where the grass ends first. */
import type { Feet } from '../../base/units';
import { fullCircle, pathFlatten, pathReverse, type Path } from '../../geometry/arc';
import { pointDistance, type Point } from '../../geometry/point';
import type { Ring } from '../../geometry/polyline';
import { regionContains, regionEdgeDistance, type Region } from '../../geometry/region';
import type { LaidFamily } from '../guide-band';
import type { Way } from '../model';
import type { BandWidth, Guides, SwathWidths } from '../resolved';
import { passMiddles, spanBands, wayOf } from '../span-bands';

type Rings = Extract<Guides, { readonly kind: 'rings' }>;

/** Nearest and farthest that a region comes to a point; nearest is 0 inside it. */
export function reachFrom(
  centre: Point,
  reach: Region,
): { readonly near: Feet; readonly far: Feet } {
  const far = Math.max(0, ...reach.flat().map((p) => pointDistance(p, centre)));
  return { near: regionContains(reach, centre) ? 0 : regionEdgeDistance(reach, centre), far };
}

/** Rings over `reach`, innermost first; `out` runs clockwise. */
export function layRings(
  guides: Rings,
  widths: readonly BandWidth[],
  lays: readonly Way[],
  reach: Region,
  { swathFt, turnRadiusFt }: SwathWidths,
): LaidFamily {
  const { centre, shiftFt } = guides;
  const { near, far } = reachFrom(centre, reach);
  let tight = 0;
  const bands = spanBands(widths, shiftFt, near, far)
    .filter((span) => span.to > 0)
    .map((span) => {
      const way = wayOf(lays, span.index);
      const radii = passMiddles(span, swathFt);
      const driven = radii.filter((r) => r >= turnRadiusFt);
      tight += radii.length - driven.length;
      const inner = span.from > 0 ? [circleRing(centre, span.from)] : [];
      return {
        index: span.index,
        way,
        strip: [circleRing(centre, span.to), ...inner],
        lay: { guide: circlePath(centre, (Math.max(0, span.from) + span.to) / 2, way) },
        lanes: {
          kind: 'along' as const,
          closed: true,
          lines: driven.map((r) => pathFlatten(circlePath(centre, r, way), false)),
        },
      };
    });
  return { bands, tight };
}

const circleRing = (centre: Point, radius: Feet): Ring =>
  pathFlatten([fullCircle(centre, radius)], true);

function circlePath(centre: Point, radius: Feet, way: Way): Path {
  const counterClockwise: Path = [fullCircle(centre, radius)];
  return way === 'out' ? pathReverse(counterClockwise) : counterClockwise;
}
