/** The stakes as printed: numbered in setting order, rounds, readings, checks. */
import { sharePoint, type PrecisePoint } from '../adjust/precise-point';
import { pointDistance, type Point } from '../geometry/point';
import { spacingAdd, spacingIndex, spacingNear, type SpacingIndex } from './spacing';
import { checkSources, type ControlPlan } from './control-plan';
import { checkServes, chooseCheck, type CheckSource } from './choose-check';
import type { ShortBase, ShortRecipe } from './choose-short';
import { LONGEST_BASE_FT } from './limits';
import type { Check, Round, SetMethod, Stake, StakeKind, StakeoutSpec } from './model';
import type { SettingOrder, StakeRun } from './order-stakes';
import { offsetTools, setShort, type ShortEnd } from './short-methods';
import { checkTape } from './tapes';
import { isShort, methodControls, setByTies, type SetStake } from './ties';

/** A stake still to be numbered. */
export interface WantedStake {
  readonly at: Point;
  readonly kind: StakeKind;
}

export interface PrintedStakes {
  /** Set controls first, then the rest, in setting order. */
  readonly stakes: readonly Stake[];
  readonly rounds: readonly Round[];
  /** The printed stake for each wanted one; undefined when it cannot be set or checked. */
  readonly printed: readonly (Stake | undefined)[];
  /**
   * For each wanted stake the stakes of which one must stand to check it: other short-tape ones, where
   * neither a control nor a tied stake does. Empty: it can be checked at once.
   */
  readonly checkers: () => number[][];
}

/** Neighbours this far off may serve for a check when no control does. */
const NEIGHBOUR_CHECK_FT = 40;

/**
 * Sets the wanted stakes run by run with printed readings, each with its check, then those of the short
 * tape, and numbers them in the order in which they can be set. Feet; precision in inches.
 */
export function printStakes(
  wanted: readonly WantedStake[],
  controls: ControlPlan,
  order: SettingOrder & { readonly recipes: readonly (ShortRecipe | null)[] },
  spec: StakeoutSpec,
): PrintedStakes {
  const job = startJob(wanted, controls, order.recipes, spec);
  const waiting = order.runs.flatMap((run) => printRun(job, run, run.stakes));
  // What nothing could check in its own round comes again behind the other rounds.
  for (const { run, index } of waiting) printRun(job, run, [index]);
  printAll(job, order.short, (index) => setByShort(job, index));
  return { ...numberRounds(job.stakes, job.printed), checkers: () => checkersOf(job) };
}

/** Prints those stakes of a run; the ones that nothing checks yet are left over. */
function printRun(
  job: PrintJob,
  run: StakeRun,
  stakes: readonly number[],
): { readonly run: StakeRun; readonly index: number }[] {
  const { a, b, tapes } = run.pair;
  const left = printAll(job, stakes, (index) =>
    setByTies(a, b, job.wanted[index]!.at, tapes, job.spec.system),
  );
  return left.map((index) => ({ run, index }));
}

/** What stands so far. */
interface PrintJob {
  readonly wanted: readonly WantedStake[];
  readonly spec: StakeoutSpec;
  readonly recipes: readonly (ShortRecipe | null)[];
  /** Stakes that short-tape stakes are set from. */
  readonly bases: ReadonlySet<number>;
  readonly stakes: Unrounded[];
  readonly printed: (Unrounded | undefined)[];
  /** Each stake as a place to measure from. */
  readonly sources: (CheckSource | undefined)[];
  /** Each short-tape stake as set. */
  readonly short: Map<number, SetStake>;
  readonly controls: readonly CheckSource[];
  readonly near: SpacingIndex<CheckSource>;
  readonly earlier: CheckSource[];
  readonly setControls: number;
  nextCause: number;
}

function startJob(
  wanted: readonly WantedStake[],
  controls: ControlPlan,
  recipes: PrintJob['recipes'],
  spec: StakeoutSpec,
): PrintJob {
  const near = spacingIndex<CheckSource>(NEIGHBOUR_CHECK_FT);
  const ends = recipes.flatMap((r) => (r ? [r.a, r.b] : []));
  return {
    wanted,
    spec,
    recipes,
    bases: new Set(ends.filter((base) => typeof base === 'number')),
    stakes: controls.set.map(controlStake),
    printed: wanted.map(() => undefined),
    sources: wanted.map(() => undefined),
    short: new Map(),
    controls: checkSources(controls),
    near,
    earlier: [],
    setControls: controls.set.length,
    nextCause: controls.causes,
  };
}

type Unrounded = Omit<Stake, 'round'>;

function controlStake(c: ControlPlan['set'][number]): Unrounded {
  return {
    id: c.id,
    kind: 'control',
    at: c.stake.point.at,
    set: c.stake.set,
    check: c.check,
    covariance: c.stake.covariance,
    semiMajor95In: c.stake.semiMajor95In,
  };
}

/** A stake that nothing can check yet waits for its neighbours; returns those still unchecked then. */
function printAll(
  job: PrintJob,
  indices: readonly number[],
  setting: (index: number) => SetStake | null,
): readonly number[] {
  let left = indices;
  while (left.length > 0) {
    const missed = left.filter((index) => !printOne(job, index, setting(index)));
    if (missed.length === left.length) break;
    left = missed;
  }
  return left;
}

