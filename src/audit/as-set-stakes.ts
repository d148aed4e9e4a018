/** Where each stake stands by all readings together, and whether anything proves it. */
import { CHI_SQUARE_95_TWO, ELLIPSE_FACTOR_95, standardEllipse } from '../adjust/ellipse';
import { feetToInches, toDegrees } from '../base/units';
import type { Stake } from '../stakeout/model';
import type { Standing } from './explain';
import type { AsSetStake, Proof, Suspect } from './model';
import { towardWords } from './words';

/** A slip that must show in either reading of a stake for it to count as proven. */
const PROVEN_IN = 12;
/** A slip larger than this would be seen by eye: what shows no smaller one proves nothing. */
const UNPROVEN_IN = 60;

/** The set stakes and controls, in setting order; `move` is decided with the outline. */
export function asSetStakes(
  s: Standing,
  first: Standing,
  suspects: readonly Suspect[],
): AsSetStake[] {
  const named = new Set(suspects.map((one) => one.likeliest.stake));
  return s.plan.stakes.map((stake) => asSetStake(s, first, stake, named.has(stake.id)));
}

function asSetStake(s: Standing, first: Standing, stake: Stake, suspect: boolean): AsSetStake {
  const at = s.placeOf(stake.id);
  const { covariance } = s.adjustment.points.find((p) => p.id === stake.id)!;
  const ellipse = standardEllipse(covariance);
  const off = { x: at.x - stake.at.x, y: at.y - stake.at.y };
  const slips = smallestSlips(first, stake.id);
  const shown = Math.min(...slips);
  return {
    stake: stake.id,
    kind: stake.kind,
    at,
    off,
    offIn: feetToInches(Math.hypot(off.x, off.y)),
    toward: isOff(covariance, off) ? towardWords(stake.at, off) : '',
    semiMajor95In: feetToInches(ellipse.semiMajor) * ELLIPSE_FACTOR_95,
    semiMinor95In: feetToInches(ellipse.semiMinor) * ELLIPSE_FACTOR_95,
    bearingDeg: (90 - toDegrees(ellipse.angle) + 360) % 180,
    proof: proofOf(slips),
    smallestSlipIn: shown <= UNPROVEN_IN ? shown : null,
    suspect,
    move: 'no',
  };
}

/** Whether the stake is off by more than its own 95 % ellipse allows. */
function isOff(
  c: { readonly xx: number; readonly xy: number; readonly yy: number },
  off: { readonly x: number; readonly y: number },
): boolean {
  const det = c.xx * c.yy - c.xy * c.xy;
  const squared = (off.x * off.x * c.yy - 2 * off.x * off.y * c.xy + off.y * off.y * c.xx) / det;
  return squared > CHI_SQUARE_95_TWO;
}

/** The smallest slip that would show in each reading of the stake's setting, inches. */
const smallestSlips = (first: Standing, id: string): number[] =>
  first.net.rows.flatMap((r, i) =>
    r.sets === id ? [feetToInches(first.adjustment.readings[i]!.smallestSlip)] : [],
  );

function proofOf(slips: readonly number[]): Proof {
  if (Math.max(...slips) <= PROVEN_IN) return 'proven';
  return Math.min(...slips) <= UNPROVEN_IN ? 'partly' : 'unproven';
}
