/**
 * Short closed tours where costs differ by direction; the cheapest where nodes are few. Start: the assignment's cycles patched to one
 * tour, or nearest neighbours where that is cheaper. Then exchanges of two neighbouring runs, none
 * turned round (3-opt without reversal, which holds every move of a run elsewhere), on costs reduced by
 * the assignment's prices, with lists of near nodes; then small seeded kicks that are taken back when
 * they do not help (J. Cirasella, D. S. Johnson, L. A. McGeoch and W. Zhang, ALENEX 2001).
 */
import { leastOf } from '../base/least-of';
import { seededRandom, type Random } from '../base/random';
import { cheapestAssignment, type Assignment } from './assignment';
import { exactTour, MOST_EXACT } from './exact-tour';
import { costBetween, tourCost, type CostMatrix } from './model';
import { patchCycles } from './patch-cycles';
import {
  apply,
  exchangeRuns,
  nodeAfter,
  nodeBefore,
  reversed,
  segmentTour,
  stepsTo,
  type Exchange,
  type SegmentTour,
} from './segment-tour';

/** The cost of going from one node to another, as now known. */
export interface Price {
  readonly from: number;
  readonly to: number;
  readonly cost: number;
}

/** Near nodes that are tried after, and before, each one. */
const NEAR = 14;
/** Longest run that a kick moves. */
const KICK_RUN = 50;
/** Less than this share of the mean cost is not chased: rounding. */
const LEAST_GAIN = 1 / 1_000_000_000;

export interface TourSearch {
  /** The best tour so far; node 0 comes first. */
  readonly tour: () => number[];
  readonly cost: () => number;
  /** No tour costs less. */
  readonly bound: () => number;
  /** Tries this many kicks; false when there is nothing to try. */
  readonly improve: (kicks: number) => boolean;
  /** Corrects costs, then improves the present tour by exchanges; `bound` stays a bound. */
  readonly reprice: (prices: readonly Price[]) => void;
}

/** A search of its own for a matrix, which it copies; equal matrices and seeds give equal tours. */
export function searchTour(given: CostMatrix, seed = 1): TourSearch {
  const { count } = given;
  const matrix = { count, cost: given.cost.slice() };
  if (count <= MOST_EXACT) return exactSearch(matrix);
  const prices = cheapestAssignment(matrix);
  const reduced = reduce(matrix, prices);
  const least = Math.max((LEAST_GAIN * Math.max(1, prices.cost)) / count, roundingOf(matrix));
  const starts = [patchCycles(matrix, prices.next), nearestNext(matrix)];
  const near = { after: nearLists(reduced, 'after'), before: nearLists(reduced, 'before') };
  const descended = starts.map((start) => descend(matrix, reduced, near, start, least));
  const [best] = descended.sort((a, b) => a.cost - b.cost);
  return kicking(matrix, best!, seededRandom(seed), prices.cost);
}

/** What sums and differences of a few costs may be off by: gains below it could go round in circles. */
function roundingOf({ cost }: CostMatrix): number {
  const largest = cost.reduce((most, c) => (Number.isFinite(c) ? Math.max(most, c) : most), 0);
  return ROUNDINGS * Number.EPSILON * largest;
}

/** Roundings that one gain may hold. */
const ROUNDINGS = 16;

/** The cheapest tour, found again whenever costs change. */
function exactSearch(matrix: CostMatrix): TourSearch {
  const solve = (): { tour: number[]; cost: number } => {
    if (matrix.count < 2) return { tour: [0], cost: 0 };
    const tour = exactTour(matrix);
    return { tour, cost: tourCost(matrix, tour) };
  };
  let best = solve();
  return {
    tour: () => best.tour,
    cost: () => best.cost,
    bound: () => best.cost,
    improve: () => false,
    reprice: (prices) => {
      for (const { from, to, cost } of prices) matrix.cost[from * matrix.count + to] = cost;
      best = solve();
    },
  };
}

/** Costs less the prices: not negative, and every tour costs as much less. */
function reduce({ count, cost }: CostMatrix, { row, column }: Assignment): CostMatrix {
  const less = new Float64Array(count * count);
  for (let i = 0; i < count; i++) {
    for (let j = 0; j < count; j++) {
      less[i * count + j] = i === j ? Infinity : cost[i * count + j]! - row[i]! - column[j]!;
    }
  }
  return { count, cost: less };
}

function nearestNext(matrix: CostMatrix): number[] {
  const { count } = matrix;
  const used = new Uint8Array(count);
  const tour = [0];
  used[0] = 1;
  while (tour.length < count) {
    const here = tour[tour.length - 1]!;
    let best = -1;
    for (let j = 0; j < count; j++) {
      if (used[j]) continue;
      if (best < 0 || costBetween(matrix, here, j) < costBetween(matrix, here, best)) best = j;
    }
    used[best] = 1;
    tour.push(best);
  }
  return tour;
}

/** Nodes near after each, and near before each, cheapest first. */
interface Near {
  readonly after: Int32Array[];
  readonly before: Int32Array[];
}

interface State extends Near {
  readonly reduced: CostMatrix;
  readonly tour: SegmentTour;
  readonly queue: number[];
  readonly queued: Uint8Array;
  readonly least: number;
  /** Exchanges made since the last kick. */
  readonly made: Exchange[];
  cost: number;
}

/** The start with all exchanges made that help. */
function descend(
  matrix: CostMatrix,
  reduced: CostMatrix,
  near: Near,
  start: readonly number[],
  least: number,
): State {
  const state: State = {
    ...near,
    reduced,
    tour: segmentTour(start),
    queue: [...start],
    queued: new Uint8Array(reduced.count).fill(1),
    least,
    made: [],
    cost: tourCost(matrix, start),
  };
  settle(state);
  return state;
}

