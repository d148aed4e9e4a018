import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../src/base/random';
import {
  lognormalAt,
  lognormalOf,
  NORMAL_90,
  pertMoments,
  quantile,
} from '../../src/labour/spread';

describe('low, likely and high as a distribution', () => {
  // Published on a public PERT example page: 5/8/14 gives 8.5, sd 1.5.
  it('gives the published mean and deviation', () => {
    expect(pertMoments({ low: 5, likely: 8, high: 14 })).toEqual({ mean: 8.5, sd: 1.5 });
  });

  // Same page: means 3.17, 8.5, 4.17, 2 with sds 0.5, 1.5, 0.5, 0.33 on a path: 17.83, sd 1.69.
  it('adds up along the published path', () => {
    const path = [
      { low: 2, likely: 3, high: 5 },
      { low: 5, likely: 8, high: 14 },
      { low: 3, likely: 4, high: 6 },
      { low: 1, likely: 2, high: 3 },
    ].map(pertMoments);
    expect(path.map((p) => Number(p.mean.toFixed(2)))).toEqual([3.17, 8.5, 4.17, 2]);
    expect(path.reduce((sum, p) => sum + p.mean, 0)).toBeCloseTo(17.83, 2);
    expect(Math.sqrt(path.reduce((sum, p) => sum + p.sd ** 2, 0))).toBeCloseTo(1.69, 2);
  });

  it('draws a lognormal with the mean and deviation asked for', () => {
    const random = seededRandom(3);
    const spread = lognormalOf(8.5, 1.5);
    const draws = Array.from({ length: 40_000 }, () => lognormalAt(spread, random.normal()));
    const mean = draws.reduce((a, b) => a + b) / draws.length;
    const sd = Math.sqrt(draws.reduce((s, d) => s + (d - mean) ** 2, 0) / draws.length);
    expect(mean).toBeCloseTo(8.5, 1);
    expect(sd).toBeCloseTo(1.5, 1);
    const below = draws.filter((d) => d <= lognormalAt(spread, NORMAL_90)).length / draws.length;
    expect(Math.abs(below - 0.9)).toBeLessThan(0.005);
  });

  it('does not spread what is certain', () => {
    const certain = lognormalOf(12, 0);
    expect(lognormalAt(certain, 3)).toBeCloseTo(12, 12);
  });

  it('reads quantiles between sorted values', () => {
    expect(quantile([1, 2, 3, 4, 5], 0.5)).toBe(3);
    expect(quantile([0, 10], 0.9)).toBeCloseTo(9, 12);
  });
});
