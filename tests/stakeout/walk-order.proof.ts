import { describe, expect, it } from 'vitest';
import { shortestWalk, walkCost } from '../../src/stakeout/walk-order';
import { cheapestWalk, oneTreeBound, nearestFirst } from '../support/one-tree-bound';
import { drawnCosts, taskOf } from './support/walks';

describe('walks at full size', () => {
  const cases = [60, 100, 150, 200].flatMap((n) => [1, 2, 4].map((g) => [n, g] as const));
  it.each(cases)('%i places in %i groups: within 5 % of the one-tree bound', (count, groups) => {
    for (let seed = 1; seed <= 3; seed++) {
      const costs = drawnCosts(count, 1000 * seed + count, groups);
      const task = taskOf(costs);
      const cost = walkCost(task, shortestWalk(task, 400));
      expect(cost / oneTreeBound(costs, 200), `seed ${seed}`).toBeLessThan(1.05);
      expect(cost / nearestFirst(costs)).toBeLessThan(1);
    }
  });

  it('two hundred sets of up to nine: all but a few are the best of all orders', () => {
    let best = 0;
    for (let seed = 0; seed < 200; seed++) {
      const costs = drawnCosts(3 + (seed % 7), seed, 1 + (seed % 3));
      const task = taskOf(costs);
      const ratio = walkCost(task, shortestWalk(task, 400)) / cheapestWalk(costs);
      expect(ratio).toBeLessThan(1.05);
      if (ratio < 1 + 1e-9) best++;
    }
    expect(best).toBeGreaterThanOrEqual(190);
  });
});
