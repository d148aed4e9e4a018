/**
 * Which control stakes the crew sets: as few as let every stake meet the target. Up to three on the
 * foul lines and the centre line are found by trying all; beyond that greedily over the whole grass
 * with a look-ahead over pairs (one new control alone often helps nothing, two do), then pruned.
 * Every set control has its own check from a point known before it.
 */
import type { Control } from '../field/model';
import { pointDistance, type Point } from '../geometry/point';
import { knownPoint, sharePoint } from '../adjust/precise-point';
import { gridCandidates, lineCandidates } from './control-candidates';
import { chooseCheck, type CheckSource } from './choose-check';
import { countBits, emptyBits, hasBit, mergeBits, pairCover } from './cover';
import type { StakeGround } from './ground';
import { CONTROL_SPACING_FT, PLANNED_CONTROL_SPACING_FT } from './limits';
import type { Check, StakeoutSpec } from './model';
import {
  CONTROLS_APART_FT,
  coverOfSet,
  coverTable,
  searchControls,
  settingOrder,
  type Candidate,
  type CoverTable,
  type CoverTask,
} from './search-controls';
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
}

/** No crew sets more than this before the first stake of the graphic. */
const MOST_CONTROLS = 12;
/** Times that stakes left out of the look are added to it. */
const MOST_LOOKS = 3;
/** Side of the squares of which one stake each is looked at while controls are chosen. */
const SQUARE_FT = 10;
/** Chosen at a slightly tighter target, so that printed positions still meet the one asked for. */
export const TARGET_MARGIN = 0.98;

interface Choosing {
  readonly spec: StakeoutSpec;
  readonly stakes: readonly Point[];
}

/** The plan before any control is set: the fixed ones, each with two causes of error of its own. */
export function fixedEnds(controls: readonly Control[]): ControlPlan {
  const ends = controls.map((c, i): TapeEnd => ({
    id: c.id,
    point: knownPoint(c.at, c.covariance, 2 * i),
    covariance: c.covariance,
  }));
  return { ends, set: [], causes: 2 * ends.length };
}

/** Chooses and sets the controls. Stakes that stay out of reach are left to the caller to report. */
export function chooseControls(
  controls: readonly Control[],
  stakes: readonly Point[],
  ground: StakeGround,
  spec: StakeoutSpec,
): ControlPlan {
  const target = spec.target95In * TARGET_MARGIN;
  let looked = representatives(stakes);
  for (let tries = 0; ; tries++) {
    const plan = chooseFor({ spec, stakes: looked }, controls, stakes, ground, target);
    const missed = missedBy({ spec, stakes }, plan, target).filter((p) => !looked.includes(p));
    if (missed.length === 0 || tries >= MOST_LOOKS) return plan;
    looked = [...looked, ...missed];
  }
}

/** The stakes that no pair of the plan sets within the target. */
function missedBy(job: Choosing, plan: ControlPlan, targetIn: number): Point[] {
  const { bits } = coverOf(job, plan, targetIn);
  return job.stakes.filter((_, i) => !hasBit(bits, i));
}

function chooseFor(
  job: Choosing,
  controls: readonly Control[],
  all: readonly Point[],
  ground: StakeGround,
  target: number,
): ControlPlan {
  const { limitFt } = job.spec.tape;
  const start = fixedEnds(controls);
  if (coverOf(job, start, target).count === job.stakes.length) return start;
  const lines = lineCandidates(controls, all, ground, limitFt);
  const few = fewest(job, start, lines, target);
  if (few) return few;
  const grid = [...lines, ...gridCandidates(controls, all, ground, limitFt)];
  const met = extend(job, start, grid, target);
  return prune(job, extend(job, met, grid, Infinity), target);
}

/**
 * One stake of each square of the grass, the one farthest from the middle: how well a place is tied
 * changes little over a few feet.
 */
function representatives(stakes: readonly Point[]): Point[] {
  const middle = {
    x: stakes.reduce((sum, p) => sum + p.x, 0) / stakes.length,
    y: stakes.reduce((sum, p) => sum + p.y, 0) / stakes.length,
  };
  const chosen = new Map<string, Point>();
  for (const p of stakes) {
    const key = `${Math.floor(p.x / SQUARE_FT)} ${Math.floor(p.y / SQUARE_FT)}`;
    const held = chosen.get(key);
    if (!held || pointDistance(p, middle) > pointDistance(held, middle)) chosen.set(key, p);
  }
  return [...chosen.values()];
}

/** The smallest set of up to three on the lines that does the whole job, or null. */
function fewest(
  job: Choosing,
  start: ControlPlan,
  places: readonly Point[],
  targetIn: number,
): ControlPlan | null {
  const chosen = searchControls(coverTable(coverTask(job, start, places, targetIn)), 3);
  const plan = chosen && rebuild(job, start, chosen);
  return plan && coverOf(job, plan, targetIn).count === job.stakes.length ? plan : null;
}

const coverTask = (
  job: Choosing,
  plan: ControlPlan,
  places: readonly Point[],
  targetIn: number,
): CoverTask => ({
  known: plan.ends,
  candidates: candidatesFor(job, plan, places),
  stakes: job.stakes,
  tape: job.spec.tape,
  targetIn,
});

