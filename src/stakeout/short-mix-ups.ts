/**
 * Whether a check reading shows that a short line was used wrongly: the offset laid to its other side,
 * or measured from its other end.
 */
import { differenceSigmaIn, type PrecisePoint } from '../adjust/precise-point';
import { feetToInches, inches, type Feet } from '../base/units';
import { pointDistance, type Point } from '../geometry/point';
import { CHECK_SIGMAS } from './limits';
import type { HeldTape } from './tapes';
import { isShort, type SetStake, type ShortMethod } from './ties';

/** The reading changes by this many limits or more: beyond doubt, whatever the errors of the day. */
const LIMITS_OVER = 2;
/** A stake that the other end puts nearer than this is off by less than checks are asked to show. */
const NEAR_IN = 12;

/** True for stakes that are not set with a short line. */
export function showsMixUps(stake: SetStake, from: PrecisePoint, tape: HeldTape): boolean {
  const { at } = stake.point;
  const right = pointDistance(at, from.at);
  const least = LIMITS_OVER * CHECK_SIGMAS * inches(differenceSigmaIn(stake.point, from, tape));
  const shows = (p: Point): boolean => Math.abs(pointDistance(p, from.at) - right) >= least;
  const far = (p: Point): boolean => feetToInches(pointDistance(p, at)) >= NEAR_IN;
  return otherSide(stake).every(shows) && otherEnd(stake).filter(far).every(shows);
}

/** Where the stake stands when its offset goes to the other side. */
function otherSide({ set, point }: SetStake): Point[] {
  if (!isShort(set)) return [];
  return [moved(point.at, point.own[1]!, -2 * signedOffset(set))];
}

/** Where it stands when the distance along is taken from the other end, to either side. */
function otherEnd({ set, point, baseFt }: SetStake): Point[] {
  if (set.method !== 'offset' || baseFt === undefined) return [];
  const same = moved(point.at, point.own[0]!, baseFt - 2 * set.tie1.reading.ft);
  return [same, moved(same, point.own[1]!, -2 * signedOffset(set))];
}

const signedOffset = ({ offset, side }: ShortMethod): Feet =>
  side === 'L' ? offset.ft : -offset.ft;

/** `p` moved by so many feet the way `toward` points. */
function moved(p: Point, toward: Point, by: Feet): Point {
  const k = by / Math.hypot(toward.x, toward.y);
  return { x: p.x + k * toward.x, y: p.y + k * toward.y };
}
