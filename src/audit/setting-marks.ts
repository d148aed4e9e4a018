/** What a stake's place hangs on. */
import type { Stake, StakePlan } from '../stakeout/model';
import { methodControls } from '../stakeout/ties';

/** The mark itself, the marks that it was set from, and all that those were set from. */
export function settingMarks(plan: StakePlan, id: string): ReadonlySet<string> {
  const byId = new Map<string, Stake>(plan.stakes.map((s) => [s.id, s]));
  const found = new Set<string>([id]);
  // A set is walked through to its end while it grows.
  for (const mark of found) {
    const stake = byId.get(mark);
    if (stake) for (const from of methodControls(stake.set)) found.add(from);
  }
  return found;
}
