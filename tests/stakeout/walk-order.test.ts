import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../src/base/random';
import { walkBound } from '../../src/stakeout/one-tree';
import { shortestWalk, walkCost } from '../../src/stakeout/walk-order';
import { cheapestWalk, oneTreeBound, nearestFirst } from '../support/one-tree-bound';
import { drawnCosts, taskOf } from './support/walks';

describe('the shortest walk', () => {
  it('is the best of all orders of nine places or fewer', () => {
    for (let seed = 0; seed < 30; seed++) {
      const costs = drawnCosts(3 + (seed % 7), seed, 1 + (seed % 3));
      const task = taskOf(costs);
      const best = cheapestWalk(costs);
      const walk = shortestWalk(task, 400);
      expect([...walk].sort((a, b) => a - b)).toEqual([...task.fromStart.keys()]);
      expect(walkCost(task, walk) / best, `seed ${seed}`).toBeLessThan(1.02);
      expect(oneTreeBound(costs)).toBeLessThanOrEqual(best + 1e-9);
      expect(walkBound(task, walkCost(task, walk))).toBeLessThanOrEqual(best + 1e-9);
    }
  });

  it.each([40, 80])('of %i places is within 5 % of the one-tree bound', (count) => {
    for (const groups of [1, 4]) {
      const costs = drawnCosts(count, count + groups, groups);
      const task = taskOf(costs);
      const cost = walkCost(task, shortestWalk(task, 400));
      const bound = oneTreeBound(costs, 120);
      expect(cost / bound, `${groups} groups`).toBeLessThan(1.05);
      expect(cost).toBeLessThan(nearestFirst(costs));
      const own = walkBound(task, cost);
      expect(own).toBeLessThanOrEqual(cost);
      expect(own / bound).toBeGreaterThan(0.98);
    }
  });

  it('keeps every place behind those that it needs', () => {
    const task = taskOf(drawnCosts(80, 5));
    const random = seededRandom(6);
    const before = Array.from({ length: 80 }, (_, i) =>
      i % 2 === 1 ? [2 * random.integer(40), 2 * random.integer(40)] : [],
    );
    const walk = shortestWalk({ ...task, before }, 400);
    const place = new Map(walk.map((p, i) => [p, i]));
    expect(place.size).toBe(80);
    before.forEach((needs, i) => {
      for (const p of needs) expect(place.get(p)!).toBeLessThan(place.get(i)!);
    });
    expect(walkCost(task, walk)).toBeGreaterThan(walkCost(task, shortestWalk(task, 400)) - 1e-9);
  });

  it('keeps every place behind one of those that check it', () => {
    const task = taskOf(drawnCosts(60, 7));
    const random = seededRandom(8);
    const oneBefore = Array.from({ length: 60 }, (_, i) =>
      i % 3 === 1 ? [3 * random.integer(20), 3 * random.integer(20)] : [],
    );
    const walk = shortestWalk({ ...task, oneBefore }, 200);
    const place = new Map(walk.map((p, i) => [p, i]));
    expect(place.size).toBe(60);
    oneBefore.forEach((ones, i) => {
      if (ones.length > 0)
        expect(Math.min(...ones.map((p) => place.get(p)!))).toBeLessThan(place.get(i)!);
    });
  });

  it('ends, with every place in it, where none can be reached', () => {
    const task = taskOf(drawnCosts(8, 1));
    const never = {
      ...task,
      fromStart: task.fromStart.map(() => Infinity),
      between: task.between.map(() => Infinity),
    };
    expect([...shortestWalk(never, 20)].sort((a, b) => a - b)).toEqual([0, 1, 2, 3, 4, 5, 6, 7]);
  });
});
