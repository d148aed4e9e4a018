/** Bands along the arms of a spiral that widens by the same width at every turn (Archimedes'). */
import type { Feet } from '../../base/units';
import { unitFromBearing } from '../../geometry/angle';
import { pointAlong, pointDistance, type Point } from '../../geometry/point';
import type { Region } from '../../geometry/region';
import type { GuideBand, LaidFamily } from '../guide-band';
import type { Way } from '../model';
import type { BandWidth, Guides, SwathWidths } from '../resolved';
import { wayOf } from '../span-bands';
import { bandBetween } from './between-lines';
import { reachFrom } from './rings';

type Spiral = Extract<Guides, { readonly kind: 'spiral' }>;

/** Pieces of an arm to a turn: the same bearings on every turn, so that neighbouring edges are one line. */
const PIECES = 360;

/** One arm for each of the repeated ways; `out` runs away from the centre. */
export function laySpiral(
  guides: Spiral,
  widths: readonly BandWidth[],
  lays: readonly Way[],
  reach: Region,
  swath: SwathWidths,
): LaidFamily {
  const arms = lays.map((_, i) => widths[i % widths.length]!);
  const pitch = arms.reduce((n, w) => n + w.ft, 0);
  const { far } = reachFrom(guides.centre, reach);
  let inner = 0;
  const bands = arms.map((width, index) => {
    const outer = inner + width.ft;
    const angles = armAngles(inner, pitch, far, swath);
    const edge = (offset: Feet) =>
      angles.map((a) => armPoint(guides, offset + (pitch * a) / (2 * Math.PI), a));
    const [near, wide] = [edge(inner), edge(outer)];
    const [left, right] = guides.turn === 'ccw' ? [near, wide] : [wide, near];
    inner = outer;
    const way = wayOf(lays, index);
    return drivable(
      bandBetween(index, left, right, width.passes, swath.swathFt, way),
      guides.centre,
      swath.turnRadiusFt,
    );
  });
  return { bands, tight: 0 };
}

/** Turn angles of an arm from where its inner edge is a swath from the centre until beyond `far`. */
function armAngles(inner: Feet, pitch: Feet, far: Feet, { swathFt }: SwathWidths): number[] {
  const first = Math.max(0, Math.ceil((PIECES * (swathFt - inner)) / pitch));
  const last = Math.ceil((PIECES * (far + pitch - inner)) / pitch);
  return Array.from({ length: last - first }, (_, i) => (2 * Math.PI * (first + i)) / PIECES);
}

function armPoint(guides: Spiral, radius: Feet, angle: number): Point {
  const degrees = (angle * 180) / Math.PI;
  const bearing = guides.turn === 'cw' ? degrees : -degrees;
  return pointAlong(guides.centre, unitFromBearing(bearing), radius);
}

/** The band without the stretches of its passes that bend tighter than the mower does. */
function drivable(band: GuideBand, centre: Point, radius: Feet): GuideBand {
  if (band.lanes.kind !== 'along') return band;
  const lines = band.lanes.lines
    .map((line) => line.filter((p) => pointDistance(p, centre) >= radius))
    .filter((line) => line.length > 1);
  return { ...band, lanes: { ...band.lanes, lines } };
}
