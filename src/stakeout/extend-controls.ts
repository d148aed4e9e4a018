/** Adds controls one or two at a time where they help most, and drops those that proved needless. */
import type { Point } from '../geometry/point';
import {
  addControl,
  coverOf,
  missedBy,
  precisionTask,
  rebuild,
  withinTarget,
  type Choosing,
  type ControlPlan,
} from './control-plan';
import { countBits, emptyBits } from './cover';
import { precisionTable } from './precision-table';
import { chainToward } from './reach-controls';
import { coverOfSet, coverTable, settingOrder, type CoverTable } from './search-controls';
import { longestTapeFt } from './tapes';

/** Adds controls until every stake is covered or nothing helps. */
export function extendControls(
  job: Choosing,
  start: ControlPlan,
  places: readonly Point[],
  targetIn: number,
): ControlPlan {
  let plan = start;
  while (plan.set.length < job.most) {
    const missing = missedBy(job, plan, targetIn);
    if (missing.length === 0) return plan;
    const chosen = nextControls({ ...job, stakes: missing }, plan, places, targetIn);
    const before = plan.set.length;
    for (const at of chosen ?? []) {
      const next = addControl(job, plan, at);
      if (next && withinTarget(next, targetIn)) plan = next;
    }
    if (plan.set.length === before) return plan;
  }
  return plan;
}

/** The places that let most of the job's stakes per place be set; null when none helps. */
function nextControls(
  job: Choosing,
  plan: ControlPlan,
  places: readonly Point[],
  targetIn: number,
): Point[] | null {
  const table = precisionTable(precisionTask(job, plan, places), targetIn);
  const cover = coverTable(table, longestTapeFt(job.spec), targetIn);
  return (
    bestGain(cover) ??
    chainToward({ spec: job.spec, missing: job.stakes, targetIn }, plan.ends, places)
  );
}

/** The one or two candidates that add most stakes per control; null when none adds any. */
function bestGain(table: CoverTable): Point[] | null {
  const { candidates, stakes } = table.task;
  const { limitFt } = table;
  const have = countBits(table.base);
  const scratch = emptyBits(stakes.length);
  let best: Point[] | null = null;
  let most = 0;
  const offer = (members: readonly number[]): void => {
    const gain = (countBits(coverOfSet(table, members, scratch)) - have) / members.length;
    if (gain <= most) return;
    const order = settingOrder(
      members.map((i) => candidates[i]!),
      limitFt,
    );
    if (!order) return;
    most = gain;
    best = order.map((c) => c.at);
  };
  candidates.forEach((_, i) => offer([i]));
  candidates.forEach((_, i) => {
    for (let j = 0; j < i; j++) offer([i, j]);
  });
  return best;
}

/** Drops controls, last first, that change nothing about which stakes are covered. */
export function pruneControls(job: Choosing, plan: ControlPlan, targetIn: number): ControlPlan {
  let best = plan;
  const goal = coverOf(job, plan, targetIn).count;
  const reach = coverOf(job, plan, Infinity).count;
  for (let i = best.set.length - 1; i >= 0; i--) {
    const without = rebuild(
      job,
      best,
      best.set.filter((_, k) => k !== i).map((c) => c.stake.point.at),
    );
    if (!without) continue;
    if (coverOf(job, without, targetIn).count < goal) continue;
    if (!withinTarget(without, targetIn)) continue;
    if (coverOf(job, without, Infinity).count < reach) continue;
    best = without;
  }
  return best;
}
