/** One tour from the cycles of an assignment (R. M. Karp, SIAM Journal on Computing 8, 1979). */
import { costBetween, type CostMatrix } from './model';

/** Joins cycles, the two largest first, each time by the cheapest exchange of two successors. */
export function patchCycles(matrix: CostMatrix, next: Int32Array): number[] {
  const after = next.slice();
  const cycles = cyclesOf(after).sort((a, b) => b.length - a.length || a[0]! - b[0]!);
  let whole = cycles[0] ?? [];
  for (const cycle of cycles.slice(1)) {
    const { a, b } = cheapestExchange(matrix, after, whole, cycle);
    [after[a], after[b]] = [after[b]!, after[a]!];
    whole = [...whole, ...cycle];
  }
  return cyclesOf(after)[0]!;
}

function cyclesOf(next: Int32Array): number[][] {
  const seen = new Uint8Array(next.length);
  const cycles: number[][] = [];
  for (let start = 0; start < next.length; start++) {
    const cycle: number[] = [];
    for (let i = start; !seen[i]; i = next[i]!) {
      seen[i] = 1;
      cycle.push(i);
    }
    if (cycle.length > 0) cycles.push(cycle);
  }
  return cycles;
}

function cheapestExchange(
  matrix: CostMatrix,
  next: Int32Array,
  left: readonly number[],
  right: readonly number[],
): { a: number; b: number } {
  let best = { a: left[0]!, b: right[0]! };
  let least = Infinity;
  for (const a of left) {
    for (const b of right) {
      const more =
        costBetween(matrix, a, next[b]!) +
        costBetween(matrix, b, next[a]!) -
        costBetween(matrix, a, next[a]!) -
        costBetween(matrix, b, next[b]!);
      if (more < least) [least, best] = [more, { a, b }];
    }
  }
  return best;
}
