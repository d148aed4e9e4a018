/**
 * How every wanted stake is set and in what order: by ties or with a short tape, from which pair, and
 * as printed. What comes out too weak or unchecked with a short tape is tied to controls instead.
 */
import type { Point } from '../geometry/point';
import { assignPairs, type PairPlan } from './assign-pairs';
import { TARGET_MARGIN, type ControlPlan } from './control-plan';
import {
  chooseShort,
  offerRecipes,
  savedMinutes,
  type Recipes,
  type ShortTask,
} from './choose-short';
import {
  orderStakes,
  walkTask,
  type CrewStart,
  type OrderTask,
  type SettingOrder,
} from './order-stakes';
import { printStakes, type PrintedStakes, type WantedStake } from './print-stakes';
import { shareWalk } from './share-walk';
import type { StakeoutSpec } from './model';
import { methodControls, tiePrecisionIn } from './ties';
import { walkFt, walkSeconds, WALK_FT_PER_S } from './walk-cost';
import { shortestWalk } from './walk-order';

/** A way of setting every stake, before the order is made as short as it can be. */
export interface Setting {
  readonly wanted: readonly WantedStake[];
  readonly controls: ControlPlan;
  readonly spec: StakeoutSpec;
  readonly pairs: PairPlan;
  readonly recipes: Recipes;
}

/** Times that weak or unchecked short-tape stakes are given back to the tapes. */
const MOST_REFUSALS = 12;
/** Tries at a shorter walk once the stakes are settled. */
const KICKS = 300;
const TOUR_KICKS = 60;

/** Settles how each stake is set, printed once in a quick order. */
export function settleStakes(
  wanted: readonly WantedStake[],
  controls: ControlPlan,
  spec: StakeoutSpec,
): Settled {
  const places = wanted.map((w) => w.at);
  const all = assignPairs(controls.ends, places, spec, controls.targetIn);
  const limits = places.map((p, i) => limitFor(all, i, p, spec));
  const given = { places: wanted, pairs: all, controls, spec, limits, tied: new Map() };
  const task = { ...given, offered: offerRecipes(given), refused: new Set<number>() };
  const first = settleAlong(task, wanted, bestTour(task));
  if (task.refused.size === 0) return first;
  const second = settleAlong(task, wanted, bestTour(task));
  const worth = (s: Settled): number => costOf(task, s.setting.recipes);
  return worth(second) < worth(first) ? second : first;
}

/** A setting with its stakes as printed. */
export interface Settled {
  readonly setting: Setting;
  readonly printed: PrintedStakes;
}

/** Chooses along a walk and prints, until every short stake holds; the weak ones are refused. */
function settleAlong(
  task: ShortTask & { readonly refused: Set<number> },
  wanted: readonly WantedStake[],
  tour: readonly number[],
): Settled {
  const { controls, spec, limits, refused } = task;
  const places = wanted.map((w) => w.at);
  for (let tries = 0; ; tries++) {
    const recipes = tries < MOST_REFUSALS ? chooseShort(task, tour) : wanted.map(() => null);
    const pairs = tiedPairs(controls, places, recipes, spec);
    const setting = { wanted, controls, spec, pairs, recipes };
    const printed = printOrder(setting, 0);
    const weak = weakShort(printed, recipes, limits);
    if (weak.length === 0) return { setting, printed };
    for (const i of weak) refused.add(i);
  }
}

/** Times that the walk is drawn again through the short stakes chosen along it. */
const TOURS = 3;

/**
 * The walk along which short stakes are chosen: through those that are chosen without one, either way
 * round, so that the marker need not turn back for one that another waits for; again through what is
 * then chosen; or none. The choice that costs least counts.
 */
function bestTour(task: ShortTask): readonly number[] {
  let best: readonly number[] = [];
  let recipes = chooseShort(task);
  let least = costOf(task, recipes);
  for (let k = 0; k < TOURS; k++) {
    const tour = shortTour(task, recipes);
    const before = least;
    for (const along of [tour, [...tour].reverse()]) {
      const chosen = chooseShort(task, along);
      const cost = costOf(task, chosen);
      if (cost >= least) continue;
      least = cost;
      best = along;
      recipes = chosen;
    }
    if (least === before) break;
  }
  return best;
}

/** Person-minutes of walking less those saved. */
const costOf = (task: ShortTask, recipes: Recipes): number =>
  shortWalkMinutes(task, recipes) - savedMinutes(task.spec, recipes);

const shortOf = (recipes: Recipes): number[] =>
  [...recipes.keys()].filter((i) => recipes[i] !== null);

/** The shortest walk through the short stakes, whatever they wait for. */
function shortTour({ places }: ShortTask, recipes: Recipes): number[] {
  const members = shortOf(recipes);
  const at = members.map((i) => places[i]!.at);
  const seconds = (i: number, j: number): number => walkSeconds(at[i]!, at[j]!);
  const walk = shortestWalk(
    walkTask(at.length, () => 0, seconds),
    TOUR_KICKS,
  );
  return walk.map((k) => members[k]!);
}

/** Person-minutes of the pair that walks through the short stakes in an order that holds. */
function shortWalkMinutes(task: ShortTask, recipes: Recipes): number {
  const places = task.places.map((p) => p.at);
  const none = { pairs: [], pairOf: new Int32Array(places.length).fill(-1) };
  const order = { places, pairs: none, recipes, start: null, crew: task.spec.crew };
  const { short } = orderStakes(order, 0);
  return (2 * walkFt(short.map((i) => places[i]!))) / WALK_FT_PER_S / 60;
}

/** The same stakes in the shortest order found, each behind what it is checked from. */
export const printShortest = ({ setting, printed }: Settled): PrintedStakes =>
  printOrder(setting, KICKS, printed.checkers());

/** The target, or what ties would give where they do not meet it. */
function limitFor(pairs: PairPlan, i: number, at: Point, spec: StakeoutSpec): number {
  const pair = pairs.pairs[pairs.pairOf[i]!];
  return Math.max(spec.target95In * TARGET_MARGIN, pair ? tiePrecisionIn(pair, at) : 0);
}

/** Pairs for the stakes that are tied; −1 for the others. */
function tiedPairs(
  controls: ControlPlan,
  places: readonly Point[],
  recipes: Recipes,
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
  recipes: Recipes,
  limits: readonly number[],
): number[] {
  return recipes.flatMap((recipe, i) => {
    const stake = printed[i];
    return recipe && (!stake || stake.semiMajor95In > limits[i]!) ? [i] : [];
  });
}

function printOrder(
  setting: Setting,
  kicks: number,
  checkers: OrderTask['checkers'] = [],
): PrintedStakes {
  const { wanted, controls, spec, pairs, recipes } = setting;
  const places = wanted.map((w) => w.at);
  const start = crewStart(controls);
  const order: SettingOrder = orderStakes(
    { places, pairs, recipes, checkers, start, crew: spec.crew },
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
