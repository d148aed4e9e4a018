/**
 * The lay as it is made: every stretch that a reel, roller or broom leans, cut into short strips, in
 * the order in which they are finished. Painted in that order, a later one relays what it goes over.
 */
import type { Seconds } from '../../base/units';
import { pointDistance, pointLerp, type Point } from '../../geometry/point';
import { polylineBetween, polylineLength } from '../../geometry/polyline';
import type { Leg } from '../../mowing/model';
import type { Tone } from './pattern-tone';

export interface LayStrip {
  readonly fromS: Seconds;
  readonly toS: Seconds;
  readonly points: readonly Point[];
  readonly widthFt: number;
  /** How far the blades lean back at the plate: +1 toward home, −1 away. */
  readonly lean: number;
  readonly phase: Leg['phase'];
  /** The pattern's own tone; null where it is drawn by its lean. */
  readonly tone: Tone | null;
}

/** Strips are no longer than this, feet, and lean no more than `LEAN_STEP` one way along themselves. */
const STRIP_FT = 24;
const LEAN_STEP = 0.08;

/** Strips of all the legs that lay, by the moment they are finished. */
export function layStrips(
  legs: readonly Leg[],
  toneOf: (leg: Leg) => Tone | null = () => null,
): LayStrip[] {
  return legs
    .filter((leg) => leg.lays && leg.points.length > 1)
    .flatMap((leg) => stripsOf(leg, toneOf(leg)))
    .sort((a, b) => a.toS - b.toS || a.fromS - b.fromS);
}

function stripsOf(leg: Leg, tone: Tone | null): LayStrip[] {
  const pieces = piecesOf(leg.points);
  const length = pieces.reduce((n, p) => n + p.lengthFt, 0);
  if (length === 0) return [];
  const perFoot = leg.seconds / length;
  const strips: LayStrip[] = [];
  let start = 0;
  let open: Piece[] = [];
  const close = (): void => {
    if (open.length === 0) return;
    const long = open.reduce((n, p) => n + p.lengthFt, 0);
    strips.push({
      fromS: leg.startS + start * perFoot,
      toS: leg.startS + (start + long) * perFoot,
      points: [open[0]!.from, ...open.map((p) => p.to)],
      widthFt: leg.widthFt,
      lean: open.reduce((n, p) => n + p.lean * p.lengthFt, 0) / long,
      phase: leg.phase,
      tone,
    });
    start += long;
    open = [];
  };
  for (const piece of pieces) {
    const first = open[0];
    const long = open.reduce((n, p) => n + p.lengthFt, 0);
    const isOther = first !== undefined && Math.abs(piece.lean - first.lean) > LEAN_STEP;
    if (isOther || long + piece.lengthFt > STRIP_FT) close();
    open.push(piece);
  }
  close();
  return strips;
}

interface Piece {
  readonly from: Point;
  readonly to: Point;
  readonly lengthFt: number;
  readonly lean: number;
}

/** Straight pieces, none longer than a strip. */
function piecesOf(line: readonly Point[]): Piece[] {
  return line.slice(1).flatMap((b, i) => {
    const a = line[i]!;
    const length = pointDistance(a, b);
    if (length === 0) return [];
    const count = Math.ceil(length / STRIP_FT);
    return Array.from({ length: count }, (_, k): Piece => {
      const from = pointLerp(a, b, k / count);
      const to = pointLerp(a, b, (k + 1) / count);
      return { from, to, lengthFt: length / count, lean: leanOf(from, to) };
    });
  });
}

/** Lean at the middle of a piece, as seen from the plate. */
function leanOf(a: Point, b: Point): number {
  const middle = pointLerp(a, b, 0.5);
  const far = Math.hypot(middle.x, middle.y) || 1;
  const long = pointDistance(a, b) || 1;
  return -((b.x - a.x) * middle.x + (b.y - a.y) * middle.y) / (far * long);
}

/** How many strips are finished at `clockS`. */
export function stripsDone(strips: readonly LayStrip[], clockS: Seconds): number {
  let low = 0;
  let high = strips.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (strips[middle]!.toS <= clockS) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** The strip as far as it is made at `clockS`, begun and not finished. */
export function stripSoFar(strip: LayStrip, clockS: Seconds): readonly Point[] {
  const share = (clockS - strip.fromS) / (strip.toS - strip.fromS);
  return polylineBetween(strip.points, 0, share * polylineLength(strip.points));
}
