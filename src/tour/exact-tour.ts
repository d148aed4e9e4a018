/** The cheapest closed tour of few nodes, by dynamic programming over sets of nodes. */
import { costBetween, type CostMatrix } from './model';

/** More nodes than this take too long: the work doubles with each. */
export const MOST_EXACT = 11;

/** Node 0 first. M. Held and R. M. Karp, Journal of SIAM 10, 1962. Two nodes or more. */
export function exactTour(matrix: CostMatrix): number[] {
  const n = matrix.count - 1;
  const sets = 1 << n;
  const cost = new Float64Array(n * sets).fill(Infinity);
  const before = new Int8Array(n * sets).fill(-1);
  for (let j = 0; j < n; j++) cost[(1 << j) * n + j] = costBetween(matrix, 0, j + 1);
  for (let set = 1; set < sets; set++) {
    for (let last = 0; last < n; last++) {
      const here = cost[set * n + last]!;
      if (here === Infinity) continue;
      for (let next = 0; next < n; next++) {
        if (set & (1 << next)) continue;
        const to = (set | (1 << next)) * n + next;
        const there = here + costBetween(matrix, last + 1, next + 1);
        if (there < cost[to]!) [cost[to], before[to]] = [there, last];
      }
    }
  }
  return backFrom(matrix, cost, before);
}

function backFrom(matrix: CostMatrix, cost: Float64Array, before: Int8Array): number[] {
  const n = matrix.count - 1;
  let set = (1 << n) - 1;
  let last = 0;
  const closed = (j: number): number => cost[set * n + j]! + costBetween(matrix, j + 1, 0);
  for (let j = 1; j < n; j++) if (closed(j) < closed(last)) last = j;
  const tour: number[] = [];
  while (last >= 0) {
    tour.push(last + 1);
    const from = before[set * n + last]!;
    set &= ~(1 << last);
    last = from;
  }
  return [0, ...tour.reverse()];
}
