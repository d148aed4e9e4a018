/** The order in which one machine drives the swaths of one group. Directions are given, never turned. */
import type { Feet } from '../base/units';
import { shortestTurn } from './dubins';
import type { Pose } from './drive';
import type { Swath } from './swath-model';

/** Ends of a swath as driven. */
export interface SwathEnds {
  readonly swath: Swath;
  readonly entry: Pose;
  readonly exit: Pose;
}

/** Whether the straight line between two places crosses forbidden ground. */
export type Blocked = (from: Pose, to: Pose) => boolean;

/** Extra way round when the straight line is blocked, as a share of it; a rough guess. */
const WAY_ROUND = 0.5;
/** Longest run of swaths moved at once, and sweeps of improvement at most. */
const LONGEST_MOVE = 40;
const MOST_SWEEPS = 30;
/** A move must gain this much, feet. */
const GAIN = 0.01;

/**
 * The swaths in driving order, starting from `start`: the better of two openings (bands interleaved:
 * the i-th pass of one band, then the i-th of the next band of the other lay; and nearest neighbour),
 * each improved by moving runs of swaths without reversing them (Or-opt, I. Or 1976).
 */
export function orderSwaths(
  ends: readonly SwathEnds[],
  start: Pose,
  radius: Feet,
  blocked: Blocked,
): SwathEnds[] {
  if (ends.length < 2) return [...ends];
  const cost = costMatrix(ends, start, radius, blocked);
  const openings = [interleaveBands(ends), nearestNext(ends.length, cost)];
  const improved = openings.map((order) => improve(order, cost));
  const best = improved.reduce((a, b) => (tourCost(b, cost) < tourCost(a, cost) ? b : a));
  return best.map((i) => ends[i]!);
}

interface Costs {
  readonly n: number;
  /** From swath i's exit to swath j's entry at i·n + j; row n is from the start. */
  readonly at: Float64Array;
}

function costMatrix(
  ends: readonly SwathEnds[],
  start: Pose,
  radius: Feet,
  blocked: Blocked,
): Costs {
  const n = ends.length;
  const at = new Float64Array((n + 1) * n);
  for (let i = 0; i <= n; i++) {
    const from = i < n ? ends[i]!.exit : start;
    for (let j = 0; j < n; j++) {
      at[i * n + j] = i === j ? Infinity : wayLength(from, ends[j]!.entry, radius, blocked);
    }
  }
  return { n, at };
}

function wayLength(from: Pose, to: Pose, radius: Feet, blocked: Blocked): number {
  const apart = Math.hypot(to.x - from.x, to.y - from.y);
  const far = apart > 8 * radius;
  const extra = far && blocked(from, to) ? WAY_ROUND * apart : 0;
  return shortestTurn(from, to, radius).lengthFt + extra;
}

/** The i-th pass of a band, then the i-th of the next band, band pair by band pair. */
function interleaveBands(ends: readonly SwathEnds[]): number[] {
  const bands = new Map<number, number[]>();
  ends.forEach((e, i) => {
    const band = e.swath.band ?? 0;
    bands.set(band, [...(bands.get(band) ?? []), i]);
  });
  const keys = [...bands.keys()].sort((a, b) => a - b);
  const order: number[] = [];
  for (let k = 0; k < keys.length; k += 2) {
    const first = bands.get(keys[k]!)!;
    const second = k + 1 < keys.length ? bands.get(keys[k + 1]!)! : [];
    for (let i = 0; i < Math.max(first.length, second.length); i++) {
      if (i < first.length) order.push(first[i]!);
      if (i < second.length) order.push(second[i]!);
    }
  }
  return order;
}

function nearestNext(n: number, cost: Costs): number[] {
  const order: number[] = [];
  const used = new Uint8Array(n);
  for (let from = n; order.length < n; from = order[order.length - 1]!) {
    let best = -1;
    for (let j = 0; j < n; j++) {
      if (!used[j] && (best < 0 || cost.at[from * n + j]! < cost.at[from * n + best]!)) best = j;
    }
    used[best] = 1;
    order.push(best);
  }
  return order;
}

function tourCost(order: readonly number[], cost: Costs): number {
  let sum = 0;
  let from = cost.n;
  for (const i of order) {
    sum += cost.at[from * cost.n + i]!;
    from = i;
  }
  return sum;
}

function improve(opening: readonly number[], cost: Costs): number[] {
  const order = [...opening];
  for (let sweep = 0; sweep < MOST_SWEEPS; sweep++) if (!sweepMoves(order, cost)) break;
  return order;
}

/** From the i-th swath in the order to the j-th; −1 is the start, past the end costs nothing. */
function stepCost(order: readonly number[], cost: Costs, i: number, j: number): number {
  if (j >= cost.n) return 0;
  return cost.at[(i < 0 ? cost.n : order[i]!) * cost.n + order[j]!]!;
}

/** One sweep over every run; the best place for each is taken at once. True when any run moved. */
function sweepMoves(order: number[], cost: Costs): boolean {
  let moved = false;
  for (let from = 0; from < cost.n; from++) {
    for (let to = from; to < Math.min(cost.n, from + LONGEST_MOVE); to++) {
      const place = bestPlace(order, cost, from, to);
      if (place === null) continue;
      moveRun(order, from, to, place);
      moved = true;
    }
  }
  return moved;
}

/** The gap (before index `k`) where the run from–to costs least, if that beats leaving it. */
function bestPlace(order: readonly number[], cost: Costs, from: number, to: number): number | null {
  const saved =
    stepCost(order, cost, from - 1, from) +
    stepCost(order, cost, to, to + 1) -
    stepCost(order, cost, from - 1, to + 1);
  if (saved <= GAIN) return null;
  let best: number | null = null;
  let gain = GAIN;
  for (let k = 0; k <= cost.n; k++) {
    if (k >= from && k <= to + 1) continue;
    const after = k < cost.n ? stepCost(order, cost, to, k) : 0;
    const added = stepCost(order, cost, k - 1, from) + after - stepCost(order, cost, k - 1, k);
    if (saved - added > gain) {
      gain = saved - added;
      best = k;
    }
  }
  return best;
}

function moveRun(order: number[], from: number, to: number, place: number): void {
  const run = order.splice(from, to - from + 1);
  order.splice(place > to ? place - run.length : place, 0, ...run);
}
