/** The stakes as printed: numbered in setting order, rounds, readings, checks. */
import type { Point } from '../geometry/point';
import { spacingAdd, spacingIndex, spacingNear, type SpacingIndex } from './spacing';
import { checkSources, type ControlPlan } from './choose-controls';
import { chooseCheck, type CheckSource } from './choose-check';
import type { Round, Stake, StakeKind, StakeoutSpec } from './model';
import type { StakeRun } from './order-stakes';
import { methodControls, setByTies } from './ties';

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
}

/** Neighbours this far off may serve for a check when no control does. */
const NEIGHBOUR_CHECK_FT = 40;

/**
 * Sets the wanted stakes run by run with printed readings, each with its check, and numbers them in the
 * order in which they can be set. Feet; precision in inches.
 */
export function printStakes(
  wanted: readonly WantedStake[],
  controls: ControlPlan,
  runs: readonly StakeRun[],
  spec: StakeoutSpec,
): PrintedStakes {
  const stakes: Unrounded[] = controls.set.map(controlStake);
  const printed: (Unrounded | undefined)[] = wanted.map(() => undefined);
  const known: Known = {
    controls: checkSources(controls),
    near: spacingIndex(NEIGHBOUR_CHECK_FT),
    earlier: [],
  };
  for (const run of runs) {
    for (let left = run.stakes; left.length > 0;) {
      const missed = left.filter((index) => {
        const id = String(stakes.length - controls.set.length + 1);
        const stake = printOne(wanted[index]!, id, run, known, spec);
        if (stake) stakes.push(stake);
        printed[index] = stake ?? undefined;
        return stake === null;
      });
      if (missed.length === left.length) break;
      left = missed;
    }
  }
  return numberRounds(stakes, printed);
}

/** What a check may be pulled from. */
interface Known {
  readonly controls: readonly CheckSource[];
  readonly near: SpacingIndex<CheckSource>;
  readonly earlier: CheckSource[];
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

/** A stake that nothing can check yet waits for its neighbours: it is tried again after them. */
function printOne(
  wanted: WantedStake,
  id: string,
  run: StakeRun,
  known: Known,
  spec: StakeoutSpec,
): Unrounded | null {
  const set = setByTies(run.pair.a, run.pair.b, wanted.at, spec.tape, spec.system);
  if (!set) return null;
  const near = spacingNear(known.near, set.point.at).map((p) => p.tag);
  const check =
    chooseCheck(set, [...known.controls, ...near], spec.tape, spec.system) ??
    chooseCheck(set, known.earlier, spec.tape, spec.system);
  if (!check) return null;
  const source = { id, point: set.point, isControl: false };
  spacingAdd(known.near, set.point.at, source);
  known.earlier.push(source);
  return {
    id,
    kind: wanted.kind,
    at: set.point.at,
    set: set.set,
    check,
    covariance: set.covariance,
    semiMajor95In: set.semiMajor95In,
  };
}

/** Consecutive stakes pulled from the same two controls make a round. */
function numberRounds(
  stakes: readonly Unrounded[],
  printed: readonly (Unrounded | undefined)[],
): PrintedStakes {
  const rounds: { number: number; from: readonly [string, string]; stakes: string[] }[] = [];
  const numbered = new Map<Unrounded, Stake>();
  for (const stake of stakes) {
    const from = methodControls(stake.set);
    const last = rounds[rounds.length - 1];
    const same = last && last.from.includes(from[0]) && last.from.includes(from[1]);
    const round = same ? last : { number: rounds.length + 1, from, stakes: [] };
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
