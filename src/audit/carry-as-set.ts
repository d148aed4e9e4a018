/** The plan carried on from where the stakes stand. */
import type { StakePlan } from '../stakeout/model';
import type { Audit } from './model';

/** Stakes where the readings put them, pieces with the radii and offsets that fit them there. */
export function carryAsSet(plan: StakePlan, audit: Audit): StakePlan {
  const at = new Map(audit.stakes.map((s) => [s.stake, s.at]));
  return {
    ...plan,
    stakes: plan.stakes.map((s) => ({ ...s, at: at.get(s.id) ?? s.at })),
    controls: plan.controls.map((c) => ({ ...c, at: at.get(c.id) ?? c.at })),
    contours: plan.contours.map(({ graphic, contour }) => ({
      graphic,
      contour,
      pieces: audit.outline
        .filter((p) => p.graphic === graphic && p.contour === contour)
        .map((p) => p.piece),
    })),
  };
}
