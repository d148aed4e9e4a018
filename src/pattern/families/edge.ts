/** Bands beside one side of the grass, following it. */
import type { Feet } from '../../base/units';
import type { Field } from '../../field/model';
import { grassSides } from '../../field/grass-sides';
import { extendLine, parallelLine, roundKinks } from '../../geometry/parallel-line';
import { pointDistance, pointSubtract, vectorDot } from '../../geometry/point';
import { polylineNearest, type Polyline } from '../../geometry/polyline';
import type { Region } from '../../geometry/region';
import type { GuideBand } from '../guide-band';
import type { EdgeSide, Way } from '../model';
import type { BandWidth, Guides, SwathWidths } from '../resolved';
import { spanBands, wayOf } from '../span-bands';
import { bandBetween } from './between-lines';

type Edge = Extract<Guides, { readonly kind: 'edge' }>;

/** The side runs on beyond its corners by this, straight. */
const BEYOND: Feet = 500;
/** Kinks are driven as bends of this many turning radii. */
const ROUNDED = 3;

/** The lines of a side, grass on their left, running on straight beyond its corners. */
export const sideLines = (field: Field, of: EdgeSide): Polyline[] =>
  grassSides(field)
    .filter((side) => side.name === of)
    .map((side) => extendLine(side.line, BEYOND));

/** Bands over `reach` from `inset` feet inside the side on; `out` keeps the side on the right. */
export function layEdge(
  guides: Edge,
  widths: readonly BandWidth[],
  lays: readonly Way[],
  reach: Region,
  swath: SwathWidths,
  field: Field,
  inset: Feet,
): GuideBand[] {
  return sideLines(field, guides.of).flatMap((line) => {
    const high = Math.max(0, ...reach.flat().map((p) => polylineNearest(line, p).distance));
    const bands: GuideBand[] = [];
    for (const span of spanBands(widths, inset + guides.shiftFt, inset, high)) {
      const [left, right] = [parallelLine(line, span.to), parallelLine(line, span.from)];
      if (!keepsItsWay(line, left)) break;
      const way = wayOf(lays, span.index);
      const band = bandBetween(span.index, left, right, span.passes, swath.swathFt, way);
      bands.push(withBends(band, ROUNDED * swath.turnRadiusFt));
    }
    return bands;
  });
}

/** The band with its passes rounded where the side has kinks. */
function withBends(band: GuideBand, radius: Feet): GuideBand {
  if (band.lanes.kind !== 'along') return band;
  const lines = band.lanes.lines.map((line) => roundKinks(line, radius));
  return { ...band, lanes: { ...band.lanes, lines } };
}

/** Whether a parallel line still runs the way of its own line: not past the middle of a bend. */
function keepsItsWay(line: Polyline, beside: Polyline): boolean {
  if (line.length !== beside.length) return false;
  return line.slice(1).every((p, i) => {
    const along = pointSubtract(p, line[i]!);
    const other = pointSubtract(beside[i + 1]!, beside[i]!);
    return pointDistance(p, line[i]!) === 0 || vectorDot(along, other) > 0;
  });
}
