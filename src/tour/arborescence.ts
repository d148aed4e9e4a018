/**
 * The cheapest spanning arborescence of a complete directed graph from a root: every other node has one
 * predecessor and is reached from the root (Y. J. Chu and T. H. Liu 1965, J. Edmonds 1967).
 */
import type { CostMatrix } from './model';

/** The node before each; the root has −1. Costs may have any sign; two nodes or more. */
export function cheapestArborescence({ count, cost }: CostMatrix, root: number): Int32Array {
  const before = new Int32Array(count).fill(-1);
  for (let j = 0; j < count; j++) {
    if (j === root) continue;
    let best = -1;
    for (let i = 0; i < count; i++) {
      if (i !== j && (best < 0 || cost[i * count + j]! < cost[best * count + j]!)) best = i;
    }
    before[j] = best;
  }
  const cycles = cyclesOf(before);
  return cycles.length === 0 ? before : openCycles({ count, cost }, root, before, cycles);
}

/** Nodes that lie on a cycle of predecessors, a list for each. */
function cyclesOf(before: Int32Array): number[][] {
  const seen = new Int32Array(before.length).fill(-1);
  const cycles: number[][] = [];
  for (let start = 0; start < before.length; start++) {
    let i = start;
    while (i >= 0 && seen[i]! < 0) {
      seen[i] = start;
      i = before[i]!;
    }
    if (i < 0 || seen[i] !== start) continue;
    const cycle = [i];
    for (let k = before[i]!; k !== i; k = before[k]!) cycle.push(k);
    cycles.push(cycle);
  }
  return cycles;
}

/** All cycles shrunk to a node each, the smaller graph solved, and each cycle opened where it is entered. */
function openCycles(
  { count, cost }: CostMatrix,
  root: number,
  before: Int32Array,
  cycles: readonly (readonly number[])[],
): Int32Array {
  const group = new Int32Array(count).fill(-1);
  cycles.forEach((cycle, k) => cycle.forEach((i) => (group[i] = k)));
  let groups = cycles.length;
  for (let i = 0; i < count; i++) if (group[i]! < 0) group[i] = groups++;
  const inCycle = (j: number): boolean => group[j]! < cycles.length;
  const small = new Float64Array(groups * groups).fill(Infinity);
  const from = new Int32Array(groups * groups).fill(-1);
  const to = new Int32Array(groups * groups).fill(-1);
  for (let j = 0; j < count; j++) {
    if (j === root) continue;
    const own = inCycle(j) ? cost[before[j]! * count + j]! : 0;
    for (let i = 0; i < count; i++) {
      if (group[i] === group[j]) continue;
      const at = group[i]! * groups + group[j]!;
      const extra = cost[i * count + j]! - own;
      if (extra < small[at]!) [small[at], from[at], to[at]] = [extra, i, j];
    }
  }
  const outer = cheapestArborescence({ count: groups, cost: small }, group[root]!);
  const opened = before.slice();
  outer.forEach((g, k) => {
    if (g >= 0) opened[to[g * groups + k]!] = from[g * groups + k]!;
  });
  return opened;
}
