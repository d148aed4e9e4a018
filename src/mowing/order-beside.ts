/**
 * The order of one machine where each swath is laid beside one that is already there. Start: always the
 * cheapest swath that has a driven one beside it; then exchanges of two runs that follow each other, as
 * long as one helps and leaves no swath before all of its neighbours.
 */
import { costBetween, type CostMatrix } from '../tour/model';

export interface BesideInput {
  /** Node 0 is where the machine stands, node i + 1 is swath i. */
  readonly matrix: CostMatrix;
  /** By swath, the swaths beside it. */
  readonly beside: readonly (readonly number[])[];
  /** Swaths that may come at any time: along a string, or beside what was driven before. */
  readonly free: ReadonlySet<number>;
}

/**
 * Swaths in driving order. One that nothing leads to opens new ground where nothing else is left. Begun
 * twice, with the cheapest next swath and with the next in the list as it is given; the shorter stands.
 */
export function orderBeside(input: BesideInput): number[] {
  const cheapest = settle(
    input,
    (here) => (a, b) =>
      costBetween(input.matrix, here, b + 1) < costBetween(input.matrix, here, a + 1) ? b : a,
  );
  const listed = settle(input, () => (a, b) => Math.min(a, b));
  return lengthOf(input, listed) < lengthOf(input, cheapest) ? listed : cheapest;
}

/** Of two ready swaths the one to take, from where the machine is. */
type Choice = (here: number) => (a: number, b: number) => number;

function settle(input: BesideInput, choice: Choice): number[] {
  const { order, opened } = nextByNext(input, choice);
  return exchange({ ...input, free: new Set([...input.free, ...opened]) }, order);
}

const lengthOf = ({ matrix }: BesideInput, order: readonly number[]): number =>
  order.reduce((n, i, k) => n + costBetween(matrix, k === 0 ? 0 : order[k - 1]! + 1, i + 1), 0);

function nextByNext(
  { beside, free }: BesideInput,
  choice: Choice,
): {
  readonly order: number[];
  readonly opened: readonly number[];
} {
  const order: number[] = [];
  const opened: number[] = [];
  const left = new Set(beside.keys());
  const isReady = (i: number) => free.has(i) || beside[i]!.some((j) => !left.has(j));
  while (left.size > 0) {
    const here = order.length === 0 ? 0 : order[order.length - 1]! + 1;
    const ready = [...left].filter(isReady);
    const pool = ready.length > 0 ? ready : [...left];
    const next = pool.reduce(choice(here));
    if (ready.length === 0) opened.push(next);
    order.push(next);
    left.delete(next);
  }
  return { order, opened };
}

/** Less than this, feet, is not chased: rounding. */
const LEAST_GAIN = 0.001;

function exchange(input: BesideInput, start: readonly number[]): number[] {
  const order = [...start];
  while (sweep(input, order));
  return order;
}

/** Exchanges runs next to each other, place by place, wherever it helps; whether any did. */
function sweep(input: BesideInput, order: number[]): boolean {
  let helped = false;
  for (let i = 0; i < order.length - 1; i++) {
    for (let cut = findExchange(input, order, i); cut; cut = findExchange(input, order, i)) {
      const [j, k] = cut;
      order.splice(i, k - i, ...order.slice(j, k), ...order.slice(i, j));
      helped = true;
    }
  }
  return helped;
}

/** Ends j and k of two runs, the first from i on, whose exchange helps; null: none does. */
function findExchange(
  input: BesideInput,
  order: readonly number[],
  i: number,
): readonly [number, number] | null {
  const { count: nodes, cost } = input.matrix;
  const way = (from: number | undefined, to: number | undefined): number =>
    to === undefined ? 0 : cost[(from === undefined ? 0 : from + 1) * nodes + to + 1]!;
  const count = order.length;
  for (let j = i + 1; j < count; j++) {
    const [before, first, mid, second] = [order[i - 1], order[i], order[j - 1], order[j]];
    const opened = way(before, first) + way(mid, second) - way(before, second);
    for (let k = j + 1; k <= count; k++) {
      const [last, after] = [order[k - 1], order[k]];
      const gain = opened + way(last, after) - way(last, first) - way(mid, after);
      if (gain <= LEAST_GAIN) continue;
      const runs = [...order.slice(j, k), ...order.slice(i, j)];
      if (isLaid(input, [...order.slice(0, i), ...runs, ...order.slice(k)])) return [j, k];
    }
  }
  return null;
}

/** Whether every swath that is not free comes after one beside it. */
function isLaid({ beside, free }: BesideInput, order: readonly number[]): boolean {
  const driven = new Set<number>();
  for (const i of order) {
    if (!free.has(i) && !beside[i]!.some((j) => driven.has(j))) return false;
    driven.add(i);
  }
  return true;
}
