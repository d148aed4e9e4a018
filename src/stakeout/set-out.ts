/**
 * How every wanted stake is set and in what order: by ties or with a short tape, from which pair, and
 * as printed. What comes out too weak or unchecked with a short tape is tied to controls instead.
 */
import type { Point } from '../geometry/point';
import { assignPairs, type PairPlan } from './assign-pairs';
import { TARGET_MARGIN, type ControlPlan } from './choose-controls';
import { chooseShort, type ShortRecipe } from './choose-short';
import { orderStakes, type CrewStart, type SettingOrder } from './order-stakes';
import { printStakes, type PrintedStakes, type WantedStake } from './print-stakes';
import { shareWalk } from './share-walk';
import type { StakeoutSpec } from './model';
import { methodControls, tiePrecisionIn } from './ties';

/** A way of setting every stake, before the order is made as short as it can be. */
export interface Setting {
  readonly wanted: readonly WantedStake[];
  readonly controls: ControlPlan;
  readonly spec: StakeoutSpec;
  readonly pairs: PairPlan;
  readonly recipes: readonly (ShortRecipe | null)[];
}

/** Times that weak or unchecked short-tape stakes are given back to the tapes. */
const MOST_REFUSALS = 12;
/** Tries at a shorter walk once the stakes are settled. */
const KICKS = 400;

/** Settles how each stake is set, printed once in a quick order. */
export function settleStakes(
  wanted: readonly WantedStake[],
  controls: ControlPlan,
  spec: StakeoutSpec,
): { readonly setting: Setting; readonly printed: PrintedStakes } {
  const places = wanted.map((w) => w.at);
  const all = assignPairs(controls.ends, places, spec, controls.targetIn);
  const limits = places.map((p, i) => limitFor(all, i, p, spec));
  const refused = new Set<number>();
  for (let tries = 0; ; tries++) {
    const recipes =
      tries < MOST_REFUSALS
        ? chooseShort({ places: wanted, pairs: all, controls, spec, limits, refused })
        : wanted.map(() => null);
    const pairs = tiedPairs(controls, places, recipes, spec);
    const setting = { wanted, controls, spec, pairs, recipes };
    const printed = printOrder(setting, 0);
    const weak = weakShort(printed, recipes, limits);
    if (weak.length === 0) return { setting, printed };
    for (const i of weak) refused.add(i);
  }
}

/** The same stakes in the shortest order found. */
export const printShortest = (setting: Setting): PrintedStakes => printOrder(setting, KICKS);

/** The target, or what ties would give where they do not meet it. */
function limitFor(pairs: PairPlan, i: number, at: Point, spec: StakeoutSpec): number {
  const pair = pairs.pairs[pairs.pairOf[i]!];
  return Math.max(spec.target95In * TARGET_MARGIN, pair ? tiePrecisionIn(pair, at) : 0);
}

/** Pairs for the stakes that are tied; −1 for the others. */
function tiedPairs(
  controls: ControlPlan,
  places: readonly Point[],
  recipes: Setting['recipes'],
  spec: StakeoutSpec,
): PairPlan {
  const tied = [...places.keys()].filter((i) => recipes[i] === null);
  const at = tied.map((i) => places[i]!);
  const assigned = assignPairs(controls.ends, at, spec, controls.targetIn);
  const shared = shareWalk(assigned, at, spec.target95In * TARGET_MARGIN);
  const pairOf = new Int32Array(places.length).fill(-1);
  tied.forEach((i, k) => (pairOf[i] = shared.pairOf[k]!));
  return { pairs: shared.pairs, pairOf };
}

function weakShort(
  { printed }: PrintedStakes,
  recipes: Setting['recipes'],
  limits: readonly number[],
): number[] {
  return recipes.flatMap((recipe, i) => {
    const stake = printed[i];
    return recipe && (!stake || stake.semiMajor95In > limits[i]!) ? [i] : [];
  });
}

function printOrder(setting: Setting, kicks: number): PrintedStakes {
  const { wanted, controls, spec, pairs, recipes } = setting;
  const places = wanted.map((w) => w.at);
  const start = crewStart(controls);
  const order: SettingOrder = orderStakes(
    { places, pairs, recipes, start, crew: spec.crew },
    kicks,
  );
  return printStakes(wanted, controls, { ...order, recipes }, spec);
}

/** At the last control stake, its tapes still held; null when no control is set. */
function crewStart({ set, ends }: ControlPlan): CrewStart | null {
  const last = set[set.length - 1];
  if (!last) return null;
  const [a, b] = methodControls(last.stake.set).map((id) => {
    const at = ends.find((end) => end.id === id)!.point.at;
    return { id, at };
  });
  return { at: last.stake.point.at, hold: [a!, b!] };
}
