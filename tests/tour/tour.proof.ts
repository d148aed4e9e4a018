import { expect, test } from 'vitest';
import { searchTour } from '../../src/tour/search-tour';
import { boundTour } from '../../src/tour/tour-bound';
import { exactTourCost, passMatrix, randomMatrix } from './support/small-tours';

test('200 instances of at most 12 passes: within 1 % of the optimum, each of them', () => {
  let closed = 0;
  for (let seed = 1; seed <= 200; seed++) {
    const passes = 3 + (seed % 10);
    const matrix = seed % 4 ? passMatrix(passes, seed) : randomMatrix(passes + 1, seed);
    const exact = exactTourCost(matrix);
    const search = searchTour(matrix);
    search.improve(400);
    expect(search.cost()).toBeLessThanOrEqual(1.01 * exact + 1e-6);
    expect(search.cost()).toBeGreaterThanOrEqual(exact - 1e-6);
    if (search.cost() <= exact + 1e-6) closed++;
  }
  expect(closed).toBeGreaterThan(195);
});

test('larger fields of passes: within 3 % of the best bound', () => {
  for (const [passes, seed] of [
    [60, 1],
    [120, 2],
    [250, 3],
  ] as const) {
    const matrix = passMatrix(passes, seed);
    const search = searchTour(matrix);
    search.improve(4000);
    const bound = boundTour(matrix, search.cost());
    bound.improve(60);
    expect(search.cost() / bound.value()).toBeLessThanOrEqual(1.03);
  }
});
