import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../src/base/random';
import { cheapestArborescence } from '../../src/tour/arborescence';
import { cheapestAssignment } from '../../src/tour/assignment';
import { tourCost, type CostMatrix } from '../../src/tour/model';
import { searchTour } from '../../src/tour/search-tour';
import { apply, exchangeRuns, reversed, segmentTour } from '../../src/tour/segment-tour';
import { boundTour } from '../../src/tour/tour-bound';
import { exactTourCost, orders, passMatrix, randomMatrix } from './support/small-tours';

const seeds = (count: number): number[] => Array.from({ length: count }, (_, i) => i + 1);
const ids = (count: number): number[] => Array.from({ length: count }, (_, i) => i);
const drawn = (seed: number): CostMatrix =>
  seed % 2 ? randomMatrix(3 + (seed % 10), seed) : passMatrix(2 + (seed % 10), seed);

describe('the cheapest assignment', () => {
  it('is what trying all successors finds, and its prices prove it', () => {
    for (const seed of seeds(40)) {
      const matrix = randomMatrix(2 + (seed % 6), seed);
      const { count, cost } = matrix;
      let least = Infinity;
      for (const next of orders(ids(count))) {
        if (next.some((j, i) => i === j)) continue;
        least = Math.min(
          least,
          next.reduce((sum, j, i) => sum + cost[i * count + j]!, 0),
        );
      }
      const found = cheapestAssignment(matrix);
      expect(found.cost).toBeCloseTo(least, 9);
      const prices = [...found.row, ...found.column].reduce((sum, p) => sum + p, 0);
      expect(prices).toBeCloseTo(least, 9);
      for (const i of ids(count)) {
        for (const j of ids(count)) {
          if (i === j) continue;
          expect(cost[i * count + j]! - found.row[i]! - found.column[j]!).toBeGreaterThan(-1e-9);
        }
      }
    }
  });
});

describe('the cheapest arborescence', () => {
  it('is what trying all predecessors finds', () => {
    for (const seed of seeds(40)) {
      const { count, cost } = randomMatrix(2 + (seed % 5), seed);
      const before = cheapestArborescence({ count, cost }, 0);
      const costOf = (p: ArrayLike<number>): number =>
        ids(count).reduce((sum, j) => (j === 0 ? sum : sum + cost[p[j]! * count + j]!), 0);
      const reaches = (p: ArrayLike<number>): boolean =>
        ids(count).every((j) => {
          let i = j;
          for (let k = 0; k < count && i !== 0; k++) i = p[i]!;
          return i === 0;
        });
      let least = Infinity;
      for (let code = 0; code < count ** (count - 1); code++) {
        const p = ids(count).map((j) =>
          j === 0 ? -1 : Math.floor(code / count ** (j - 1)) % count,
        );
        if (p.every((i, j) => i !== j) && reaches(p)) least = Math.min(least, costOf(p));
      }
      expect(reaches(before)).toBe(true);
      expect(costOf(before)).toBe(least);
    }
  });
});

describe('two runs that change places', () => {
  it('give the tour that cutting and joining lists gives, and come back', () => {
    for (const seed of seeds(200)) {
      const random = seededRandom(seed);
      const n = 4 + random.integer(20);
      const list = ids(n).sort(() => random.uniform() - 0.5);
      const tour = segmentTour(list);
      const [i, j, k] = [random.integer(n), random.integer(n), random.integer(n)].sort(
        (a, b) => a - b,
      );
      if (i === j || j === k) continue;
      const exchange = exchangeRuns(tour, list[i!]!, list[j!]!, list[k!]!);
      expect(exchange.first + exchange.second).toBeLessThanOrEqual((2 * n) / 3);
      apply(tour, exchange);
      const want = [
        ...list.slice(0, i! + 1),
        ...list.slice(j! + 1, k! + 1),
        ...list.slice(i! + 1, j! + 1),
        ...list.slice(k! + 1),
      ];
      const turned = (t: readonly number[]): number[] => [
        ...t.slice(t.indexOf(0)),
        ...t.slice(0, t.indexOf(0)),
      ];
      expect(turned([...tour.nodes])).toEqual(turned(want));
      tour.nodes.forEach((node, at) => expect(tour.position[node]).toBe(at));
      apply(tour, reversed(exchange));
      expect([...tour.nodes]).toEqual(list);
    }
  });
});

