/** The order in which one machine drives its swaths, group after group. Directions are given, never turned. */
import { leastOf } from '../base/least-of';
import type { Seconds } from '../base/units';
import { tourCost, type CostMatrix } from '../tour/model';
import { searchTour, type Price, type TourSearch } from '../tour/search-tour';
import { drivePoints, type Pose } from './drive';
import type { Transit } from './find-transit';
import type { Against } from './finished-lays';
import { orderFollowing, type Follow } from './order-following';
import type { OverLay } from './over-lay';
import type { Ways } from './ways';

/** Where a swath is entered and left; every one of a group comes before the next group. */
export interface Stop {
  readonly group: number;
  readonly patch: string;
  readonly entry: Pose;
  readonly exit: Pose;
}

/** Where the machine starts, and where it may stand once all is done; none: it may stay. */
export interface Round {
  readonly start: Pose;
  readonly goals: readonly Pose[];
  readonly ways: Ways;
  /** What driving over finished grass costs; null: nothing. */
  readonly overLay: OverLay | null;
  /** Patches that are finished before the round. */
  readonly finished: ReadonlySet<string>;
}

/** Kicks of the search, for each swath and at most; fewer once costs are corrected. */
const KICKS_EACH = 12;
const MOST_KICKS = 2000;
const KICKS_EACH_AGAIN = 1;
/** Real transits looked at before the search, from each swath to those that seem nearest. */
const NEAREST = 4;
/** Times that the tour's transits are looked at and the search goes on with their real costs. */
const MOST_ROUNDS = 30;
/** Cost of a transit for which there is no way: an hour, more than any tour can gain by it. */
const NO_WAY: Seconds = 3600;
/** Cost of a step out of the order of groups, more than any number of transits without a way. */
const OUT_OF_ORDER: Seconds = 1e6;

/**
 * The stops in driving order: a short tour over the transits from each one's exit to each other's
 * entry, in seconds, all groups at once. Transits begin as estimates; those that a tour uses are then
 * found for real, priced for the grass that is finished at that place of the tour, and the search goes
 * on, until no tour seems better than one that is all real (or `MOST_ROUNDS` are over).
 */
export function orderSwaths<T extends Stop>(
  stops: readonly T[],
  round: Round,
  follow?: Follow<T>,
): T[] {
  if (stops.length < 2) return [...stops];
  const costs = estimateCosts(stops, round);
  const reveal = realCosts(stops, round, costs);
  for (const [from, to] of nearestPairs(costs)) reveal(from, to, () => false);
  const search = searchTour(costs);
  search.improve(Math.min(MOST_KICKS, KICKS_EACH * stops.length));
  const again = KICKS_EACH_AGAIN * stops.length;
  const order = refine(stops, search, costs, reveal, again).map((node) => stops[node - 1]!);
  order.sort((a, b) => a.group - b.group);
  if (!follow) return order;
  return orderFollowing(
    order,
    stops,
    costs,
    (from, to) => void reveal(from, to, () => false),
    follow,
  );
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

/** Writes the real cost of a transit into the matrix; empty when it stands there or is never driven. */
type Reveal = (from: number, to: number, isFinished: (patch: string) => boolean) => Price[];

function realCosts(stops: readonly Stop[], round: Round, { count, cost }: CostMatrix): Reveal {
  const { start, goals, ways, overLay, finished } = round;
  const known = new Map<number, Real>();
  const find = (from: number, to: number): Real => {
    const exit = from === 0 ? start : stops[from - 1]!.exit;
    const [first, ...rest] = to === 0 ? goals : [stops[to - 1]!.entry];
    if (!first) return { seconds: 0, against: [] };
    const found = rest.reduce(
      (way, goal) => quicker(way, ways.find(exit, goal)),
      ways.find(exit, first),
    );
    if (!found) return { seconds: NO_WAY, against: [] };
    const against = overLay?.lays.against(drivePoints(found.drive)) ?? [];
    return { seconds: found.seconds, against };
  };
  return (from, to, isFinished) => {
    const at = from * count + to;
    if (cost[at]! >= OUT_OF_ORDER) return [];
    const real = known.get(at) ?? find(from, to);
    known.set(at, real);
    const over = real.against.filter((a) => finished.has(a.patch) || isFinished(a.patch));
    const feet = over.reduce((n, a) => n + a.feet, 0);
    const now = real.seconds + feet * (overLay?.secondsPerFt ?? 0);
    if (now === cost[at]) return [];
    cost[at] = now;
    return [{ from, to, cost: now }];
  };
}

interface Real {
  readonly seconds: Seconds;
  readonly against: readonly Against[];
}

const quicker = (a: Transit | null, b: Transit | null): Transit | null =>
  a && (!b || a.seconds <= b.seconds) ? a : b;

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
  stops: readonly Stop[],
  search: TourSearch,
  costs: CostMatrix,
  reveal: Reveal,
  kicks: number,
): readonly number[] {
  let best = search.tour();
  let least = Infinity;
  const patches = ['', ...stops.map((s) => s.patch)];
  for (let round = 0; round < MOST_ROUNDS && search.cost() < least; round++) {
    const tour = search.tour();
    const last = new Map(tour.map((node, k) => [patches[node], k]));
    const prices = tour.flatMap((from, k) =>
      reveal(from, tour[k + 1] ?? 0, (patch) => (last.get(patch) ?? Infinity) <= k),
    );
    const cost = tourCost(costs, tour);
    if (cost < least) [best, least] = [tour, cost];
    search.reprice(prices);
    search.improve(kicks);
  }
  return best.slice(1);
}