function nearLists(costs: CostMatrix, side: keyof Near): Int32Array[] {
  return Array.from({ length: costs.count }, (_, i) => nearList(costs, side, i));
}

function nearList({ count, cost }: CostMatrix, side: keyof Near, i: number): Int32Array {
  const size = Math.min(NEAR, count - 1);
  const key = (j: number): number => cost[side === 'after' ? i * count + j : j * count + i]!;
  return Int32Array.from(leastOf(count, size, (j) => (j === i ? Infinity : key(j))));
}

/** Makes exchanges until none near a queued node helps. */
function settle(state: State): void {
  const { queue, queued } = state;
  for (let node = queue.pop(); node !== undefined; node = queue.pop()) {
    queued[node] = 0;
    while (improveAfter(state, node));
  }
}

/** The first exchange that helps and parts `a` from the node after it. */
function improveAfter(state: State, a: number): boolean {
  const { reduced, tour, least } = state;
  const { count, cost } = reduced;
  const a2 = nodeAfter(tour, a);
  const parted = cost[a * count + a2]!;
  for (const b2 of state.after[a]!) {
    const gained = parted - cost[a * count + b2]!;
    if (gained <= least) return false;
    if (b2 === a2) continue;
    const b = nodeBefore(tour, b2);
    const withB = gained + cost[b * count + b2]!;
    const c = bestThird(state, a, a2, b, withB);
    if (c < 0) continue;
    make(state, a, b, c);
    return true;
  }
  return false;
}

/** The node after which the tour is parted a third time, so that all three together help; −1: none. */
function bestThird(state: State, a: number, a2: number, b: number, gained: number): number {
  const { reduced, tour, least } = state;
  const { count, cost } = reduced;
  const toB = stepsTo(tour, a2, b);
  let best = -1;
  let most = least;
  for (const c of state.before[a2]!) {
    const left = gained - cost[c * count + a2]!;
    if (left <= least) break;
    if (c === a || stepsTo(tour, a2, c) <= toB) continue;
    const c2 = nodeAfter(tour, c);
    const gain = left + cost[c * count + c2]! - cost[b * count + c2]!;
    if (gain > most) [most, best] = [gain, c];
  }
  return best;
}

function make(state: State, a: number, b: number, c: number): void {
  const { tour, reduced } = state;
  const { count, cost } = reduced;
  const [a2, b2, c2] = [nodeAfter(tour, a), nodeAfter(tour, b), nodeAfter(tour, c)];
  state.cost +=
    cost[a * count + b2]! +
    cost[c * count + a2]! +
    cost[b * count + c2]! -
    cost[a * count + a2]! -
    cost[b * count + b2]! -
    cost[c * count + c2]!;
  const exchange = exchangeRuns(tour, a, b, c);
  apply(tour, exchange);
  state.made.push(exchange);
  for (const node of [a, b, c, a2, b2, c2]) {
    if (state.queued[node]) continue;
    state.queued[node] = 1;
    state.queue.push(node);
  }
}

function kicking(matrix: CostMatrix, state: State, random: Random, least: number): TourSearch {
  let bound = least;
  return {
    tour: () => fromFirst(state.tour),
    cost: () => tourCost(matrix, state.tour.nodes),
    bound: () => bound,
    improve: (kicks) => {
      if (state.cost - bound <= state.least) return false;
      for (let k = 0; k < kicks; k++) kick(state, random);
      return true;
    },
    reprice: (prices) => {
      bound -= setPrices(matrix, state, prices);
      state.cost = tourCost(matrix, state.tour.nodes);
      settle(state);
    },
  };
}

/** Writes costs and what hangs on them; the sum of all that became cheaper is how much a bound may lose. */
function setPrices(matrix: CostMatrix, state: State, prices: readonly Price[]): number {
  const { count, cost } = matrix;
  const { reduced, queue, queued } = state;
  let cheaper = 0;
  for (const { from, to, cost: now } of prices) {
    const at = from * count + to;
    const more = now - cost[at]!;
    cheaper += Math.max(0, -more);
    cost[at] = now;
    reduced.cost[at]! += more;
  }
  for (const from of new Set(prices.map((p) => p.from))) {
    state.after[from] = nearList(reduced, 'after', from);
    if (!queued[from]) queue.push(from);
    queued[from] = 1;
  }
  for (const to of new Set(prices.map((p) => p.to))) {
    state.before[to] = nearList(reduced, 'before', to);
  }
  return cheaper;
}

function fromFirst({ nodes, position }: SegmentTour): number[] {
  const at = position[0]!;
  return [...nodes.subarray(at), ...nodes.subarray(0, at)];
}

/** Two random exchanges near each other, all that then helps, and back again unless it paid. */
function kick(state: State, random: Random): void {
  const { tour, made } = state;
  const n = tour.nodes.length;
  const before = state.cost;
  made.length = 0;
  const run = Math.min(KICK_RUN, Math.floor((n - 2) / 3));
  const start = random.integer(n);
  for (let k = 0; k < 2; k++) {
    const a = (start + random.integer(run)) % n;
    const b = (a + 1 + random.integer(run)) % n;
    const c = (b + 1 + random.integer(run)) % n;
    make(state, tour.nodes[a]!, tour.nodes[b]!, tour.nodes[c]!);
  }
  settle(state);
  if (state.cost <= before + state.least) return;
  for (const exchange of made.reverse()) apply(tour, reversed(exchange));
  state.cost = before;
}
