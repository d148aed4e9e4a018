/** The order in which one machine drives its swaths, group after group. Directions are given, never turned. */
import { leastOf } from '../base/least-of';
import type { Seconds } from '../base/units';
import { tourCost, type CostMatrix } from '../tour/model';
import { searchTour, type Price, type TourSearch } from '../tour/search-tour';
import type { Pose } from './drive';
import type { Ways } from './ways';

/** Where a swath is entered and left; every one of a group comes before the next group. */
export interface Stop {
  readonly group: number;
  readonly entry: Pose;
  readonly exit: Pose;
}

/** Where the machine starts, and where it may stand once all is done; none: it may stay. */
export interface Round {
  readonly start: Pose;
  readonly goals: readonly Pose[];
  readonly ways: Ways;
}

/** Kicks of the search, for each swath and at most; fewer once costs are corrected. */
const KICKS_EACH = 12;
const MOST_KICKS = 2000;
const KICKS_EACH_AGAIN = 2;
/** Real transits looked at before the search, from each swath to those that seem nearest. */
const NEAREST = 4;
/** Times that the tour's transits are looked at and the search goes on with their real costs. */
const MOST_ROUNDS = 60;
/** Cost of a transit for which there is no way: an hour, more than any tour can gain by it. */
const NO_WAY: Seconds = 3600;
/** Cost of a step out of the order of groups, more than any number of transits without a way. */
const OUT_OF_ORDER: Seconds = 1e8;

/**
 * The stops in driving order: a short tour over the transits from each one's exit to each other's
 * entry, in seconds, all groups at once. Transits begin as estimates; those that a tour uses are then
 * found for real and the search goes on, until no tour seems better than one that is all real (or
 * `MOST_ROUNDS` are over).
 */
export function orderSwaths<T extends Stop>(stops: readonly T[], round: Round): T[] {
  if (stops.length < 2) return [...stops];
  const costs = estimateCosts(stops, round);
  const reveal = realCosts(stops, round, costs);
  for (const [from, to] of nearestPairs(costs)) reveal(from, to);
  const search = searchTour(costs);
  search.improve(Math.min(MOST_KICKS, KICKS_EACH * stops.length));
  const again = KICKS_EACH_AGAIN * stops.length;
  const order = refine(search, costs, reveal, again).map((node) => stops[node - 1]!);
  return order.sort((a, b) => a.group - b.group);
}

/** Node 0 is the start and the goal. */
function estimateCosts(stops: readonly Stop[], { start, goals, ways }: Round): CostMatrix {
  const count = stops.length + 1;
  const groups = [...new Set(stops.map((s) => s.group))].sort((a, b) => a - b);
  const rank = [-1, ...stops.map((s) => groups.indexOf(s.group))];
  const exits = [start, ...stops.map((s) => s.exit)];
  const cost = new Float64Array(count * count).fill(OUT_OF_ORDER);
  const entries = stops.map((s) => s.entry);
  const seconds = ways.estimate(exits, entries);
  const home = ways.estimate(exits, goals);
  for (let i = 0; i < count; i++) {
    if (rank[i] === groups.length - 1) cost[i * count] = leastSeconds(goals, (j) => home(i, j));
    for (let j = 1; j < count; j++) {
      const steps = rank[j]! - rank[i]!;
      if (i !== j && (steps === 0 || steps === 1)) cost[i * count + j] = seconds(i, j - 1);
    }
  }
  return { count, cost };
}

function leastSeconds(goals: readonly Pose[], seconds: (goal: number) => Seconds): Seconds {
  if (goals.length === 0) return 0;
  return goals.reduce((least, _, j) => Math.min(least, seconds(j)), NO_WAY);
}

/** Writes the real cost of a transit into the matrix; empty when it was known or is never driven. */
type Reveal = (from: number, to: number) => Price[];

function realCosts(stops: readonly Stop[], round: Round, { count, cost }: CostMatrix): Reveal {
  const { start, goals, ways } = round;
  const known = new Set<number>();
  const real = (from: Pose, to: Pose): Seconds => ways.find(from, to)?.seconds ?? NO_WAY;
  return (from, to) => {
    const at = from * count + to;
    if (known.has(at) || cost[at]! >= OUT_OF_ORDER) return [];
    known.add(at);
    const exit = from === 0 ? start : stops[from - 1]!.exit;
    cost[at] =
      to === 0
        ? leastSeconds(goals, (j) => real(exit, goals[j]!))
        : real(exit, stops[to - 1]!.entry);
    return [{ from, to, cost: cost[at] }];
  };
}

/** From each node to those that seem nearest. */
function nearestPairs({ count, cost }: CostMatrix): [number, number][] {
  return Array.from({ length: count }, (_, from) =>
    leastOf(count, Math.min(NEAREST, count - 2), (to) =>
      to === 0 || to === from ? Infinity : cost[from * count + to]!,
    ).map((to): [number, number] => [from, to]),
  ).flat();
}

/** The cheapest tour found whose transits are all real, without node 0. */
function refine(
  search: TourSearch,
  costs: CostMatrix,
  reveal: Reveal,
  kicks: number,
): readonly number[] {
  let best = search.tour();
  let least = Infinity;
  for (let round = 0; round < MOST_ROUNDS && search.cost() < least; round++) {
    const tour = search.tour();
    const prices = tour.flatMap((from, k) => reveal(from, tour[k + 1] ?? 0));
    const cost = tourCost(costs, tour);
    if (cost < least) [best, least] = [tour, cost];
    search.reprice(prices);
    search.improve(kicks);
  }
  return best.slice(1);
}
