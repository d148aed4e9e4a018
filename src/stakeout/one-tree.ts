/**
 * A lower bound for a walk from a given start through all places, ending anywhere: Held & Karp's
 * one-tree with subgradient steps (1970, 1971). Any order costs at least this much.
 */
import type { WalkTask } from './walk-order';

const STEPS = 120;

interface Tree {
  readonly value: number;
  readonly degree: Int32Array;
}

/** Seconds; 0 without places. The start is one place, and a free end closes the walk at no cost. */
export function walkBound(task: WalkTask, upper: number): number {
  const n = task.count;
  if (n === 0) return 0;
  // Place n is the start: it is left once, and every other place but the last twice.
  const weight = new Float64Array(n + 1);
  let best = -Infinity;
  let scale = 2;
  let idle = 0;
  for (let k = 0; k < STEPS; k++) {
    const { value, degree } = spanningTree(task, weight);
    if (value > best) best = value;
    else if (++idle % 6 === 0) scale /= 2;
    const off = degree.reduce((sum, d) => sum + d * d, 0);
    if (off === 0) break;
    const step = (scale * Math.max(upper - value, upper / 1000)) / off;
    for (let i = 0; i <= n; i++) weight[i]! += step * degree[i]!;
  }
  return Math.max(0, best);
}

/**
 * The least tree over start and places with the weights added at both ends of every edge, and the
 * closing edges start–end and end–cheapest place at no cost but theirs; `degree` less two for each.
 */
function spanningTree(task: WalkTask, weight: Float64Array): Tree {
  const n = task.count;
  const degree = new Int32Array(n + 1).fill(-2);
  const reach = new Float64Array(n + 1).fill(Infinity);
  const parent = new Int32Array(n + 1).fill(-1);
  const done = new Uint8Array(n + 1);
  let value = 0;
  let here = n;
  done[n] = 1;
  for (let k = 0; k < n; k++) {
    let next = -1;
    for (let j = 0; j < n; j++) {
      if (done[j] === 1) continue;
      const edge = here === n ? task.fromStart[j]! : task.between[here * n + j]!;
      const c = edge + weight[here]! + weight[j]!;
      if (c < reach[j]!) {
        reach[j] = c;
        parent[j] = here;
      }
      if (next < 0 || reach[j]! < reach[next]!) next = j;
    }
    value += reach[next]!;
    degree[next]!++;
    degree[parent[next]!]!++;
    done[next] = 1;
    here = next;
  }
  let last = 0;
  for (let j = 1; j < n; j++) if (weight[j]! < weight[last]!) last = j;
  degree[last]!++;
  degree[n]!++;
  value += weight[last]! + weight[n]!;
  for (let i = 0; i <= n; i++) value -= 2 * weight[i]!;
  return { value, degree };
}
