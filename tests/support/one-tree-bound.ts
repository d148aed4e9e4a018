/**
 * Lower bounds for walks, by code that shares nothing with the engine. Held & Karp 1970/1971: a walk
 * from a start through all places is a spanning tree in which no place has more than two neighbours,
 * so weights on places may be moved until the least tree is nearly a walk.
 */

/** Seconds between places; index 0 is the start. */
export type Costs = readonly (readonly number[])[];

/** Below every walk that begins at 0 and visits all others, ending anywhere. */
export function oneTreeBound(costs: Costs, steps = 400): number {
  const n = costs.length;
  if (n < 2) return 0;
  const weight = new Array<number>(n).fill(0);
  const around = nearestFirst(costs);
  let best = 0;
  for (let k = 0; k < steps; k++) {
    const { cost, degree } = leastTree(costs, weight);
    // A walk has 2 at every place, but 1 at the start and 1 at its last: the lightest pays for that.
    const last = weight.reduce((low, w, i) => (i > 0 && w < weight[low]! ? i : low), 1);
    const excess = degree.map((d, i) => d + Number(i === 0) + Number(i === last) - 2);
    const value = cost + weight[0]! + weight[last]! - 2 * weight.reduce((sum, w) => sum + w, 0);
    best = Math.max(best, value);
    const square = excess.reduce((sum, d) => sum + d * d, 0);
    if (square === 0) break;
    const step = (2 * 0.98 ** k * Math.max(around - value, around / 500)) / square;
    excess.forEach((d, i) => (weight[i]! += step * d));
  }
  return best;
}

/** The least tree of the weighted costs, grown from the start (Prim's rule). */
function leastTree(costs: Costs, weight: readonly number[]) {
  const degree = costs.map(() => 0);
  const joins = costs.map((_, i) => ({ to: 0, cost: costs[0]![i]! + weight[0]! + weight[i]! }));
  const outside = new Set([...costs.keys()].slice(1));
  let cost = 0;
  while (outside.size > 0) {
    let next = -1;
    for (const i of outside) if (next < 0 || joins[i]!.cost < joins[next]!.cost) next = i;
    outside.delete(next);
    cost += joins[next]!.cost;
    degree[next]!++;
    degree[joins[next]!.to]!++;
    for (const i of outside) {
      const by = costs[next]![i]! + weight[next]! + weight[i]!;
      if (by < joins[i]!.cost) joins[i] = { to: next, cost: by };
    }
  }
  return { cost, degree };
}

/** Cost of always going to the nearest place left. */
export function nearestFirst(costs: Costs): number {
  const left = new Set(costs.keys());
  left.delete(0);
  let here = 0;
  let sum = 0;
  while (left.size > 0) {
    const next = [...left].reduce((a, b) => (costs[here]![b]! < costs[here]![a]! ? b : a));
    sum += costs[here]![next]!;
    here = next;
    left.delete(next);
  }
  return sum;
}

/** The cheapest of all walks from 0, by trying every order. */
export function cheapestWalk(costs: Costs): number {
  let best = Infinity;
  const visit = (here: number, left: readonly number[], sum: number): void => {
    if (sum >= best) return;
    if (left.length === 0) best = sum;
    for (const next of left)
      visit(
        next,
        left.filter((i) => i !== next),
        sum + costs[here]![next]!,
      );
  };
  visit(0, [...costs.keys()].slice(1), 0);
  return best;
}
