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

/** Swaths in driving order. One that nothing leads to opens new ground where nothing else is left. */
export function orderBeside(input: BesideInput): number[] {
  const { order, opened } = cheapestNext(input);
  return exchange({ ...input, free: new Set([...input.free, ...opened]) }, order);
}

function cheapestNext({ matrix, beside, free }: BesideInput): {
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
    const next = pool.reduce((a, b) =>
      costBetween(matrix, here, b + 1) < costBetween(matrix, here, a + 1) ? b : a,
    );
    if (ready.length === 0) opened.push(next);
    order.push(next);
    left.delete(next);
  }
  return { order, opened };
}

/** Less than this, feet, is not chased: rounding. */
const LEAST_GAIN = 0.001;

function exchange(input: BesideInput, start: readonly number[]): number[] {
  let order = [...start];
  for (let better = firstBetter(input, order); better; better = firstBetter(input, order)) {
    order = better;
  }
  return order;
}

/** The order with two runs next to each other exchanged, the first such that helps; null: none does. */
function firstBetter(input: BesideInput, order: readonly number[]): number[] | null {
  const { matrix } = input;
  const way = (from: number | undefined, to: number | undefined): number =>
    to === undefined ? 0 : costBetween(matrix, from === undefined ? 0 : from + 1, to + 1);
  const count = order.length;
  for (let i = 0; i < count - 1; i++) {
    for (let j = i + 1; j < count; j++) {
      const [before, first, mid, second] = [order[i - 1], order[i], order[j - 1], order[j]];
      const opened = way(before, first) + way(mid, second) - way(before, second);
      for (let k = j + 1; k <= count; k++) {
        const [last, after] = [order[k - 1], order[k]];
        const gain = opened + way(last, after) - way(last, first) - way(mid, after);
        if (gain <= LEAST_GAIN) continue;
        const tried = [
          ...order.slice(0, i),
          ...order.slice(j, k),
          ...order.slice(i, j),
          ...order.slice(k),
        ];
        if (isLaid(input, tried)) return tried;
      }
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
