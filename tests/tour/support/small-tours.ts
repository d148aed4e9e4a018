/** Exact answers for small matrices by trying everything, and matrices drawn by seed. */
import { seededRandom } from '../../../src/base/random';
import type { CostMatrix } from '../../../src/tour/model';

/** The cheapest closed tour by dynamic programming over subsets (M. Held and R. M. Karp 1962). */
export function exactTourCost({ count, cost }: CostMatrix): number {
  if (count < 2) return 0;
  const n = count - 1;
  const best = new Float64Array(n * 2 ** n).fill(Infinity);
  for (let j = 0; j < n; j++) best[(1 << j) * n + j] = cost[j + 1]!;
  for (let set = 1; set < 2 ** n; set++) {
    for (let last = 0; last < n; last++) {
      const here = best[set * n + last]!;
      if (here === Infinity) continue;
      for (let next = 0; next < n; next++) {
        if (set & (1 << next)) continue;
        const to = (set | (1 << next)) * n + next;
        best[to] = Math.min(best[to]!, here + cost[(last + 1) * count + next + 1]!);
      }
    }
  }
  const all = 2 ** n - 1;
  return Math.min(
    ...Array.from({ length: n }, (_, j) => best[all * n + j]! + cost[(j + 1) * count]!),
  );
}

/** Every order of the items. */
export function* orders(items: readonly number[]): Generator<number[]> {
  if (items.length < 2) yield [...items];
  for (const first of items) {
    for (const rest of orders(items.filter((i) => i !== first))) yield [first, ...rest];
  }
}

/** Costs that have nothing to do with each other, whole numbers so that many are equal. */
export function randomMatrix(count: number, seed: number): CostMatrix {
  const random = seededRandom(seed);
  return {
    count,
    cost: Float64Array.from({ length: count * count }, () => random.integer(40)),
  };
}

/**
 * Passes up and down a field, each driven one way, and a gate: from the end of one to the start of the
 * next straight across, and half a turn more where the machine must turn round.
 */
export function passMatrix(passes: number, seed: number): CostMatrix {
  const random = seededRandom(seed);
  const ends = Array.from({ length: passes }, () => {
    const x = 200 * random.uniform();
    const [near, far] = [20 * random.uniform(), 150 + 100 * random.uniform()];
    const out = random.uniform() < 0.5;
    return { x, start: out ? near : far, end: out ? far : near };
  });
  const all = [{ x: 0, start: 0, end: 0 }, ...ends];
  const turn = 25;
  const cost = all.flatMap((a) =>
    all.map((b) => Math.hypot(a.x - b.x, a.end - b.start) + (a === b ? 0 : turn)),
  );
  return { count: all.length, cost: Float64Array.from(cost) };
}
