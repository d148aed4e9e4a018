/**
 * A short walk through places from a given start: nearest neighbour, then 2-opt and moves of up to
 * three places with lists of near ones (Bentley 1992), then small seeded double bridges that are kept
 * when they help (Martin, Otto & Felten 1991).
 */
import { seededRandom, type Random } from '../base/random';

/** Costs in seconds. */
export interface WalkTask {
  readonly count: number;
  /** From the start to each place. */
  readonly fromStart: Float64Array;
  /** Between places i and j at i × count + j; the same both ways. */
  readonly between: Float64Array;
  /** From each place to where the walk must end; absent: it ends where it likes. */
  readonly toEnd?: Float64Array;
  /** Places that must come before each one; absent: no such rule. */
  readonly before?: readonly (readonly number[])[];
  /** Of these, unless there are none, one must come before each place; absent: no such rule. */
  readonly oneBefore?: readonly (readonly number[])[];
}

/** Near places that are tried beside each one. */
const NEAR = 10;
/** Longest run of places that is moved as one. */
const LONGEST_RUN = 3;
/** Less than this is not chased, seconds: a step of two inches. */
const LEAST_GAIN = 0.04;
/** A double bridge spans at most three times this many places. */
const BRIDGE = 30;

/** The walk as an array: start at 0, then the places in order. */
interface Walk {
  readonly task: WalkTask;
  readonly tour: Int32Array;
  readonly position: Int32Array;
  readonly near: readonly Int32Array[];
}

/** The cost of a whole order of places. */
export function walkCost(task: WalkTask, order: readonly number[]): number {
  const last = order[order.length - 1];
  const end = last === undefined ? 0 : (task.toEnd?.[last] ?? 0);
  return order.reduce((sum, place, i) => {
    const before = order[i - 1];
    const step = before === undefined ? task.fromStart : task.between;
    return sum + step[before === undefined ? place : before * task.count + place]!;
  }, end);
}

/** An order of all places; `kicks` double bridges are tried. Equal input gives an equal order. */
export function shortestWalk(task: WalkTask, kicks: number): number[] {
  const { before, oneBefore, ...free } = task;
  const near = Array.from({ length: task.count }, (_, i) => nearOf(task, i));
  if (!before && !oneBefore) return improve(task, near, nearestFirst(task), kicks);
  const unbound = improve(free, near, nearestFirst(task), kicks);
  const starts = [unbound, [...unbound].reverse()].map((order) => obey(order, task));
  const walks = starts.map((order) => improve(task, near, order, kicks));
  return walks.reduce((a, b) => (walkCost(task, b) < walkCost(task, a) ? b : a));
}

function improve(
  task: WalkTask,
  near: Walk['near'],
  order: readonly number[],
  kicks: number,
): number[] {
  if (task.count === 0) return [];
  const walk = startWalk(task, near, order);
  settle(walk, [...task.fromStart.keys()]);
  const random = seededRandom(task.count);
  for (let k = 0; k < kicks && task.count >= 4; k++) kick(walk, random);
  return [...walk.tour.subarray(1)];
}

/** The same order with every place held back until those that it needs have come. */
function obey(order: readonly number[], task: WalkTask): number[] {
  const done = new Set<number>();
  let left = [...order];
  while (left.length > 0) {
    const next = left.find((place) => mayCome(task, place, (p) => done.has(p)));
    if (next === undefined) break;
    done.add(next);
    left = left.filter((place) => place !== next);
  }
  return [...done, ...left];
}

/** Whether a place has what it needs before it. */
function mayCome(
  { before, oneBefore }: WalkTask,
  place: number,
  isDone: (p: number) => boolean,
): boolean {
  const one = oneBefore?.[place] ?? [];
  return (before?.[place] ?? []).every(isDone) && (one.length === 0 || one.some(isDone));
}

/** The start is numbered `count`. */
function startWalk(task: WalkTask, near: Walk['near'], order: readonly number[]): Walk {
  const tour = Int32Array.from([task.count, ...order]);
  const position = new Int32Array(task.count + 1);
  tour.forEach((place, i) => (position[place] = i));
  return { task, tour, position, near };
}

