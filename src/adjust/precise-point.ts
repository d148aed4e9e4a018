/**
 * Points that carry where their error comes from. Every cause of error (a coordinate of a known
 * point, one pull of a tape, one sighting of a line) is a number of unit variance; a point keeps the
 * linear map from causes to its own error, so that points set from the same controls share what they
 * must share and no more. Positions in feet, errors in inches.
 */
import { pointDistance, type Point } from '../geometry/point';
import type { PointCovariance } from './ellipse';
import { covarianceRoot } from './ellipse';

/** Reading error of one pull: a fixed part and a part proportional to the length, one sigma. */
export interface TapePrecision {
  readonly readingSigmaIn: number;
  readonly proportional: number;
  /** Error of the tape's own scale, one sigma, common to every pull with it; absent: none. */
  readonly scaleSigma?: number;
  /** Number of the shared cause that is this tape's scale, below `TAPE_CAUSES`; absent: 0. */
  readonly scaleCause?: number;
}

/** The first shared causes are the scales of the two tapes at hand. */
export const TAPE_CAUSES = 2;

/** How a pull of `ft` feet answers to cause `i` through the tape's scale, inches. */
const scaleResponse = (tape: TapePrecision, ft: number, i: number): number =>
  i === (tape.scaleCause ?? 0) ? (tape.scaleSigma ?? 0) * ft * 12 : 0;

/** Shared causes by number, and the point's response to each, inches. */
export interface PrecisePoint {
  readonly at: Point;
  /** Response (x, y) to shared causes: index = cause. */
  readonly gx: readonly number[];
  readonly gy: readonly number[];
  /** Responses to causes that no other point shares. */
  readonly own: readonly Point[];
}

/** sigma(d) = sqrt(a² + (p·d)²), inches, of a pull of `ft` feet. */
export const tapeSigmaIn = (tape: TapePrecision, ft: number): number =>
  Math.hypot(tape.readingSigmaIn, tape.proportional * ft * 12);

/**
 * Error square to a line sighted past two controls, inches, at `ft` feet from the nearer one: a
 * quarter inch at the stake and one part in 4000 of the distance. Common practice, no source.
 */
export const sightingSigmaIn = (ft: number): number => Math.hypot(0.25, (Math.abs(ft) * 12) / 4000);

/** A known point as the first user of two shared causes, numbered from `firstCause`. */
export function knownPoint(at: Point, c: PointCovariance, firstCause: number): PrecisePoint {
  const root = covarianceRoot(c);
  const gx = new Array<number>(firstCause).fill(0);
  const gy = new Array<number>(firstCause).fill(0);
  gx.push(root.a.x, root.b.x);
  gy.push(root.a.y, root.b.y);
  return { at, gx, gy, own: [] };
}

/** Covariance of the point from all its causes, square inches. */
export function preciseCovariance(p: PrecisePoint): PointCovariance {
  const sum = { xx: 0, xy: 0, yy: 0 };
  for (let i = 0; i < p.gx.length; i++) addOuter(sum, p.gx[i]!, p.gy[i]!);
  for (const own of p.own) addOuter(sum, own.x, own.y);
  return sum;
}

/** Covariance between two points' coordinates: xy is of a's x with b's y. */
export interface CrossCovariance {
  readonly xx: number;
  readonly xy: number;
  readonly yx: number;
  readonly yy: number;
}

/** What two points share. */
export function crossCovariance(a: PrecisePoint, b: PrecisePoint): CrossCovariance {
  const sum = { xx: 0, xy: 0, yx: 0, yy: 0 };
  const causes = Math.min(a.gx.length, b.gx.length);
  for (let i = 0; i < causes; i++) {
    sum.xx += a.gx[i]! * b.gx[i]!;
    sum.xy += a.gx[i]! * b.gy[i]!;
    sum.yx += a.gy[i]! * b.gx[i]!;
    sum.yy += a.gy[i]! * b.gy[i]!;
  }
  return sum;
}

function addOuter(sum: { xx: number; xy: number; yy: number }, x: number, y: number): void {
  sum.xx += x * x;
  sum.xy += x * y;
  sum.yy += y * y;
}

/** The same point with its own causes made shared, numbered from `firstCause`: others hang on it. */
export function sharePoint(p: PrecisePoint, firstCause: number): PrecisePoint {
  const gx = pad(p.gx, firstCause);
  const gy = pad(p.gy, firstCause);
  return {
    at: p.at,
    gx: [...gx, ...p.own.map((o) => o.x)],
    gy: [...gy, ...p.own.map((o) => o.y)],
    own: [],
  };
}

const pad = (g: readonly number[], length: number): number[] => [
  ...g,
  ...new Array<number>(Math.max(0, length - g.length)).fill(0),
];

/**
 * The point at `at` set by tapes from `a` and `b`: u·dP = e1 + s1·d1 + u·dA and
 * v·dP = e2 + s2·d2 + v·dB, with u, v the unit vectors from the controls, e one pull's error and s
 * the scale error of the tape held there. Null when the two tapes lie in one line.
 */
