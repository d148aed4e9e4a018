/**
 * Bands along rays from a point. They widen as they go; where a band has become twice as wide as it
 * began it splits in two, so that every band is between one and two widths wide.
 */
import type { Feet } from '../../base/units';
import { bearingNormalise, unitFromBearing } from '../../geometry/angle';
import { pointAlong, type Point } from '../../geometry/point';
import type { Polyline } from '../../geometry/polyline';
import type { Region } from '../../geometry/region';
import type { GuideBand } from '../guide-band';
import type { Way } from '../model';
import type { BandWidth, Guides, SwathWidths } from '../resolved';
import { wayOf } from '../span-bands';
import { reachFrom } from './rings';

type Rays = Extract<Guides, { readonly kind: 'rays' }>;

/** A band: two bearings and two distances from the centre. */
interface Wedge {
  readonly index: number;
  readonly fromDeg: number;
  readonly toDeg: number;
  readonly near: Feet;
  readonly far: Feet;
}

const RADIANS = Math.PI / 180;
/** A wedge this much wider than n passes (share of one) is still mown in n. */
const PASS_SLACK = 0.02;
/** Chords of a wedge's ends: at most so many degrees. */
const END_STEP_DEG = 0.5;

/** Wedges over `reach`, the nearest ring of them first; `out` runs away from the centre. */
export function layRays(
  guides: Rays,
  widths: readonly BandWidth[],
  lays: readonly Way[],
  reach: Region,
  { swathFt }: SwathWidths,
): GuideBand[] {
  const { centre, fromDeg, toDeg } = guides;
  const { near, far } = reachFrom(centre, reach);
  const span = (toDeg - fromDeg) * RADIANS;
  const width = widths[0]!.ft;
  const begin = Math.max(near, (lays.length * width) / span);
  const fitting = Math.max(lays.length, Math.floor((span * begin) / width));
  const first = toDeg - fromDeg < 360 ? fitting : fitting - (fitting % lays.length);
  const out: GuideBand[] = [];
  for (let count = first, r = begin; r < far; count *= 2, r *= 2) {
    const step = (toDeg - fromDeg) / count;
    for (let i = 0; i < count; i++) {
      const wedge = {
        index: i,
        fromDeg: fromDeg + i * step,
        toDeg: fromDeg + (i + 1) * step,
        near: r,
        far: Math.min(2 * r, far + swathFt),
      };
      out.push(wedgeBand(centre, wedge, swathFt, wayOf(lays, i)));
    }
  }
  return out;
}

function wedgeBand(centre: Point, wedge: Wedge, swathFt: Feet, way: Way): GuideBand {
  const middle = (wedge.fromDeg + wedge.toDeg) / 2;
  return {
    index: wedge.index,
    way,
    strip: [wedgeRing(centre, wedge)],
    lay: { bearingDeg: bearingNormalise(middle + (way === 'out' ? 0 : 180)) },
    lanes: {
      kind: 'along',
      closed: false,
      lines: wedgeLines(centre, wedge, swathFt).map((l) => (way === 'out' ? l : [...l].reverse())),
    },
  };
}

/** A pass begins so far (feet) beyond where it just fits, so that its corner stays inside the wedge. */
const FIT: Feet = 0.2;

/**
 * Passes beside one another from the left side on, each from where it fits into the wedge, and one flush
 * with the right side the whole way: it covers what is left of a pass's width.
 */
function wedgeLines(centre: Point, wedge: Wedge, swathFt: Feet): Polyline[] {
  const turn = (wedge.toDeg - wedge.fromDeg) * RADIANS;
  const passes = Math.ceil((wedge.far * turn) / swathFt - PASS_SLACK);
  const far = wedge.far + swathFt;
  const fits = (count: number) => Math.max(wedge.near - swathFt, (count * swathFt) / turn + FIT);
  const beside = (deg: number, r: Feet, side: number) =>
    pointAlong(pointAlong(centre, unitFromBearing(deg), r), unitFromBearing(deg + 90), side);
  const left = Array.from({ length: Math.max(0, passes - 1) }, (_, i) => {
    const at = (r: Feet) => beside(wedge.fromDeg, r, (i + 0.5) * swathFt);
    return [at(fits(i + 1)), at(far)];
  });
  const right = (r: Feet) => beside(wedge.toDeg, r, -swathFt / 2);
  return [...left, [right(fits(1)), right(far)]];
}

function wedgeRing(centre: Point, wedge: Wedge): Point[] {
  const pieces = Math.max(1, Math.ceil((wedge.toDeg - wedge.fromDeg) / END_STEP_DEG));
  const arc = (r: Feet) =>
    Array.from({ length: pieces + 1 }, (_, i) => {
      const deg = wedge.fromDeg + ((wedge.toDeg - wedge.fromDeg) * i) / pieces;
      return pointAlong(centre, unitFromBearing(deg), r);
    });
  return [...arc(wedge.near), ...arc(wedge.far).reverse()];
}