function nearestFirst(task: WalkTask): number[] {
  const left = new Set(task.fromStart.keys());
  const order: number[] = [];
  while (left.size > 0) {
    const here = order[order.length - 1];
    let best: number | null = null;
    let least = Infinity;
    for (const place of left) {
      const cost =
        here === undefined ? task.fromStart[place]! : task.between[here * task.count + place]!;
      // Where nothing is in reach, the first one left comes next.
      if (best !== null && !(cost < least)) continue;
      least = cost;
      best = place;
    }
    if (best === null) break;
    order.push(best);
    left.delete(best);
  }
  return order;
}

/** The nearest others, the nearest first; between equals the lower number. */
function nearOf({ count, between }: WalkTask, i: number): Int32Array {
  const near = new Int32Array(Math.min(NEAR, count - 1));
  let held = 0;
  for (let j = 0; j < count; j++) {
    if (j === i) continue;
    const away = between[i * count + j]!;
    if (held === near.length && away >= between[i * count + near[held - 1]!]!) continue;
    let k = held < near.length ? held++ : held - 1;
    for (; k > 0 && away < between[i * count + near[k - 1]!]!; k--) near[k] = near[k - 1]!;
    near[k] = j;
  }
  return near;
}

/** Cost between the places at two positions; one past the last is where the walk ends. */
function cost({ task, tour }: Walk, i: number, j: number): number {
  const end = tour.length;
  if (i >= end || j >= end) return task.toEnd?.[tour[Math.min(i, j)]!] ?? 0;
  const [a, b] = [tour[i]!, tour[j]!];
  if (a === task.count) return task.fromStart[b]!;
  return b === task.count ? task.fromStart[a]! : task.between[a * task.count + b]!;
}

/** Improves round the queued places until nothing there helps. */
function settle(walk: Walk, queue: number[]): void {
  const queued = new Uint8Array(walk.task.count);
  for (const place of queue) queued[place] = 1;
  for (let head = 0; head < queue.length; head++) {
    const place = queue[head]!;
    queued[place] = 0;
    const touched = reverseNear(walk, place) ?? moveNear(walk, place);
    if (!touched) continue;
    touched.push(place);
    for (const t of touched) {
      if (t >= walk.task.count || queued[t] === 1) continue;
      queued[t] = 1;
      queue.push(t);
    }
  }
}

/** The places at the given positions, the start left out. */
function placesAt({ tour, task }: Walk, ...positions: number[]): number[] {
  const places: number[] = [];
  for (const p of positions) {
    if (p < tour.length && tour[p] !== task.count) places.push(tour[p]!);
  }
  return places;
}

/** A reversal that brings a near place beside this one; the places at its seams, or null. */
function reverseNear(walk: Walk, place: number): number[] | null {
  const { position, near } = walk;
  const i = position[place]!;
  const longest = Math.max(cost(walk, i - 1, i), cost(walk, i, i + 1));
  for (const other of near[place]!) {
    const j = position[other]!;
    // Ahead: reverse so that `other` follows; behind: so that it comes before.
    if (apart(walk, place, other) >= longest) return null;
    for (let ahead = 1; ahead >= 0; ahead--) {
      const from = Math.min(i, j) + ahead;
      const to = Math.max(i, j) - 1 + ahead;
      if (from < 1 || to <= from) continue;
      const gain =
        cost(walk, from - 1, from) +
        cost(walk, to, to + 1) -
        cost(walk, from - 1, to) -
        cost(walk, from, to + 1);
      // Where nothing can be reached the gain is not a number.
      if (!(gain > LEAST_GAIN)) continue;
      reverse(walk, from, to);
      if (isAllowed(walk, from, to)) return placesAt(walk, from - 1, from, to, to + 1);
      reverse(walk, from, to);
    }
  }
  return null;
}

function reverse({ tour, position }: Walk, from: number, to: number): void {
  for (let i = from, j = to; i < j; i++, j--) {
    const held = tour[i]!;
    tour[i] = tour[j]!;
    tour[j] = held;
  }
  for (let i = from; i <= to; i++) position[tour[i]!] = i;
}

function isAllowed({ task, tour, position }: Walk, from: number, to: number): boolean {
  const { before, oneBefore } = task;
  if (!before && !oneBefore) return true;
  for (let i = from; i <= to; i++) {
    const needs = before?.[tour[i]!];
    if (needs && lastOf(needs, position) > i) return false;
    const one = oneBefore?.[tour[i]!];
    if (one && one.length > 0 && firstOf(one, position) > i) return false;
  }
  return true;
}

