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
import type { SetMethod, StakeoutSpec, Tie } from './model';
import { longestTapeFt, tapePairs, tapesAtHand, type HeldTape, type TapePair } from './tapes';

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
  /** Length of the short line that it is set from; absent where there is none. */
  readonly baseFt?: Feet;
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

/** Two controls, the tapes held there, and what their errors share. */
export interface TiePair {
  readonly a: TapeEnd;
  readonly b: TapeEnd;
  readonly tapes: TapePair;
  readonly cross: CrossCovariance;
}

/** Two controls with what their errors share, worked out once. */
export const tiePair = (a: TapeEnd, b: TapeEnd, tapes: TapePair): TiePair => ({
  a,
  b,
  tapes,
  cross: crossCovariance(a.point, b.point),
});

/**
 * Semi-major 95 % axis, inches, of a stake at `p` tied from two controls; Infinity when a tape is too
 * short or the circles meet too flat.
 */
export function tiePrecisionIn(pair: TiePair, p: Point): number {
  const out = new Float32Array([Infinity]);
  pairPrecisions(pair, [p], out, 0);
  return out[0]!;
}

/**
 * The same for many stakes: each value of `out` from `offset` on becomes the pair's where that is
 * better and at most `mostIn`, inches. With S the variances of the two circles at p (tape and control,
 * and what they share, the tapes' scales among it) and sine that of the angle between the tapes, the
 * trace of the stake's covariance is (S11 + S22 − 2·S12·cosine)/sine² and its determinant
 * (S11·S22 − S12²)/sine².
 */
export function pairPrecisions(
  pair: TiePair,
  stakes: readonly Point[],
  out: Float32Array,
  offset: number,
  mostIn = Infinity,
): void {
  const mostVariance = (mostIn / ELLIPSE_FACTOR_95) ** 2;
  const a = circleOf(pair.a, pair.tapes[0], pair.tapes[1]);
  const b = circleOf(pair.b, pair.tapes[1], pair.tapes[0]);
  const { xx, xy, yx, yy } = pair.cross;
  const oneScale = pair.tapes[0].scaleCause === pair.tapes[1].scaleCause ? a.scale * b.scale : 0;
  for (let i = 0; i < stakes.length; i++) {
    const p = stakes[i]!;
    const ux = p.x - a.x;
    const uy = p.y - a.y;
    const vx = p.x - b.x;
    const vy = p.y - b.y;
    const d1 = ux * ux + uy * uy;
    const d2 = vx * vx + vy * vy;
    if (d1 > a.limit2 || d2 > b.limit2 || !(d1 > 0) || !(d2 > 0)) continue;
    const product = d1 * d2;
    const area = ux * vy - uy * vx;
    const sine2 = (area * area) / product;
    if (sine2 < FLATTEST_SINE * FLATTEST_SINE) continue;
    const s11 = circleVariance(a, ux, uy, d1);
    const s22 = circleVariance(b, vx, vy, d2);
    // The ellipse reaches at least as far along either tape as that circle errs.
    if (s11 > mostVariance || s22 > mostVariance) continue;
    // Times d1·d2 in feet, as the products below.
    const shared =
      ux * (xx * vx + xy * vy) +
      uy * (yx * vx + yy * vy) +
      a.scale * d1 * (vx * b.otherX + vy * b.otherY) +
      b.scale * d2 * (ux * a.otherX + uy * a.otherY) +
      oneScale * product;
    const trace = (s11 + s22 - (2 * shared * (ux * vx + uy * vy)) / product) / sine2;
    const det = (s11 * s22 - (shared * shared) / product) / sine2;
    const root = Math.sqrt(Math.max(0, trace * trace - 4 * det));
    const precision = ELLIPSE_FACTOR_95 * Math.sqrt((trace + root) / 2);
    if (precision < out[offset + i]!) out[offset + i] = precision;
  }
}

/** One control and the tape held there: what the variance of its circle is made of. */
interface Circle {
  readonly x: number;
  readonly y: number;
  readonly limit2: number;
  readonly fixed: number;
  /** Proportional part and scale of the tape, inches per foot; squared the first. */
  readonly perFoot2: number;
  readonly scale: number;
  readonly covariance: PointCovariance;
  /** The control's response to the scale of this tape and of the other one. */
  readonly ownX: number;
  readonly ownY: number;
  readonly otherX: number;
  readonly otherY: number;
}

function circleOf(end: TapeEnd, tape: HeldTape, other: HeldTape): Circle {
  const { at, gx, gy } = end.point;
  return {
    x: at.x,
    y: at.y,
    limit2: tape.limitFt * tape.limitFt,
    fixed: tape.readingSigmaIn * tape.readingSigmaIn,
    perFoot2: tape.proportional * tape.proportional * 144,
    scale: 12 * (tape.scaleSigma ?? 0),
    covariance: end.covariance,
    ownX: gx[tape.scaleCause] ?? 0,
    ownY: gy[tape.scaleCause] ?? 0,
    otherX: gx[other.scaleCause] ?? 0,
    otherY: gy[other.scaleCause] ?? 0,
  };
}

