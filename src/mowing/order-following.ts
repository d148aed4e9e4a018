/** An order of passes mended so that bands come after one that they are laid beside. */
import { tourCost, type CostMatrix } from '../tour/model';
import { orderBeside } from './order-beside';

interface Grouped {
  readonly group: number;
}

/** Passes that must come after one beside them. */
export interface Follow<T> {
  readonly isBound: (stop: T) => boolean;
  readonly besideOf: (stop: T) => readonly T[];
  /** Whether one beside it was driven before the round. */
  readonly isLaid: (stop: T) => boolean;
}

/** Rounds of looking at the real transits of an order in which passes follow others. */
const FOLLOW_ROUNDS = 4;

/**
 * `order` mended so that bound passes come after one beside them. `costs` has node i + 1 for `stops[i]`; `makeReal` writes a
 * transit's real cost into it.
 */
export function orderFollowing<T extends Grouped>(
  order: readonly T[],
  stops: readonly T[],
  costs: CostMatrix,
  makeReal: (from: number, to: number) => void,
  follow: Follow<T>,
): T[] {
  const nodes = new Map(stops.map((stop, i) => [stop, i + 1]));
  let best: readonly T[] = order;
  let least = Infinity;
  for (let round = 0; round < FOLLOW_ROUNDS; round++) {
    const next = followGroups(best, nodes, costs, follow);
    const tour = [0, ...next.map((stop) => nodes.get(stop)!)];
    tour.forEach((from, k) => makeReal(from, tour[k + 1] ?? 0));
    const cost = tourCost(costs, tour);
    if (cost >= least) break;
    [best, least] = [next, cost];
  }
  return [...best];
}

/** Group by group; a group that nothing yet laid leads into keeps its order. */
function followGroups<T extends Grouped>(
  order: readonly T[],
  nodes: ReadonlyMap<T, number>,
  costs: CostMatrix,
  follow: Follow<T>,
): T[] {
  const done: T[] = [];
  for (const group of new Set(order.map((stop) => stop.group))) {
    const own = order.filter((stop) => stop.group === group);
    const laid = new Set(done);
    const free = own.flatMap((stop, i) => {
      const led = follow.isLaid(stop) || follow.besideOf(stop).some((other) => laid.has(other));
      return led || !follow.isBound(stop) ? [i] : [];
    });
    const isBound = own.some(follow.isBound) && free.length > 0;
    done.push(...(isBound ? followOne(own, free, done.at(-1), nodes, costs, follow) : own));
  }
  return done;
}

function followOne<T extends Grouped>(
  own: readonly T[],
  free: readonly number[],
  before: T | undefined,
  nodes: ReadonlyMap<T, number>,
  { count, cost }: CostMatrix,
  follow: Follow<T>,
): T[] {
  const at = [before ? nodes.get(before)! : 0, ...own.map((stop) => nodes.get(stop)!)];
  const part = new Float64Array(at.length * at.length);
  at.forEach((from, i) =>
    at.forEach((to, j) => (part[i * at.length + j] = cost[from * count + to]!)),
  );
  const index = new Map(own.map((stop, i) => [stop, i]));
  const beside = own.map((stop) =>
    follow.besideOf(stop).flatMap((other) => index.get(other) ?? []),
  );
  const matrix = { count: at.length, cost: part };
  return orderBeside({ matrix, beside, free: new Set(free) }).map((i) => own[i]!);
}
