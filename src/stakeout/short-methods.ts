/** Setting a stake with a short tape from two places near it: square to a line, or to its middle. */
import { roundReading, type LengthSystem, type Reading } from '../base/quantity';
import { inches, type Feet } from '../base/units';
import { semiMajor95, ELLIPSE_FACTOR_95 } from '../adjust/ellipse';
import {
  halvingSigmaIn,
  pointByChord,
  pointByOffset,
  type OffsetTools,
} from '../adjust/offset-point';
import { preciseCovariance, tapeSigmaIn, type PrecisePoint } from '../adjust/precise-point';
import { pointDistance, pointOrientation, type Point } from '../geometry/point';
import { LONGEST_BASE_FT, LONGEST_OFFSET_FT, SHORTEST_BASE_FT, SHORTEST_OFFSET_FT } from './limits';
import type { SetMethod, SquareTool, StakeoutSpec } from './model';
import { tapesAtHand } from './tapes';
import type { SetStake } from './ties';

/** One sigma of a right angle, degrees: common practice, no source. */
export const SQUARE_SIGMA_DEG: Readonly<Record<SquareTool, number>> = {
  eye: 1.5,
  square: 0.5,
  triangle: 0.15,
};

/** A control or an earlier stake that a short line is stretched from. */
export interface ShortEnd {
  readonly id: string;
  readonly point: PrecisePoint;
}

/** What short offsets are measured with: the first tape, and the crew's square. */
export const offsetTools = (spec: StakeoutSpec): OffsetTools => ({
  tape: tapesAtHand(spec)[0]!,
  squareSigma: (SQUARE_SIGMA_DEG[spec.square ?? 'square'] * Math.PI) / 180,
});

/** Share of the tolerance that a short stake may err against the places that it is set from. */
const RELATIVE_SHARE = 0.5;
/** The middle of a chord serves while the wanted place is this near to square above it. */
const MIDDLE_FT = inches(0.25);

/** Where a place lies against a line: the foot's distance from a, and the offset, left positive. */
export interface Foot {
  readonly length: number;
  readonly along: number;
  readonly offset: number;
}

/** The foot of `p` on the line from `a` to `b`, feet. */
export function footOn(a: Point, b: Point, p: Point): Foot {
  const length = pointDistance(a, b);
  const along = ((p.x - a.x) * (b.x - a.x) + (p.y - a.y) * (b.y - a.y)) / length;
  return { length, along, offset: pointOrientation(a, b, p) / length };
}

/** Whether a place may be set from that line: its length, the foot between its ends, the offset. */
export function footServes({ length, along, offset }: Foot): boolean {
  const far = Math.abs(offset);
  return (
    length >= SHORTEST_BASE_FT &&
    length <= LONGEST_BASE_FT &&
    along > 0 &&
    along < length &&
    far <= LONGEST_OFFSET_FT &&
    far >= SHORTEST_OFFSET_FT
  );
}

/** Whether the foot is the line's middle, as near as a crew finds it. */
export const isMiddle = (foot: Foot): boolean =>
  Math.abs(foot.along - foot.length / 2) <= MIDDLE_FT;

/** Semi-major 95 % axis, inches, of the place against the two it is set from, taken as they stand. */
export function relative95In(foot: Foot, tools: OffsetTools): number {
  const { tape, squareSigma } = tools;
  const reading = isMiddle(foot)
    ? halvingSigmaIn(tape, foot.length)
    : tapeSigmaIn(tape, foot.along);
  const along = Math.hypot(reading, 12 * foot.offset * squareSigma);
  return ELLIPSE_FACTOR_95 * Math.max(along, tapeSigmaIn(tape, Math.abs(foot.offset)));
}

/**
 * The largest that `relative95In` may be: half the outline's tolerance. The offset limit of the right
 * angle, target/(2.45 × its sigma), lies far outside it while the tolerance is below the target.
 */
export const mostRelative95In = (spec: StakeoutSpec): number =>
  Math.min(RELATIVE_SHARE * spec.toleranceIn, spec.target95In);

/**
 * The stake from printed readings: from the chord's middle when that is near enough, else along and
 * square. Null when the line does not serve.
 */
export function setShort(
  a: ShortEnd,
  b: ShortEnd,
  wanted: Point,
  tools: OffsetTools,
  system: LengthSystem,
): SetStake | null {
  const foot = footOn(a.point.at, b.point.at, wanted);
  const offset = roundReading(Math.abs(foot.offset), system);
  if (!footServes({ ...foot, offset: offset.ft })) return null;
  const side = foot.offset > 0 ? 'L' : 'R';
  const across = side === 'L' ? offset.ft : -offset.ft;
  if (isMiddle(foot)) {
    const point = pointByChord(a.point, b.point, across, tools);
    return point && finish(chordOf(a, b, offset, side), point, foot.length);
  }
  const along = roundReading(foot.along, system);
  const point = pointByOffset(a.point, b.point, along.ft, across, tools);
  const tie1 = { from: a.id, reading: along };
  return (
    point && finish({ method: 'offset', tie1, lineTo: b.id, offset, side }, point, foot.length)
  );
}

const chordOf = (a: ShortEnd, b: ShortEnd, offset: Reading, side: 'L' | 'R'): SetMethod => ({
  method: 'chord',
  chordFrom: a.id,
  lineTo: b.id,
  offset,
  side,
});

function finish(set: SetMethod, point: PrecisePoint, baseFt: Feet): SetStake {
  const covariance = preciseCovariance(point);
  return { set, point, covariance, semiMajor95In: semiMajor95(covariance), baseFt };
}
