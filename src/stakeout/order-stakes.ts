/**
 * The order of setting: pair by pair, so that a pair of controls is held once, each pair's stakes by
 * the shortest walk found; then the short-tape stakes by theirs, each after the two it is set from.
 */
import type { Point } from '../geometry/point';
import type { PairPlan } from './assign-pairs';
import type { ShortRecipe } from './choose-short';
import type { StakeoutSpec } from './model';
import type { TiePair } from './ties';
import { sameHold, stepSeconds, walkSeconds, type Hold } from './walk-cost';
import { shortestWalk, walkCost, type WalkTask } from './walk-order';

/** A run of stakes set from one pair of controls. */
export interface StakeRun {
  readonly pair: TiePair;
  /** Indices of the stakes, in setting order. */
  readonly stakes: readonly number[];
}

export interface SettingOrder {
  readonly runs: readonly StakeRun[];
  /** Indices of the short-tape stakes, in setting order. */
  readonly short: readonly number[];
}

/** Where the crew stands when the graphic begins: at the last control stake. */
export interface CrewStart {
  readonly at: Point;
  readonly hold: Hold;
}

export interface OrderTask {
  readonly places: readonly Point[];
  readonly pairs: PairPlan;
  readonly recipes: readonly (ShortRecipe | null)[];
  /** For each place, others of which one must come before it; absent or empty: no such rule. */
  readonly checkers?: readonly (readonly number[])[];
  readonly start: CrewStart | null;
  readonly crew: StakeoutSpec['crew'];
}

/** Added to every change of pair, seconds, so that no pair is held twice. */
const CHANGE_SECONDS = 10_000;

/** Times that the end of the ties' walk and the start of the short tapes' are fitted to each other. */
const TURNS = 2;

/** Ties first, then short tapes; `kicks` more tries are made at a shorter walk. */
export function orderStakes(task: OrderTask, kicks: number): SettingOrder {
  const tied = indices(task, (i) => task.recipes[i] === null && task.pairs.pairOf[i]! >= 0);
  const short = indices(task, (i) => task.recipes[i] !== null);
  const tiedTask = tiedWalk(task, tied);
  let best: { readonly walk: number[]; readonly short: number[] } | null = null;
  let least = Infinity;
  let toEnd: Float64Array | null = null;
  for (let turn = 0; turn < (kicks > 0 && short.length > 0 ? TURNS : 1); turn++) {
    const walk = shortestWalk(toEnd ? { ...tiedTask, toEnd } : tiedTask, kicks);
    const last = walk[walk.length - 1];
    const from = last === undefined ? (task.start?.at ?? null) : task.places[tied[last]!]!;
    const shortTask = shortWalk(task, short, from);
    const then = shortestWalk(shortTask, kicks);
    const cost = walkCost(tiedTask, walk) + walkCost(shortTask, then);
    if (cost < least) {
      least = cost;
      best = { walk: walk.map((k) => tied[k]!), short: then.map((k) => short[k]!) };
    }
    const next = task.places[short[then[0]!]!];
    toEnd = next ? Float64Array.from(tied, (i) => walkSeconds(task.places[i]!, next)) : null;
  }
  return { runs: splitRuns(task.pairs, best?.walk ?? []), short: best?.short ?? [] };
}

const indices = (task: OrderTask, wanted: (i: number) => boolean): number[] =>
  [...task.places.keys()].filter(wanted);

/** Where a pair's tapes are held. */
export const pairHold = ({ a, b, tapes }: TiePair): Hold => [
  { id: a.id, at: a.point.at, ...tapeOf(tapes[0]) },
  { id: b.id, at: b.point.at, ...tapeOf(tapes[1]) },
];

const tapeOf = ({ held }: TiePair['tapes'][number]) => (held === undefined ? {} : { tape: held });

/** The walk through tied stakes; a change of pair costs what cannot be saved by walking. */
export function tiedWalk(task: OrderTask, members: readonly number[]): WalkTask {
  const { places, pairs, start, crew } = task;
  const holds = pairs.pairs.map(pairHold);
  const same = holds.map((p) => holds.map((q) => sameHold(p, q)));
  const startSame = holds.map((q) => start !== null && sameHold(start.hold, q));
  const pairOf = members.map((i) => pairs.pairOf[i]!);
  const at = members.map((i) => places[i]!);
  const seconds = (i: number, j: number): number => {
    const [p, q] = [pairOf[i]!, pairOf[j]!];
    return same[p]![q]!
      ? walkSeconds(at[i]!, at[j]!)
      : CHANGE_SECONDS + stepSeconds(at[i]!, at[j]!, holds[p]!, holds[q]!, crew);
  };
  const fromStart = (i: number): number => {
    if (!start) return 0;
    const change = startSame[pairOf[i]!]! ? 0 : CHANGE_SECONDS;
    return change + stepSeconds(start.at, at[i]!, start.hold, holds[pairOf[i]!]!, crew);
  };
  return walkTask(members.length, fromStart, seconds);
}

function shortWalk(task: OrderTask, members: readonly number[], from: Point | null): WalkTask {
  const at = members.map((i) => task.places[i]!);
  const number = new Map(members.map((i, k) => [i, k]));
  const walk = walkTask(
    members.length,
    (i) => (from ? walkSeconds(from, at[i]!) : 0),
    (i, j) => walkSeconds(at[i]!, at[j]!),
  );
  const before = members.map((i) => {
    const { a, b } = task.recipes[i]!;
    return [a, b].flatMap((base) => {
      const k = typeof base === 'number' ? number.get(base) : undefined;
      return k === undefined ? [] : [k];
    });
  });
  const oneBefore = members.map((i) =>
    (task.checkers?.[i] ?? []).flatMap((checker) => number.get(checker) ?? []),
  );
  return { ...walk, before, oneBefore };
}

/** All costs worked out once. */
export function walkTask(
  count: number,
  fromStart: (i: number) => number,
  seconds: (i: number, j: number) => number,
): WalkTask {
  const between = new Float64Array(count * count);
  for (let i = 0; i < count; i++) {
    for (let j = 0; j < i; j++) {
      between[i * count + j] = between[j * count + i] = seconds(i, j);
    }
  }
  return {
    count,
    fromStart: Float64Array.from({ length: count }, (_, i) => fromStart(i)),
    between,
  };
}

function splitRuns({ pairs, pairOf }: PairPlan, walk: readonly number[]): StakeRun[] {
  const runs: { readonly pair: TiePair; readonly stakes: number[] }[] = [];
  for (const i of walk) {
    const pair = pairs[pairOf[i]!]!;
    const run = runs[runs.length - 1];
    if (run?.pair === pair) run.stakes.push(i);
    else runs.push({ pair, stakes: [i] });
  }
  return runs;
}