export function pointByTies(
  a: PrecisePoint,
  b: PrecisePoint,
  at: Point,
  tape: TapePrecision,
  second: TapePrecision = tape,
): PrecisePoint | null {
  const d1 = pointDistance(a.at, at);
  const d2 = pointDistance(b.at, at);
  const u = { x: (at.x - a.at.x) / d1, y: (at.y - a.at.y) / d1 };
  const v = { x: (at.x - b.at.x) / d2, y: (at.y - b.at.y) / d2 };
  const det = u.x * v.y - u.y * v.x;
  if (!(Math.abs(det) > 0) || !(d1 > 0) || !(d2 > 0)) return null;
  const column1 = { x: v.y / det, y: -v.x / det };
  const column2 = { x: -u.y / det, y: u.x / det };
  const part = (i: number): Point => {
    const e1 = u.x * (a.gx[i] ?? 0) + u.y * (a.gy[i] ?? 0) + scaleResponse(tape, d1, i);
    const e2 = v.x * (b.gx[i] ?? 0) + v.y * (b.gy[i] ?? 0) + scaleResponse(second, d2, i);
    return combine(column1, e1, column2, e2);
  };
  return {
    at,
    ...sharedParts(Math.max(a.gx.length, b.gx.length, TAPE_CAUSES), part),
    own: [scale(column1, tapeSigmaIn(tape, d1)), scale(column2, tapeSigmaIn(second, d2))],
  };
}

/**
 * The point on the line through `a` and `b`, `along` feet from `a` (negative: away from b). Across
 * the line it inherits (1 − s/L) of a's error and s/L of b's, which grows fast beyond b or behind a.
 */
export function pointOnLine(
  a: PrecisePoint,
  b: PrecisePoint,
  along: number,
  tape: TapePrecision,
): PrecisePoint | null {
  const length = pointDistance(a.at, b.at);
  if (!(length > 0)) return null;
  const e = { x: (b.at.x - a.at.x) / length, y: (b.at.y - a.at.y) / length };
  const n = { x: -e.y, y: e.x };
  const share = along / length;
  const part = (i: number): Point => {
    const ax = a.gx[i] ?? 0;
    const ay = a.gy[i] ?? 0;
    const across =
      (1 - share) * (n.x * ax + n.y * ay) + share * (n.x * (b.gx[i] ?? 0) + n.y * (b.gy[i] ?? 0));
    return combine(e, e.x * ax + e.y * ay + scaleResponse(tape, along, i), n, across);
  };
  return {
    at: { x: a.at.x + e.x * along, y: a.at.y + e.y * along },
    ...sharedParts(Math.max(a.gx.length, b.gx.length, TAPE_CAUSES), part),
    own: [scale(e, tapeSigmaIn(tape, Math.abs(along))), scale(n, sightingSigmaIn(Math.abs(along)))],
  };
}

/**
 * Sigma, inches, of what a third tape between two points reads less what the plan says, both points
 * set with their errors and the shared ones cancelling as they do on the ground: a tape that is long
 * sets points too far apart and reads them short again.
 */
export function differenceSigmaIn(
  p: PrecisePoint,
  from: PrecisePoint,
  tape: TapePrecision,
): number {
  const d = pointDistance(p.at, from.at);
  if (!(d > 0)) return tape.readingSigmaIn;
  const u = { x: (p.at.x - from.at.x) / d, y: (p.at.y - from.at.y) / d };
  const sigma = tapeSigmaIn(tape, d);
  let sum = sigma * sigma;
  const [pCauses, fromCauses] = [p.gx.length, from.gx.length];
  const causes = Math.max(pCauses, fromCauses, TAPE_CAUSES);
  for (let i = 0; i < causes; i++) {
    const x = (i < pCauses ? p.gx[i]! : 0) - (i < fromCauses ? from.gx[i]! : 0);
    const y = (i < pCauses ? p.gy[i]! : 0) - (i < fromCauses ? from.gy[i]! : 0);
    const scale = i < TAPE_CAUSES ? scaleResponse(tape, d, i) : 0;
    const off = u.x * x + u.y * y - scale;
    sum += off * off;
  }
  for (const own of p.own) sum += (u.x * own.x + u.y * own.y) ** 2;
  for (const own of from.own) sum += (u.x * own.x + u.y * own.y) ** 2;
  return Math.sqrt(sum);
}

function sharedParts(
  causes: number,
  part: (i: number) => Point,
): { readonly gx: number[]; readonly gy: number[] } {
  const gx: number[] = [];
  const gy: number[] = [];
  for (let i = 0; i < causes; i++) {
    const p = part(i);
    gx.push(p.x);
    gy.push(p.y);
  }
  return { gx, gy };
}

const scale = (p: Point, k: number): Point => ({ x: p.x * k, y: p.y * k });
const combine = (p: Point, k: number, q: Point, l: number): Point => ({
  x: p.x * k + q.x * l,
  y: p.y * k + q.y * l,
});
