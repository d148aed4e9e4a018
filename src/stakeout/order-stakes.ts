/**
 * The order of setting: pairs so that a tape holder stays put where one can, and within a pair the
 * shortest walk found by nearest neighbour, 2-opt and moves of single stakes.
 */
import { pointDistance, type Point } from '../geometry/point';
import type { PairPlan } from './assign-pairs';
import type { TiePair } from './ties';

/** A run of stakes set from one pair of controls. */
export interface StakeRun {
  readonly pair: TiePair;
  /** Indices of the stakes, in setting order. */
  readonly stakes: readonly number[];
}

/** Runs in order, starting near `lastIds` (the controls in use when the graphic begins). */
export function orderStakes(
  plan: PairPlan,
  stakes: readonly Point[],
  lastIds: readonly string[],
): StakeRun[] {
  const groups = plan.pairs
    .map((pair, i) => ({ pair, stakes: membersOf(plan, i) }))
    .filter((g) => g.stakes.length > 0);
  const runs: StakeRun[] = [];
  let held = lastIds;
  let at: Point | null = null;
  while (groups.length > 0) {
    const next = nextGroup(groups, held);
    const [group] = groups.splice(next, 1);
    const walk = walkOrder(group!.stakes, stakes, at);
    runs.push({ pair: group!.pair, stakes: walk });
    held = [group!.pair.a.id, group!.pair.b.id];
    at = stakes[walk[walk.length - 1]!]!;
  }
  return runs;
}

const membersOf = (plan: PairPlan, pair: number): number[] =>
  [...plan.pairOf.keys()].filter((i) => plan.pairOf[i] === pair);

/** The group that keeps most tape holders where they are; the larger one between equals. */
function nextGroup(groups: readonly StakeRun[], held: readonly string[]): number {
  let best = 0;
  let most = -1;
  groups.forEach((g, i) => {
    const kept = Number(held.includes(g.pair.a.id)) + Number(held.includes(g.pair.b.id));
    const rank = kept + g.stakes.length / 10_000;
    if (rank > most) {
      most = rank;
      best = i;
    }
  });
  return best;
}

function walkOrder(
  members: readonly number[],
  stakes: readonly Point[],
  from: Point | null,
): number[] {
  const first = from
    ? nearestIndex(members, stakes, from)
    : members.reduce((a, b) => (stakes[b]!.x < stakes[a]!.x ? b : a));
  return shorten(nearestNeighbour(members, stakes, first), stakes);
}

function nearestIndex(members: readonly number[], stakes: readonly Point[], from: Point): number {
  return members.reduce((a, b) =>
    pointDistance(stakes[b]!, from) < pointDistance(stakes[a]!, from) ? b : a,
  );
}

function nearestNeighbour(
  members: readonly number[],
  stakes: readonly Point[],
  first: number,
): number[] {
  const left = new Set(members);
  const walk = [first];
  left.delete(first);
  while (left.size > 0) {
    const here = stakes[walk[walk.length - 1]!]!;
    const next = nearestIndex([...left], stakes, here);
    walk.push(next);
    left.delete(next);
  }
  return walk;
}

/** 2-opt and or-opt on an open walk whose first stake stays, until nothing improves. */
function shorten(walk: number[], stakes: readonly Point[]): number[] {
  const order = [...walk];
  for (let pass = 0; pass < 30; pass++) {
    const reversed = reverseOnce(order, stakes);
    const moved = moveOnce(order, stakes);
    if (!reversed && !moved) break;
  }
  return order;
}

const step = (stakes: readonly Point[], a: number | undefined, b: number | undefined): number =>
  a === undefined || b === undefined ? 0 : pointDistance(stakes[a]!, stakes[b]!);

/** One sweep of reversals; true when some helped. */
function reverseOnce(order: number[], stakes: readonly Point[]): boolean {
  let helped = false;
  for (let i = 1; i < order.length - 1; i++) {
    for (let j = i + 1; j < order.length; j++) {
      const before = step(stakes, order[i - 1], order[i]) + step(stakes, order[j], order[j + 1]);
      const after = step(stakes, order[i - 1], order[j]) + step(stakes, order[i], order[j + 1]);
      if (after < before - LEAST_GAIN_FT) {
        reverseRange(order, i, j);
        helped = true;
      }
    }
  }
  return helped;
}

/** Shorter than anyone would notice; keeps the sweeps from chasing rounding. */
const LEAST_GAIN_FT = 0.01;

function reverseRange(order: number[], from: number, to: number): void {
  for (let i = from, j = to; i < j; i++, j--) {
    const held = order[i]!;
    order[i] = order[j]!;
    order[j] = held;
  }
}

/** One sweep of moving single stakes elsewhere; true when some helped. */
function moveOnce(order: number[], stakes: readonly Point[]): boolean {
  let helped = false;
  for (let i = 1; i < order.length; i++) {
    const [a, b, c] = [order[i - 1], order[i]!, order[i + 1]];
    const saved = step(stakes, a, b) + step(stakes, b, c) - step(stakes, a, c);
    const at = bestPlace(order, stakes, i, saved);
    if (at === null) continue;
    order.splice(i, 1);
    order.splice(at > i ? at - 1 : at, 0, b);
    helped = true;
  }
  return helped;
}

function bestPlace(
  order: readonly number[],
  stakes: readonly Point[],
  i: number,
  saved: number,
): number | null {
  let best: number | null = null;
  let most = LEAST_GAIN_FT;
  for (let k = 1; k <= order.length; k++) {
    if (k === i || k === i + 1) continue;
    const extra =
      step(stakes, order[k - 1], order[i]) +
      step(stakes, order[i], order[k]) -
      step(stakes, order[k - 1], order[k]);
    if (saved - extra > most) {
      most = saved - extra;
      best = k;
    }
  }
  return best;
}
