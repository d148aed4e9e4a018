/** Setting a stake: which two controls, what the tapes read, and how good the stake then is. */
import { roundReading, READING_STEP, type LengthSystem, type Reading } from '../base/quantity';
import { INCHES_PER_FOOT, metresToFeet, toDegrees, type Feet } from '../base/units';
import {
  crossCovariance,
  pointByTies,
  pointOnLine,
  preciseCovariance,
  type CrossCovariance,
  type PrecisePoint,
} from '../adjust/precise-point';
import { semiMajor95, ELLIPSE_FACTOR_95 } from '../adjust/ellipse';
import type { PointCovariance } from '../adjust/ellipse';
import { circleIntersection } from '../geometry/arc';
import { pointDistance, pointOrientation, type Point } from '../geometry/point';
import { FLATTEST_TIES_DEG, PLANNED_FLATTEST_TIES_DEG } from './limits';
import type { SetMethod, TapeSpec } from './model';

/** A control as tapes find it: where printed readings put it, with its error. */
export interface TapeEnd {
  readonly id: string;
  readonly point: PrecisePoint;
  readonly covariance: PointCovariance;
}

/** A stake set by printed readings. */
export interface SetStake {
  readonly set: SetMethod;
  readonly point: PrecisePoint;
  readonly covariance: PointCovariance;
  readonly semiMajor95In: number;
}

/** Angle at `p` between the directions to `a` and `b`, degrees in [0, 180]. */
export function tieAngleDeg(a: Point, b: Point, p: Point): number {
  const ux = a.x - p.x;
  const uy = a.y - p.y;
  const vx = b.x - p.x;
  const vy = b.y - p.y;
  return toDegrees(Math.abs(Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy)));
}

const FLATTEST_SINE = Math.sin((PLANNED_FLATTEST_TIES_DEG * Math.PI) / 180);

/** Two controls and what their errors share. */
export interface TiePair {
  readonly a: TapeEnd;
  readonly b: TapeEnd;
  readonly cross: CrossCovariance;
}

/** Two controls with what their errors share, worked out once. */
export const tiePair = (a: TapeEnd, b: TapeEnd): TiePair => ({
  a,
  b,
  cross: crossCovariance(a.point, b.point),
});

/**
 * Semi-major 95 % axis, inches, of a stake at `p` tied from two controls; Infinity when a tape is too
 * short or the circles meet too flat. With S the variances of the two circles at p (tape and control,
 * and what the controls share) and sine that of the angle between the tapes, the trace of the
 * stake's covariance is (S11 + S22 − 2·S12·cosine)/sine² and its determinant (S11·S22 − S12²)/sine².
 */
export function tiePrecisionIn(pair: TiePair, p: Point, tape: TapeSpec): number {
  const { a, b, cross } = pair;
  const ux = p.x - a.point.at.x;
  const uy = p.y - a.point.at.y;
  const vx = p.x - b.point.at.x;
  const vy = p.y - b.point.at.y;
  const d1 = ux * ux + uy * uy;
  const d2 = vx * vx + vy * vy;
  const limit = tape.limitFt * tape.limitFt;
  if (d1 > limit || d2 > limit || !(d1 > 0) || !(d2 > 0)) return Infinity;
  const area = ux * vy - uy * vx;
  const sine2 = (area * area) / (d1 * d2);
  if (sine2 < FLATTEST_SINE * FLATTEST_SINE) return Infinity;
  const s11 = tapeVariance(tape, d1) + quadratic(a.covariance, ux, uy) / d1;
  const s22 = tapeVariance(tape, d2) + quadratic(b.covariance, vx, vy) / d2;
  const shared = ux * (cross.xx * vx + cross.xy * vy) + uy * (cross.yx * vx + cross.yy * vy);
  const product = d1 * d2;
  const trace = (s11 + s22 - (2 * shared * (ux * vx + uy * vy)) / product) / sine2;
  const det = (s11 * s22 - (shared * shared) / product) / sine2;
  const root = Math.sqrt(Math.max(0, trace * trace - 4 * det));
  return ELLIPSE_FACTOR_95 * Math.sqrt((trace + root) / 2);
}

/** Square of `tapeSigmaIn`, from the squared distance. */
const tapeVariance = (tape: TapeSpec, squaredFt: number): number =>
  tape.readingSigmaIn * tape.readingSigmaIn +
  tape.proportional * tape.proportional * 144 * squaredFt;

const quadratic = (c: PointCovariance, x: number, y: number): number =>
  x * x * c.xx + 2 * x * y * c.xy + y * y * c.yy;

/** One step of the tape's printed readings, feet. */
export const readingStepFt = (system: LengthSystem): Feet =>
  system === 'metric'
    ? metresToFeet(READING_STEP.metres)
    : 1 / (INCHES_PER_FOOT * READING_STEP.inchesDenominator);