function printOne(job: PrintJob, index: number, set: SetStake | null): boolean {
  const check = set && checkFor(job, set);
  if (!set || !check) return false;
  const id = String(job.stakes.length - job.setControls + 1);
  const source = { id, point: pointFor(job, index, set), isControl: false };
  spacingAdd(job.near, set.point.at, source);
  job.earlier.push(source);
  job.sources[index] = source;
  if (isShort(set.set)) job.short.set(index, set);
  const stake = {
    id,
    kind: job.wanted[index]!.kind,
    at: set.point.at,
    set: set.set,
    check,
    covariance: set.covariance,
    semiMajor95In: set.semiMajor95In,
  };
  job.stakes.push(stake);
  job.printed[index] = stake;
  return true;
}

/** A stake that others are set from shares its errors with them. */
function pointFor(job: PrintJob, index: number, set: SetStake): PrecisePoint {
  if (!job.bases.has(index)) return set.point;
  const point = sharePoint(set.point, job.nextCause);
  job.nextCause += set.point.own.length;
  return point;
}

function checkFor(job: PrintJob, set: SetStake): Check | null {
  const { spec, controls } = job;
  const near = spacingNear(job.near, set.point.at).map((p) => p.tag);
  if (isShort(set.set))
    return chooseCheck(set, inReach(job, near, set), checkTape(spec), spec.system);
  return (
    chooseCheck(set, [...controls, ...near], checkTape(spec), spec.system) ??
    chooseCheck(set, job.earlier, checkTape(spec), spec.system)
  );
}

function checkersOf(job: PrintJob): number[][] {
  const tape = checkTape(job.spec);
  const number = new Map(job.sources.map((source, i) => [source, i]));
  return job.wanted.map((_, index) => {
    const set = job.short.get(index);
    if (!set) return [];
    const near = spacingNear(job.near, set.point.at).map((p) => p.tag);
    const serving = inReach(job, near, set).filter((source) => checkServes(set, source, tape));
    const numbers = serving.map((source) => number.get(source));
    const stands = (i: number | undefined): boolean => i === undefined || !job.short.has(i);
    return numbers.some(stands) ? [] : numbers.flatMap((i) => i ?? []);
  });
}

/** What the short tape reaches, a control no better than a stake. */
const inReach = (job: PrintJob, near: readonly CheckSource[], set: SetStake): CheckSource[] =>
  [...near, ...job.controls.map((c) => ({ ...c, isControl: false }))].filter(
    (s) => pointDistance(s.point.at, set.point.at) <= LONGEST_BASE_FT,
  );

function setByShort(job: PrintJob, index: number): SetStake | null {
  const recipe = job.recipes[index];
  const a = recipe && baseOf(job, recipe.a);
  const b = recipe && baseOf(job, recipe.b);
  if (!a || !b) return null;
  const { spec } = job;
  return setShort(a, b, job.wanted[index]!.at, offsetTools(spec), spec.system);
}

const baseOf = (job: PrintJob, base: ShortBase): ShortEnd | undefined =>
  typeof base === 'number' ? job.sources[base] : base;

/** Consecutive stakes pulled from the same two controls with the same tapes make a round. */
function numberRounds(
  stakes: readonly Unrounded[],
  printed: readonly (Unrounded | undefined)[],
): Omit<PrintedStakes, 'checkers'> {
  const rounds: (Omit<Round, 'stakes'> & { readonly stakes: string[] })[] = [];
  const numbered = new Map<Unrounded, Stake>();
  for (const stake of stakes) {
    const from = isShort(stake.set) ? null : methodControls(stake.set);
    const last = rounds[rounds.length - 1];
    const same = last && continuesRound(last, stake.set);
    const round = same
      ? last
      : { number: rounds.length + 1, from, ...heldAt(stake.set), stakes: [] };
    if (!same) rounds.push(round);
    round.stakes.push(stake.id);
    numbered.set(stake, { ...stake, round: round.number });
  }
  return {
    stakes: stakes.map((s) => numbered.get(s)!),
    rounds,
    printed: printed.map((s) => s && numbered.get(s)),
  };
}

function continuesRound(round: Omit<Round, 'stakes'>, set: SetMethod): boolean {
  if (isShort(set) || round.from === null) return isShort(set) && round.from === null;
  const from = methodControls(set);
  if (!round.from.includes(from[0]) || !round.from.includes(from[1])) return false;
  const { tapes } = heldAt(set);
  if (!tapes || !round.tapes) return true;
  return (round.from[0] === from[0]) === (round.tapes[0] === tapes[0]);
}

/** Who holds which tape; on a line the other holder has the other tape. */
function heldAt(set: SetMethod): Pick<Round, 'tapes'> {
  const first = set.method === 'ties' || set.method === 'line' ? set.tie1.tape : undefined;
  return first === undefined ? {} : { tapes: first === 1 ? [1, 2] : [2, 1] };
}
