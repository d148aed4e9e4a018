/**
 * Which control stakes the crew sets: as few as let every stake meet the target, greedily with a
 * look-ahead over pairs (one new control alone often helps nothing, two do), then pruned. Every set
 * control has its own check from a point known before it.
 */
import type { Control } from '../field/model';
import { pointDistance, type Point } from '../geometry/point';
import { knownPoint, sharePoint } from '../adjust/precise-point';
import { gridCandidates, lineCandidates } from './control-candidates';
import { chooseCheck, type CheckSource } from './choose-check';
import { countBits, countNew, emptyBits, mergeBits, pairCover, type Bits } from './cover';
import type { StakeGround } from './ground';
import { CONTROL_SPACING_FT } from './limits';
import type { Check, StakeoutSpec } from './model';
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
/** Chosen at a slightly tighter target, so that printed positions still meet the one asked for. */
const TARGET_MARGIN = 0.97;

interface Candidate {
  readonly at: Point;
  readonly end: TapeEnd;
  /** The tie is checked from what is known already. */
  readonly checked: boolean;
}

interface Choosing {
  readonly spec: StakeoutSpec;
  readonly stakes: readonly Point[];
}

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
  const job: Choosing = { spec, stakes };
  const start = fixedEnds(controls);
  const lines = lineCandidates(controls, stakes, ground, spec.tape.limitFt);
  const target = spec.target95In * TARGET_MARGIN;
  const onLines = extend(job, start, lines, target);
  if (coverOf(job, onLines, target).count === stakes.length) return prune(job, onLines, target);
  const grid = [...lines, ...gridCandidates(controls, stakes, ground, spec.tape.limitFt)];
  const better = extend(job, start, grid, target);
  const reached = extend(job, better, grid, Infinity);
  return prune(job, reached, target);
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
    const covered = coverOf(job, plan, targetIn);
    if (covered.count === job.stakes.length) return plan;
    const candidates = candidatesFor(job, plan, places);
    const chosen =
      bestGain(job, plan, candidates, covered.bits, targetIn) ??
      steppingStone(job, plan, candidates, covered.bits);
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
    if (plan.ends.some((e) => pointDistance(e.point.at, at) < 4 * CONTROL_SPACING_FT)) return [];
    const stake = bestSetting(plan.ends, at, tape, system);
    if (!stake) return [];
    const end = { id: '?', point: { ...stake.point, own: [] }, covariance: stake.covariance };
    return [{ at, end, checked: chooseCheck(stake, sources, tape, system) !== null }];
  });
}

export const checkSources = (plan: ControlPlan): CheckSource[] =>
  plan.ends.map((e) => ({ id: e.id, point: e.point, isControl: true }));

/** The one or two candidates that add most stakes per control; null when none adds any. */
function bestGain(
  job: Choosing,
  plan: ControlPlan,
  candidates: readonly Candidate[],
  covered: Bits,
  targetIn: number,
): Point[] | null {
  const cover = (a: TapeEnd, b: TapeEnd) => pairCover(a, b, job.stakes, job.spec.tape, targetIn);
  const alone = candidates.map((c) => {
    const bits = Uint32Array.from(covered);
    for (const end of plan.ends) mergeBits(bits, cover(end, c.end));
    return bits;
  });
  let best: Point[] | null = null;
  let most = 0;
  candidates.forEach((c, i) => {
    const gain = countNew(alone[i]!, covered);
    if (c.checked && gain > most) {
      most = gain;
      best = [c.at];
    }
  });
  const missing = job.stakes.length - countBits(covered);
  if (most === missing) return best;
  candidates.forEach((c, i) => {
    for (let j = 0; j < i; j++) {
      const pair = orderPair(job, c, candidates[j]!);
      if (!pair) continue;
      const bits = cover(c.end, candidates[j]!.end);
      mergeBits(bits, alone[i]!);
      mergeBits(bits, alone[j]!);
      const gain = countNew(bits, covered) / 2;
      if (gain > most) {
        most = gain;
        best = pair;
      }
    }
  });
  return best;
}

/** The pair in an order in which each is checked from something known before it; null if none. */
function orderPair(job: Choosing, a: Candidate, b: Candidate): Point[] | null {
  const apart = pointDistance(a.at, b.at);
  if (apart < 4 * CONTROL_SPACING_FT) return null;
  const mutual = apart < job.spec.tape.limitFt - 1;
  if (a.checked && (b.checked || mutual)) return [a.at, b.at];
  return b.checked && mutual ? [b.at, a.at] : null;
}

/** When nothing in reach helps: the checked candidate nearest to the stakes still missing. */
function steppingStone(
  job: Choosing,
  plan: ControlPlan,
  candidates: readonly Candidate[],
  covered: Bits,
): Point[] | null {
  const missing = job.stakes.filter((_, i) => ((covered[i >> 5]! >>> (i & 31)) & 1) === 0);
  const reach = (p: Point) => Math.min(...missing.map((m) => pointDistance(m, p)));
  const unreached = missing.some((m) =>
    plan.ends.every((e) => pointDistance(e.point.at, m) > job.spec.tape.limitFt),
  );
  if (!unreached) return null;
  const known = Math.min(...plan.ends.map((e) => reach(e.point.at)));
  let best: Point | null = null;
  let least = known - CONTROL_SPACING_FT;
  for (const c of candidates) {
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