/** The rounded value and its two neighbours: where circles meet flat a neighbour may fit better. */
function nearbyReadings(value: Feet, spec: { readonly system: LengthSystem }): Reading[] {
  const step = readingStepFt(spec.system);
  return [0, -step, step].map((by) => roundReading(value + by, spec.system));
}

/** The two printed readings that put the stake nearest to `wanted`; null when they cannot. */
export function setByTies(
  a: TapeEnd,
  b: TapeEnd,
  wanted: Point,
  tape: TapeSpec,
  system: LengthSystem,
): SetStake | null {
  const left = pointOrientation(a.point.at, b.point.at, wanted) > 0;
  const best = nearestMeeting(a, b, wanted, left, tape, system);
  if (!best) return null;
  const point = pointByTies(a.point, b.point, best.at, tape);
  const intersectionDeg = tieAngleDeg(a.point.at, b.point.at, best.at);
  if (!point || intersectionDeg < FLATTEST_TIES_DEG || intersectionDeg > 180 - FLATTEST_TIES_DEG) {
    return null;
  }
  return finish(
    {
      method: 'ties',
      tie1: { from: a.id, reading: best.first },
      tie2: { from: b.id, reading: best.second },
      side: left ? 'L' : 'R',
      intersectionDeg,
    },
    point,
  );
}

function nearestMeeting(
  a: TapeEnd,
  b: TapeEnd,
  wanted: Point,
  left: boolean,
  tape: TapeSpec,
  system: LengthSystem,
) {
  let best: { first: Reading; second: Reading; at: Point } | null = null;
  let least = Infinity;
  for (const first of nearbyReadings(pointDistance(a.point.at, wanted), { system })) {
    for (const second of nearbyReadings(pointDistance(b.point.at, wanted), { system })) {
      if (first.ft > tape.limitFt || second.ft > tape.limitFt) continue;
      const meet = circleIntersection(a.point.at, first.ft, b.point.at, second.ft);
      if (!meet) continue;
      const at = left ? meet.left : meet.right;
      const off = pointDistance(at, wanted);
      if (off < least) {
        least = off;
        best = { first, second, at };
      }
    }
  }
  return best;
}

/** How far off the line a wanted place may lie to be set along it, feet. */
const ON_LINE_FT = 0.02;

/** The stake on the line through `a` and `b`, taped from `a`; null when `wanted` is off that line. */
export function setOnLine(
  a: TapeEnd,
  b: TapeEnd,
  wanted: Point,
  tape: TapeSpec,
  system: LengthSystem,
): SetStake | null {
  const length = pointDistance(a.point.at, b.point.at);
  if (!(length > 0)) return null;
  const off = pointOrientation(a.point.at, b.point.at, wanted) / length;
  if (Math.abs(off) > ON_LINE_FT) return null;
  const reading = roundReading(pointDistance(a.point.at, wanted), system);
  if (reading.ft > tape.limitFt || !(reading.ft > 0)) return null;
  const toward =
    (wanted.x - a.point.at.x) * (b.point.at.x - a.point.at.x) +
      (wanted.y - a.point.at.y) * (b.point.at.y - a.point.at.y) >
    0;
  const point = pointOnLine(a.point, b.point, toward ? reading.ft : -reading.ft, tape);
  if (!point) return null;
  return finish(
    {
      method: 'line',
      tie1: { from: a.id, reading },
      lineTo: b.id,
      side: toward ? 'T' : 'A',
    },
    point,
  );
}

function finish(set: SetMethod, point: PrecisePoint): SetStake {
  const covariance = preciseCovariance(point);
  return { set, point, covariance, semiMajor95In: semiMajor95(covariance) };
}

/** The most precise way to set a control stake at `wanted` from the controls known so far. */
export function bestSetting(
  known: readonly TapeEnd[],
  wanted: Point,
  tape: TapeSpec,
  system: LengthSystem,
): SetStake | null {
  let best: SetStake | null = null;
  const keep = (s: SetStake | null) => {
    if (s && (!best || s.semiMajor95In < best.semiMajor95In)) best = s;
  };
  for (let i = 0; i < known.length; i++) {
    for (let j = 0; j < known.length; j++) {
      if (i === j) continue;
      keep(setOnLine(known[i]!, known[j]!, wanted, tape, system));
      if (i < j && tiePrecisionIn(tiePair(known[i]!, known[j]!), wanted, tape) < Infinity) {
        keep(setByTies(known[i]!, known[j]!, wanted, tape, system));
      }
    }
  }
  return best;
}

/** The two controls a method uses, as the tape holders stand. */
export const methodControls = (set: SetMethod): readonly [string, string] =>
  set.method === 'ties' ? [set.tie1.from, set.tie2.from] : [set.tie1.from, set.lineTo];