/** Loops rather than closures: this is asked for every move that is tried. */
function lastOf(places: readonly number[], position: Int32Array): number {
  let last = -1;
  for (const p of places) if (position[p]! > last) last = position[p]!;
  return last;
}

function firstOf(places: readonly number[], position: Int32Array): number {
  let first = Infinity;
  for (const p of places) if (position[p]! < first) first = position[p]!;
  return first;
}

/** A run of places from this one, moved beside a near place; the places at its seams, or null. */
function moveNear(walk: Walk, place: number): number[] | null {
  const i = walk.position[place]!;
  for (let length = 1; length <= LONGEST_RUN; length++) {
    for (const from of length === 1 ? [i] : [i, i - length + 1]) {
      const to = from + length - 1;
      if (from < 1 || to >= walk.tour.length) continue;
      const touched = moveRun(walk, from, to, place);
      if (touched) return touched;
    }
  }
  return null;
}

function moveRun(walk: Walk, from: number, to: number, place: number): number[] | null {
  const saved = cost(walk, from - 1, from) + cost(walk, to, to + 1) - cost(walk, from - 1, to + 1);
  if (!(saved > LEAST_GAIN)) return null;
  const near = walk.near[place]!;
  for (let k = 0; k < near.length; k++) {
    const j = walk.position[near[k]!]!;
    if (apart(walk, place, near[k]!) >= saved) return null;
    if (j >= from && j <= to) continue;
    // Between the near place and what follows it, and between what comes before it and the near place.
    for (let gap = j; gap >= j - 1; gap--) {
      if (gap < 0 || (gap >= from - 1 && gap <= to)) continue;
      const kept = saved + cost(walk, gap, gap + 1) - LEAST_GAIN;
      const ahead = cost(walk, gap, from) + cost(walk, to, gap + 1) < kept;
      if (!ahead && !(cost(walk, gap, to) + cost(walk, from, gap + 1) < kept)) continue;
      const seams = placesAt(walk, from - 1, from, to, to + 1, gap, gap + 1);
      if (shift(walk, from, to, gap, !ahead)) return seams;
    }
  }
  return null;
}

const apart = ({ task }: Walk, place: number, other: number): number =>
  task.between[place * task.count + other]!;

/** Moves positions from..to behind `gap` by reversals; false, and nothing moved, when not allowed. */
function shift(walk: Walk, from: number, to: number, gap: number, turned: boolean): boolean {
  const length = to - from + 1;
  const [low, high] = gap > to ? [from, gap] : [gap + 1, to];
  const saved = walk.tour.slice(low, high + 1);
  reverse(walk, low, high);
  const [runFrom, restFrom] = gap > to ? [high - length + 1, low] : [low, low + length];
  const restTo = gap > to ? high - length : high;
  reverse(walk, restFrom, restTo);
  if (!turned) reverse(walk, runFrom, runFrom + length - 1);
  if (isAllowed(walk, low, high)) return true;
  saved.forEach((place, i) => {
    walk.tour[low + i] = place;
    walk.position[place] = low + i;
  });
  return false;
}

/** Two neighbouring stretches change places; what does not pay off is undone. */
function kick(walk: Walk, random: Random): void {
  const { tour, position, task } = walk;
  const before = tour.slice();
  const cost0 = tourCost(walk);
  const last = tour.length - 1;
  const from = 1 + random.integer(last);
  const middle = Math.min(last, from + 1 + random.integer(BRIDGE));
  const to = Math.min(last, middle + random.integer(BRIDGE));
  if (middle <= from || !shift(walk, from, middle - 1, to, false)) return;
  settle(walk, placesAt(walk, from - 1, from, from + to - middle, from + to - middle + 1, to));
  if (to < last) settle(walk, placesAt(walk, to, to + 1));
  if (tourCost(walk) <= cost0 - LEAST_GAIN) return;
  tour.set(before);
  for (let i = 0; i <= task.count; i++) position[tour[i]!] = i;
}

function tourCost(walk: Walk): number {
  let sum = 0;
  for (let i = 0; i < walk.tour.length; i++) sum += cost(walk, i, i + 1);
  return sum;
}
