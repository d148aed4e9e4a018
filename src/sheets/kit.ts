/** What every page maker is handed: the plan, the paper, the type. */
import { invariant } from '../base/result';
import type { Control } from '../field/model';
import type { Point } from '../geometry/point';
import type { Plan } from '../plan/model';
import type { Stake, StakePlan } from '../stakeout/model';
import type { FontMetrics } from './fonts';
import type { Paper } from './paper';

export interface Kit {
  readonly plan: Plan;
  readonly paper: Paper;
  readonly metrics: FontMetrics;
}

/** Where controls and stakes stand, by their printed names. */
export function standingPoints(stakes: StakePlan): ReadonlyMap<string, Point> {
  const at = new Map<string, Point>();
  for (const control of stakes.controls) at.set(control.id, control.at);
  for (const stake of stakes.stakes) at.set(stake.id, stake.at);
  return at;
}

export function pointNamed(at: ReadonlyMap<string, Point>, id: string): Point {
  const found = at.get(id);
  invariant(found, `no stake or control is called ${id}`);
  return found;
}

export const stakesById = (stakes: StakePlan): ReadonlyMap<string, Stake> =>
  new Map(stakes.stakes.map((stake) => [stake.id, stake]));

/** Fixed controls, whether or not there is a stake plan. */
export const controlsOf = (plan: Plan): readonly Control[] =>
  plan.stakes?.controls ?? plan.field.controls;
