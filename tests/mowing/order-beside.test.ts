import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../src/base/random';
import { orderBeside, type BesideInput } from '../../src/mowing/order-beside';

function permutations(items: readonly number[]): number[][] {
  if (items.length < 2) return [[...items]];
  return items.flatMap((first) =>
    permutations(items.filter((i) => i !== first)).map((rest) => [first, ...rest]),
  );
}

const isLaid = ({ beside, free }: BesideInput, order: readonly number[]): boolean =>
  order.every((i, at) => free.has(i) || order.slice(0, at).some((j) => beside[i]!.includes(j)));

const length = ({ matrix }: BesideInput, order: readonly number[]): number =>
  order.reduce((sum, i, at) => {
    const from = at === 0 ? 0 : order[at - 1]! + 1;
    return sum + matrix.cost[from * matrix.count + i + 1]!;
  }, 0);

/** Lanes in a row, some of them free, with ways of any length between. */
function lanes(count: number, seed: number): BesideInput {
  const random = seededRandom(seed);
  const cost = Float64Array.from({ length: (count + 1) ** 2 }, () => 1 + random.integer(50));
  const beside = Array.from({ length: count }, (_, i) =>
    [i - 1, i + 1].filter((j) => j >= 0 && j < count),
  );
  const free = new Set([random.integer(count), random.integer(count)]);
  return { matrix: { count: count + 1, cost }, beside, free };
}

describe('swaths beside what is there', () => {
  it('never come before their neighbours, and on the whole take little more than the shortest way', () => {
    let taken = 0;
    let least = 0;
    for (let seed = 1; seed <= 60; seed++) {
      const input = lanes(7, seed);
      const order = orderBeside(input);
      expect([...order].sort()).toEqual([0, 1, 2, 3, 4, 5, 6]);
      expect(isLaid(input, order)).toBe(true);
      const ways = permutations([0, 1, 2, 3, 4, 5, 6]).filter((o) => isLaid(input, o));
      const best = Math.min(...ways.map((o) => length(input, o)));
      expect(length(input, order)).toBeGreaterThanOrEqual(best);
      taken += length(input, order);
      least += best;
    }
    expect(taken / least).toBeLessThan(1.1);
  });

  it('open new ground only where nothing leads there', () => {
    const input = { ...lanes(6, 3), beside: [[1], [0], [3], [2], [5], [4]], free: new Set([0]) };
    const order = orderBeside(input);
    expect(order.indexOf(1)).toBeGreaterThan(order.indexOf(0));
    expect([...order].sort()).toEqual([0, 1, 2, 3, 4, 5]);
  });
});