/** Whether a plan made for other stakes does as well for these. */
export function controlsServe(
  plan: ControlPlan,
  stakes: readonly Point[],
  spec: StakeoutSpec,
): boolean {
  const clear = plan.set.every((c) =>
    stakes.every((s) => pointDistance(s, c.stake.point.at) >= PLANNED_CONTROL_SPACING_FT),
  );
  const target = spec.target95In * TARGET_MARGIN;
  return clear && coverOf({ spec, stakes }, plan, target).count === stakes.length;
}

/** All stakes covered by the pairs of a plan, within a target. */
function coverOf(job: Choosing, plan: ControlPlan, targetIn: number) {
  const bits = emptyBits(job.stakes.length);
  for (let i = 0; i < plan.ends.length; i++) {
    for (let j = 0; j < i; j++) {
      mergeBits(bits, pairCover(plan.ends[j]!, plan.ends[i]!, job.stakes, job.spec.tape, targetIn));
    }
  }
  return { bits, count: countBits(bits) };
}

/** Adds controls until every stake is covered or nothing helps. */
function extend(
  job: Choosing,
  start: ControlPlan,
  places: readonly Point[],
  targetIn: number,
): ControlPlan {
  let plan = start;
  while (plan.set.length < MOST_CONTROLS) {
    const table = coverTable(coverTask(job, plan, places, targetIn));
    if (countBits(table.base) === job.stakes.length) return plan;
    const chosen = bestGain(table) ?? steppingStone(job, plan, table);
    if (!chosen) return plan;
    const before = plan.set.length;
    for (const at of chosen) plan = addControl(job, plan, at) ?? plan;
    if (plan.set.length === before) return plan;
  }
  return plan;
}

function candidatesFor(job: Choosing, plan: ControlPlan, places: readonly Point[]): Candidate[] {
  const { tape, system } = job.spec;
  const sources = checkSources(plan);
  return places.flatMap((at): Candidate[] => {
    if (plan.ends.some((e) => pointDistance(e.point.at, at) < CONTROLS_APART_FT)) return [];
    const stake = bestSetting(plan.ends, at, tape, system);
    if (!stake) return [];
    const end = { id: '?', point: { ...stake.point, own: [] }, covariance: stake.covariance };
    const checked = chooseCheck(stake, sources, tape, system) !== null;
    return [{ at, end, semiMajor95In: stake.semiMajor95In, checked }];
  });
}

/** Every control of the plan as something to check from. */
export const checkSources = (plan: ControlPlan): CheckSource[] =>
  plan.ends.map((e) => ({ id: e.id, point: e.point, isControl: true }));

/** The one or two candidates that add most stakes per control; null when none adds any. */
function bestGain(table: CoverTable): Point[] | null {
  const { candidates, stakes, tape } = table.task;
  const have = countBits(table.base);
  const scratch = emptyBits(stakes.length);
  let best: Point[] | null = null;
  let most = 0;
  const offer = (members: readonly number[]): void => {
    const gain = (countBits(coverOfSet(table, members, scratch)) - have) / members.length;
    if (gain <= most) return;
    const order = settingOrder(
      members.map((i) => candidates[i]!),
      tape.limitFt,
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

/** When nothing in reach helps: the checked candidate nearest to the stakes still missing. */
function steppingStone(job: Choosing, plan: ControlPlan, table: CoverTable): Point[] | null {
  const missing = job.stakes.filter((_, i) => !hasBit(table.base, i));
  const reach = (p: Point) => Math.min(...missing.map((m) => pointDistance(m, p)));
  const unreached = missing.some((m) =>
    plan.ends.every((e) => pointDistance(e.point.at, m) > job.spec.tape.limitFt),
  );
  if (!unreached) return null;
  const known = Math.min(...plan.ends.map((e) => reach(e.point.at)));
  let best: Point | null = null;
  let least = known - CONTROL_SPACING_FT;
  for (const c of table.task.candidates) {
    if (c.checked && reach(c.at) < least) {
      least = reach(c.at);
      best = c.at;
    }
  }
  return best && [best];
}

/** Sets one control with printed readings and its check; null when it cannot be. */
export function addControl(job: { readonly spec: StakeoutSpec }, plan: ControlPlan, at: Point) {
  const { tape, system } = job.spec;
  const stake = bestSetting(plan.ends, at, tape, system);
  const check = stake && chooseCheck(stake, checkSources(plan), tape, system);
  if (!stake || !check) return null;
  const id = `K${plan.set.length + 1}`;
  const point = sharePoint(stake.point, plan.causes);
  const end: TapeEnd = { id, point, covariance: stake.covariance };
  return {
    ends: [...plan.ends, end],
    set: [...plan.set, { id, stake, check }],
    causes: plan.causes + 2,
  };
}

/** Drops controls, last first, that change nothing about which stakes are covered. */
function prune(job: Choosing, plan: ControlPlan, targetIn: number): ControlPlan {
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
    if (coverOf(job, without, Infinity).count < reach) continue;
    best = without;
  }
  return best;
}

function rebuild(job: Choosing, plan: ControlPlan, places: readonly Point[]): ControlPlan | null {
  const fixed = plan.ends.length - plan.set.length;
  let built: ControlPlan = {
    ends: plan.ends.slice(0, fixed),
    set: [],
    causes: 2 * fixed,
  };
  for (const at of places) {
    const next = addControl(job, built, at);
    if (!next) return null;
    built = next;
  }
  return built;
}
