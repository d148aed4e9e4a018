/** Whether a check reading shows that a short offset was laid to the wrong side of its line. */
import { differenceSigmaIn, type PrecisePoint } from '../adjust/precise-point';
import { feetToInches } from '../base/units';
import { pointDistance } from '../geometry/point';
import { CHECK_SIGMAS } from './limits';
import type { HeldTape } from './tapes';
import type { SetStake } from './ties';

/** The reading changes by this many limits or more: beyond doubt, whatever the errors of the day. */
const LIMITS_OVER = 2;

/** True for stakes that have no wrong side. */
export function showsWrongSide(stake: SetStake, from: PrecisePoint, tape: HeldTape): boolean {
  const { set, point } = stake;
  if (set.method !== 'offset' && set.method !== 'chord') return true;
  const across = point.own[1]!;
  const length = Math.hypot(across.x, across.y);
  const twice = 2 * set.offset.ft * (set.side === 'L' ? 1 : -1);
  const mirrored = {
    x: point.at.x - (twice * across.x) / length,
    y: point.at.y - (twice * across.y) / length,
  };
  const right = pointDistance(point.at, from.at);
  const shift = feetToInches(Math.abs(pointDistance(mirrored, from.at) - right));
  return shift >= LIMITS_OVER * CHECK_SIGMAS * differenceSigmaIn(point, from, tape);
}
