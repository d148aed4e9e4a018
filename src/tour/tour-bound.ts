/**
 * A lower bound of all tours, sharper than the assignment's: every tour is a spanning arborescence from
 * a root and one way back into the root in which every node has one successor. That last rule is
 * priced, and the prices are improved step by step (M. Held and R. M. Karp, Operations Research 18,
 * 1970; for directed tours the 1-arborescence).
 */
import { cheapestArborescence } from './arborescence';
import { cheapestAssignment } from './assignment';
import type { CostMatrix } from './model';

/** The step is halved after this many rounds without a better bound. */
const PATIENCE = 8;

export interface TourBound {
  /** No tour costs less. */
  readonly value: () => number;
  /** Improves the prices for this many rounds of O(n²) and more; false when nothing is left to gain. */
  readonly improve: (rounds: number) => boolean;
}

/** `known`: the cost of some tour, as good as may be. */
export function boundTour(matrix: CostMatrix, known: number): TourBound {
  if (matrix.count < 3) return { value: () => known, improve: () => false };
  const prices = cheapestAssignment(matrix);
  const price = prices.row.map((row) => -row);
  let best = prices.cost;
  let reach = 2;
  let idle = 0;
  const round = (): void => {
    const { value, successors } = pricedBound(matrix, price);
    idle = value > best ? 0 : idle + 1;
    best = Math.max(best, value);
    if (idle >= PATIENCE) [reach, idle] = [reach / 2, 0];
    const off = successors.reduce((sum, s) => sum + (s - 1) ** 2, 0);
    if (off === 0) reach = 0;
    const step = off === 0 ? 0 : (reach * Math.max(0, known - value)) / off;
    successors.forEach((s, i) => (price[i]! += step * (s - 1)));
  };
  return {
    value: () => Math.min(known, best),
    improve: (rounds) => {
      for (let k = 0; k < rounds && reach > LEAST_REACH; k++) round();
      return reach > LEAST_REACH && best < known;
    },
  };
}

/** Steps smaller than this share of the gap move the bound no more. */
const LEAST_REACH = 0.001;

const ROOT = 0;

/** The cheapest 1-arborescence when a successor of each node costs its price more, less all prices. */
function pricedBound({ count, cost }: CostMatrix, price: Float64Array) {
  const priced = cost.slice();
  for (let i = 0; i < count; i++) {
    for (let j = 0; j < count; j++) priced[i * count + j]! += price[i]!;
    priced[i * count + i] = Infinity;
  }
  const before = cheapestArborescence({ count, cost: priced }, ROOT);
  let back = -1;
  for (let i = 0; i < count; i++) {
    if (i !== ROOT && (back < 0 || priced[i * count + ROOT]! < priced[back * count + ROOT]!)) {
      back = i;
    }
  }
  before[ROOT] = back;
  const successors = new Int32Array(count);
  let value = -price.reduce((sum, p) => sum + p, 0);
  before.forEach((i, j) => {
    successors[i]!++;
    value += priced[i * count + j]!;
  });
  return { value, successors };
}
