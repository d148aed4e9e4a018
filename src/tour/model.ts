/** Closed tours through nodes whose costs differ by direction: the asymmetric travelling-salesman problem. */

/** Costs of going from one node to another. */
export interface CostMatrix {
  /** Nodes, numbered from 0. */
  readonly count: number;
  /** From node i to node j at i × count + j, finite and not negative; the diagonal is not used. */
  readonly cost: Float64Array;
}

export const costBetween = ({ count, cost }: CostMatrix, from: number, to: number): number =>
  cost[from * count + to]!;

/** Cost of a closed tour, the way back to its first node included. */
export function tourCost(matrix: CostMatrix, tour: ArrayLike<number>): number {
  let sum = 0;
  for (let i = 0; i < tour.length; i++) {
    sum += costBetween(matrix, tour[i]!, tour[i + 1 < tour.length ? i + 1 : 0]!);
  }
  return sum;
}
