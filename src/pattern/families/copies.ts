/** Copies of one line, each a band's width to the right of the one before: waves, and drawn lines. */
import type { Feet } from '../../base/units';
import { vectorBearing } from '../../geometry/angle';
import { extendLine, roundKinks } from '../../geometry/parallel-line';
import { pointSubtract, type Point } from '../../geometry/point';
import { polylineResample, type Polyline } from '../../geometry/polyline';
import { regionBox, type Region } from '../../geometry/region';
import type { GuideBand } from '../guide-band';
import { intoFrame, layFrame, linesOutOfFrame, regionIntoFrame, type LayFrame } from '../lay-frame';
import type { Way } from '../model';
import type { BandWidth, Guides, SwathWidths } from '../resolved';
import { spanBands, wayOf } from '../span-bands';
import { bandBetween } from './between-lines';

type Waves = Extract<Guides, { readonly kind: 'waves' }>;
type Line = Extract<Guides, { readonly kind: 'line' }>;

/** Pieces of a copied line are at most so long, feet. */
const PIECE: Feet = 1.5;
/** Lines run on beyond the grass by this, so that every end is cut by the grass alone. */
const BEYOND: Feet = 30;
/** Corners of a drawn line are rounded to this many turning radii (its fillets are parabolas). */
const ROUNDED = 3;

/** Sine waves along a bearing; at the starting place the wave crosses its own middle to the right. */
export function layWaves(
  guides: Waves,
  widths: readonly BandWidth[],
  lays: readonly Way[],
  reach: Region,
  swath: SwathWidths,
): GuideBand[] {
  const frame = layFrame(guides.bearingDeg);
  const box = regionBox(regionIntoFrame(frame, reach));
  if (!box) return [];
  const origin = intoFrame(frame, guides.through);
  const count = Math.ceil((box.maxY - box.minY + 2 * BEYOND) / PIECE);
  const line = Array.from({ length: count + 1 }, (_, i) => {
    const y = box.minY - BEYOND + i * PIECE;
    const turn = (2 * Math.PI * (y - origin.y)) / guides.lengthFt;
    return { x: guides.heightFt * Math.sin(turn), y };
  });
  return copies(frame, line, origin.x + guides.shiftFt, widths, lays, box, swath);
}

/** Copies of a drawn line, square to the way from its first point to its last. */
export function layDrawnLine(
  guides: Line,
  widths: readonly BandWidth[],
  lays: readonly Way[],
  reach: Region,
  swath: SwathWidths,
): GuideBand[] {
  const { points } = guides;
  const frame = layFrame(vectorBearing(pointSubtract(points[points.length - 1]!, points[0]!)));
  const box = regionBox(regionIntoFrame(frame, reach));
  if (!box) return [];
  const own = points.map((p) => intoFrame(frame, p));
  const origin = own[0]!.x;
  const rounded = roundKinks(own, ROUNDED * swath.turnRadiusFt);
  const long = extendLine(rounded, 2 * (box.maxY - box.minY + BEYOND));
  const line = polylineResample(long, PIECE).map((p) => ({ x: p.x - origin, y: p.y }));
  return copies(frame, line, origin + guides.shiftFt, widths, lays, box, swath);
}

function copies(
  frame: LayFrame,
  line: readonly Point[],
  start: Feet,
  widths: readonly BandWidth[],
  lays: readonly Way[],
  box: { readonly minX: Feet; readonly maxX: Feet },
  { swathFt }: SwathWidths,
): GuideBand[] {
  const low = box.minX - Math.max(...line.map((p) => p.x));
  const high = box.maxX - Math.min(...line.map((p) => p.x));
  const at = (x: Feet): Polyline => {
    const moved = line.map((p) => ({ x: p.x + x, y: p.y }));
    return linesOutOfFrame(frame, [moved])[0]!;
  };
  return spanBands(widths, start, low, high).map((span) =>
    bandBetween(
      span.index,
      at(span.from),
      at(span.to),
      span.passes,
      swathFt,
      wayOf(lays, span.index),
    ),
  );
}
