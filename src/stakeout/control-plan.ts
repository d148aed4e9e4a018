/** The fixed controls and those that the crew sets, each from the ones before it. */
import type { Control } from '../field/model';
import { pointDistance, type Point } from '../geometry/point';
import { knownPoint, sharePoint, TAPE_CAUSES } from '../adjust/precise-point';
import { chooseCheck, type CheckSource } from './choose-check';
import { countBits, emptyBits, hasBit, mergeBits, pairCover } from './cover';
import { PLANNED_CONTROL_SPACING_FT } from './limits';
import type { Check, StakeoutSpec } from './model';
import type { Candidate, PrecisionTask } from './precision-table';
import { CONTROLS_APART_FT } from './search-controls';
import { checkTape, tapePairs } from './tapes';
import { bestSetting, type SetStake, type TapeEnd } from './ties';

export interface SetControl {
  readonly id: string;
  readonly stake: SetStake;
  readonly check: Check;
}

export interface ControlPlan {
  /** Fixed controls, then the set ones in setting order. */
  readonly ends: readonly TapeEnd[];
  readonly set: readonly SetControl[];
  /** Number of shared causes of error so far. */
  readonly causes: number;
  /** What every stake in reach can be set within; Infinity when all that is known is that it can. */
  readonly targetIn: number;
}

/** Chosen at a slightly tighter target, so that printed positions still meet the one asked for. */
export const TARGET_MARGIN = 0.98;

export interface Choosing {
  readonly spec: StakeoutSpec;
  readonly stakes: readonly Point[];
  /** No more control stakes than this. */
  readonly most: number;
}

type Covering = Pick<Choosing, 'spec' | 'stakes'>;

/**
 * The plan before any control is set: the fixed ones, each with two causes of error of its own behind
 * those of the tapes.
 */
export function fixedEnds(controls: readonly Control[]): ControlPlan {
  const ends = controls.map((c, i): TapeEnd => ({
    id: c.id,
    point: knownPoint(c.at, c.covariance, TAPE_CAUSES + 2 * i),
    covariance: c.covariance,
  }));
  return { ends, set: [], causes: TAPE_CAUSES + 2 * ends.length, targetIn: Infinity };
}

/** Sets one control with printed readings and its check; null when it cannot be. */
export function addControl(job: { readonly spec: StakeoutSpec }, plan: ControlPlan, at: Point) {
  const stake = bestSetting(plan.ends, at, job.spec);
  const check =
    stake && chooseCheck(stake, checkSources(plan), checkTape(job.spec), job.spec.system);
  if (!stake || !check) return null;
  const id = `K${plan.set.length + 1}`;
  const point = sharePoint(stake.point, plan.causes);
  const end: TapeEnd = { id, point, covariance: stake.covariance };
  return {
    ends: [...plan.ends, end],
    set: [...plan.set, { id, stake, check }],
    causes: plan.causes + 2,
    targetIn: plan.targetIn,
  };
}

/** The controls of a plan set anew at these places, in this order; null when one cannot be. */
export function rebuild(
  job: Choosing,
  plan: ControlPlan,
  places: readonly Point[],
): ControlPlan | null {
  const fixed = plan.ends.length - plan.set.length;
  let built: ControlPlan = {
    ends: plan.ends.slice(0, fixed),
    set: [],
    causes: TAPE_CAUSES + 2 * fixed,
    targetIn: Infinity,
  };
  for (const at of places) {
    const next = addControl(job, built, at);
    if (!next) return null;
    built = next;
  }
  return built;
}

/** Every control of the plan as something to check from. */
export const checkSources = (plan: ControlPlan): CheckSource[] =>
  plan.ends.map((e) => ({ id: e.id, point: e.point, isControl: true }));

/** Places where a control can be set from the plan's own, with how well. */
export function candidatesFor(
  job: Choosing,
  plan: ControlPlan,
  places: readonly Point[],
): Candidate[] {
  const sources = checkSources(plan);
  return places.flatMap((at): Candidate[] => {
    if (plan.ends.some((e) => pointDistance(e.point.at, at) < CONTROLS_APART_FT)) return [];
    const stake = bestSetting(plan.ends, at, job.spec);
    if (!stake) return [];
    const end = { id: '?', point: { ...stake.point, own: [] }, covariance: stake.covariance };
    const checked = chooseCheck(stake, sources, checkTape(job.spec), job.spec.system) !== null;
    return [{ at, end, semiMajor95In: stake.semiMajor95In, checked }];
  });
}

/** What the precision of every stake by every pair is worked out from. */
export const precisionTask = (
  job: Choosing,
  plan: ControlPlan,
  places: readonly Point[],
): PrecisionTask => ({
  known: plan.ends,
  candidates: candidatesFor(job, plan, places),
  stakes: job.stakes,
  held: tapePairs(job.spec),
});

/** All stakes covered by the pairs of a plan, within a target. */
export function coverOf(job: Covering, plan: ControlPlan, targetIn: number) {
  const bits = emptyBits(job.stakes.length);
  const held = tapePairs(job.spec);
  for (let i = 0; i < plan.ends.length; i++) {
    for (let j = 0; j < i; j++) {
      mergeBits(bits, pairCover(plan.ends[j]!, plan.ends[i]!, job.stakes, held, targetIn));
    }
  }
  return { bits, count: countBits(bits) };
}

/** The stakes that no pair of the plan sets within the target. */
export function missedBy(job: Choosing, plan: ControlPlan, targetIn: number): Point[] {
  const { bits } = coverOf(job, plan, targetIn);
  return job.stakes.filter((_, i) => !hasBit(bits, i));
}

/** Whether every set control itself stands within the target. */
export const withinTarget = (plan: ControlPlan, targetIn: number): boolean =>
  plan.set.every((c) => c.stake.semiMajor95In <= targetIn);

/** Whether a plan made for other stakes does as well for these. */
export function controlsServe(
  plan: ControlPlan,
  stakes: readonly Point[],
  spec: StakeoutSpec,
): boolean {
  const clear = plan.set.every((c) =>
    stakes.every((s) => pointDistance(s, c.stake.point.at) >= PLANNED_CONTROL_SPACING_FT),
  );
  const target = Math.max(spec.target95In, plan.targetIn) * TARGET_MARGIN;
  return clear && coverOf({ spec, stakes }, plan, target).count === stakes.length;
}
