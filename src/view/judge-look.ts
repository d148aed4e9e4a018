/**
 * Whether the graphic can be read from a seat: the share of its outline across which the grass just
 * inside and just outside differ enough in brightness, in the burned-in state (every patch leans
 * fully its own way), under an even overcast.
 */
import { sourced } from '../base/sourced';
import {
  pointAlong,
  pointDistance,
  pointLerp,
  pointSubtract,
  vectorLeft,
  vectorUnit,
  type Point,
} from '../geometry/point';
import { polylineResample, type Polyline, type Ring } from '../geometry/polyline';
import type { Design } from '../design/model';
import { mapLays, type LayMap } from './lay-map';
import { apparentBrightness, michelsonContrast, type Eye } from './light';
import type { Legibility, SeatSpec } from './model';
import { indexRegion, type RegionIndex } from '../geometry/region-index';

/** Michelson contrast across the outline from which it counts as clear. */
export const CLEAR_CONTRAST = sourced(0.1, 'Michelson contrast', 'assumption');
/** Steps along the outline, and how far inside and outside of it the grass is looked at. */
const STEP_FT = 0.5;
const LOOK_FT = [0.4, 0.2, 0.1, 0.05] as const;

interface Piece {
  readonly from: Point;
  readonly to: Point;
  readonly clear: boolean;
}

interface Ground {
  readonly lays: LayMap;
  readonly graphic: RegionIndex;
  readonly eye: Eye;
}

/** `judgeLook` for several seats; the lays are prepared once. */
export function judgeLooks(design: Design, seats: readonly SeatSpec[]): Legibility[] {
  const lays = mapLays(design);
  const graphic = indexRegion(design.graphic);
  return seats.map((seat) => {
    const eye = { at: seat.at, heightFt: seat.eyeHeightFt };
    return judgeFrom(design, seat.id, { lays, graphic, eye });
  });
}

/**
 * Walks the outline in steps of half a foot or less. A place with no grass on one side has no
 * contrast. A design without a graphic has no outline: share 1 of 0 ft.
 */
export const judgeLook = (design: Design, seat: SeatSpec): Legibility =>
  judgeLooks(design, [seat])[0]!;

function judgeFrom(design: Design, seat: string, ground: Ground): Legibility {
  const stretches = design.graphic.flatMap((ring) => stretchesOf(piecesOf(ring, ground)));
  const outlineFt = sumLength(stretches);
  const clearFt = sumLength(stretches.filter((s) => s.clear));
  const below = stretches.filter((s) => !s.clear).sort((a, b) => b.lengthFt - a.lengthFt)[0];
  return {
    seat,
    share: outlineFt === 0 ? 1 : clearFt / outlineFt,
    threshold: CLEAR_CONTRAST.value,
    outlineFt,
    longestBelow: below?.line ?? [],
    longestBelowFt: below?.lengthFt ?? 0,
    pieces: stretches.map(({ line, clear }) => ({ line, clear })),
  };
}

function piecesOf(ring: Ring, ground: Ground): Piece[] {
  const points = polylineResample(ring, STEP_FT, true);
  return points.map((from, i) => {
    const to = points[(i + 1) % points.length]!;
    return { from, to, clear: contrastAcross(from, to, ground) >= CLEAR_CONTRAST.value };
  });
}

/** Contrast across the middle of one step of the outline; 0 where there is no grass. */
function contrastAcross(from: Point, to: Point, ground: Ground): number {
  const along = vectorUnit(pointSubtract(to, from));
  if (!along) return 0;
  const sides = sidesOf(pointLerp(from, to, 0.5), vectorLeft(along), ground.graphic);
  if (!sides) return 0;
  const [inside, outside] = sides.map((p) => brightnessAt(p, ground));
  return inside == null || outside == null ? 0 : michelsonContrast(inside, outside);
}

/** A point just inside and one just outside; nearer the line where the art is thin. */
function sidesOf(at: Point, normal: Point, graphic: RegionIndex): readonly [Point, Point] | null {
  for (const offset of LOOK_FT) {
    const left = pointAlong(at, normal, offset);
    const right = pointAlong(at, normal, -offset);
    const leftInside = graphic.contains(left);
    if (leftInside !== graphic.contains(right)) return leftInside ? [left, right] : [right, left];
  }
  return null;
}

function brightnessAt(p: Point, { lays, eye }: Ground): number | null {
  const lay = lays.at(p);
  return lay && apparentBrightness(lay, p, eye);
}

interface Stretch {
  readonly line: Polyline;
  readonly clear: boolean;
  readonly lengthFt: number;
}

/** Consecutive pieces of one kind joined; the walk starts at a change, so that no stretch is cut. */
function stretchesOf(pieces: readonly Piece[]): Stretch[] {
  const start = pieces.findIndex((p, i) => p.clear !== pieces.at(i - 1)!.clear);
  const walk = start <= 0 ? pieces : [...pieces.slice(start), ...pieces.slice(0, start)];
  const runs: { line: Point[]; clear: boolean; lengthFt: number }[] = [];
  for (const piece of walk) {
    let run = runs[runs.length - 1];
    if (run?.clear !== piece.clear) {
      run = { line: [piece.from], clear: piece.clear, lengthFt: 0 };
      runs.push(run);
    }
    run.line.push(piece.to);
    run.lengthFt += pointDistance(piece.from, piece.to);
  }
  return runs;
}

const sumLength = (stretches: readonly Stretch[]): number =>
  stretches.reduce((sum, s) => sum + s.lengthFt, 0);