describe('a searched tour', () => {
  it('passes every node once, costs what it says, and is the same again', () => {
    for (const seed of [1, 2, 3, 4]) {
      const matrix = passMatrix(40 + 7 * seed, seed);
      const runs = [1, 2].map(() => {
        const search = searchTour(matrix);
        search.improve(300);
        return search;
      });
      const tour = runs[0]!.tour();
      expect([...tour].sort((a, b) => a - b)).toEqual(ids(matrix.count));
      expect(tour[0]).toBe(0);
      expect(tourCost(matrix, tour)).toBeCloseTo(runs[0]!.cost(), 6);
      expect(runs[1]!.tour()).toEqual(tour);
    }
  });

  it('never gets worse by kicks', () => {
    const search = searchTour(passMatrix(80, 9));
    let cost = search.cost();
    for (let k = 0; k < 30; k++) {
      search.improve(50);
      expect(search.cost()).toBeLessThanOrEqual(cost + 1e-9);
      cost = search.cost();
    }
  });

  it('is within 1 % of the optimum on small instances, never below it, and so is the bound', () => {
    for (const seed of seeds(40)) {
      const matrix = drawn(seed);
      const exact = exactTourCost(matrix);
      const search = searchTour(matrix);
      search.improve(400);
      expect(search.cost()).toBeGreaterThanOrEqual(exact - 1e-6);
      expect(search.cost()).toBeLessThanOrEqual(1.01 * exact + 1e-6);
      expect(search.bound()).toBeLessThanOrEqual(exact + 1e-6);
      const bound = boundTour(matrix, search.cost());
      bound.improve(60);
      expect(bound.value()).toBeLessThanOrEqual(exact + 1e-6);
      expect(bound.value()).toBeGreaterThanOrEqual(cheapestAssignment(matrix).cost - 1e-6);
    }
  });

  it('goes on from costs that turn out otherwise, and its bound stays a bound', () => {
    for (const seed of seeds(30)) {
      const random = seededRandom(seed);
      const matrix = passMatrix(seed % 3 === 0 ? 8 : 13, seed);
      const search = searchTour(matrix);
      const cost = matrix.cost.slice();
      const { count } = matrix;
      for (let round = 0; round < 8; round++) {
        const tour = search.tour();
        const prices = tour.map((from, i) => {
          const to = tour[(i + 1) % count]!;
          const now = cost[from * count + to]! * (0.8 + 0.8 * random.uniform());
          cost[from * count + to] = now;
          return { from, to, cost: now };
        });
        search.reprice(prices);
        expect(search.cost()).toBeCloseTo(tourCost({ count, cost }, search.tour()), 6);
      }
      search.improve(400);
      const exact = exactTourCost({ count, cost });
      expect(search.bound()).toBeLessThanOrEqual(exact + 1e-6);
      expect(search.cost()).toBeGreaterThanOrEqual(exact - 1e-6);
      expect(search.cost()).toBeLessThanOrEqual(1.01 * exact + 1e-6);
    }
  });

  it('of one or two nodes, or of equal costs, is no special case', () => {
    for (const count of [1, 2, 3, 4, 5]) {
      const matrix = { count, cost: new Float64Array(count * count).fill(1) };
      const search = searchTour(matrix);
      search.improve(10);
      expect(search.tour()).toEqual(count < 3 ? ids(count) : expect.arrayContaining(ids(count)));
      expect(search.cost()).toBe(count < 2 ? 0 : count);
    }
  });
});