/** Variance along (x, y), whose square is `d`, of one pull, the tape's scale and the control. */
function circleVariance(c: Circle, x: number, y: number, d: number): number {
  const control = x * x * c.covariance.xx + 2 * x * y * c.covariance.xy + y * y * c.covariance.yy;
  return (
    c.fixed + c.perFoot2 * d + control / d + c.scale * (c.scale * d + 2 * (x * c.ownX + y * c.ownY))
  );
}

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
  tapes: TapePair,
  system: LengthSystem,
): SetStake | null {
  const left = pointOrientation(a.point.at, b.point.at, wanted) > 0;
  const best = nearestMeeting(a, b, wanted, left, tapes, system);
  if (!best) return null;
  const point = pointByTies(a.point, b.point, best.at, tapes[0], tapes[1]);
  const intersectionDeg = tieAngleDeg(a.point.at, b.point.at, best.at);
  if (!point || intersectionDeg < FLATTEST_TIES_DEG || intersectionDeg > 180 - FLATTEST_TIES_DEG) {
    return null;
  }
  return finish(
    {
      method: 'ties',
      tie1: tieOf(a, best.first, tapes[0]),
      tie2: tieOf(b, best.second, tapes[1]),
      side: left ? 'L' : 'R',
      intersectionDeg,
    },
    point,
  );
}

const tieOf = (from: TapeEnd, reading: Reading, tape: HeldTape): Tie => ({
  from: from.id,
  reading,
  ...(tape.held === undefined ? {} : { tape: tape.held }),
});

function nearestMeeting(
  a: TapeEnd,
  b: TapeEnd,
  wanted: Point,
  left: boolean,
  tapes: TapePair,
  system: LengthSystem,
) {
  let best: { first: Reading; second: Reading; at: Point } | null = null;
  let least = Infinity;
  for (const first of nearbyReadings(pointDistance(a.point.at, wanted), { system })) {
    for (const second of nearbyReadings(pointDistance(b.point.at, wanted), { system })) {
      if (first.ft > tapes[0].limitFt || second.ft > tapes[1].limitFt) continue;
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

function isOnLine(a: Point, b: Point, p: Point): boolean {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const length2 = dx * dx + dy * dy;
  const across = pointOrientation(a, b, p);
  return length2 > 0 && across * across <= ON_LINE_FT * ON_LINE_FT * length2;
}

/** The stake on the line through `a` and `b`, taped from `a`; null when `wanted` is off that line. */
export function setOnLine(
  a: TapeEnd,
  b: TapeEnd,
  wanted: Point,
  tape: HeldTape,
  system: LengthSystem,
): SetStake | null {
  if (!isOnLine(a.point.at, b.point.at, wanted)) return null;
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
      tie1: tieOf(a, reading, tape),
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
  spec: StakeoutSpec,
): SetStake | null {
  let best: SetStake | null = null;
  const keep = (s: SetStake | null) => {
    if (s && (!best || s.semiMajor95In < best.semiMajor95In)) best = s;
  };
  const tapes = tapesAtHand(spec);
  const limitFt = longestTapeFt(spec);
  const near = known.filter((k) => pointDistance(k.point.at, wanted) <= limitFt);
  for (const a of near) {
    for (const b of known) {
      if (a === b || !isOnLine(a.point.at, b.point.at, wanted)) continue;
      for (const t of tapes) keep(setOnLine(a, b, wanted, t, spec.system));
    }
  }
  const pair = bestPair(near, wanted, spec);
  if (pair) keep(setByTies(pair.a, pair.b, wanted, pair.tapes, spec.system));
  return best;
}

/** Whether two tapes meet too flat at `p`. */
function meetFlat(a: Point, b: Point, p: Point): boolean {
  const area = (p.x - a.x) * (p.y - b.y) - (p.y - a.y) * (p.x - b.x);
  const d1 = (p.x - a.x) ** 2 + (p.y - a.y) ** 2;
  const d2 = (p.x - b.x) ** 2 + (p.y - b.y) ** 2;
  return area * area < FLATTEST_SINE * FLATTEST_SINE * d1 * d2;
}

/** The two controls that tie a place most precisely. */
function bestPair(known: readonly TapeEnd[], wanted: Point, spec: StakeoutSpec): TiePair | null {
  let best: TiePair | null = null;
  let least = Infinity;
  const held = tapePairs(spec);
  for (const [j, b] of known.entries()) {
    for (let i = 0; i < j; i++) {
      const a = known[i]!;
      if (meetFlat(a.point.at, b.point.at, wanted)) continue;
      for (const tapes of held) {
        const pair = tiePair(a, b, tapes);
        const precision = tiePrecisionIn(pair, wanted);
        if (precision >= least) continue;
        least = precision;
        best = pair;
      }
    }
  }
  return best;
}

/** The two places a method uses: where the tape holders stand, or the ends of a short line. */
export function methodControls(set: SetMethod): readonly [string, string] {
  switch (set.method) {
    case 'ties':
      return [set.tie1.from, set.tie2.from];
    case 'line':
    case 'offset':
      return [set.tie1.from, set.lineTo];
    case 'chord':
      return [set.chordFrom, set.lineTo];
  }
}

/** A setting with a short tape from a line between two places near by. */
export type ShortMethod = Extract<SetMethod, { method: 'offset' | 'chord' }>;

/** Set with a short tape from two places near by, without tape holders. */
export const isShort = (set: SetMethod): set is ShortMethod =>
  set.method === 'offset' || set.method === 'chord';
