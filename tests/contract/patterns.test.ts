/** Patterns driven and replayed cell by cell, reduced: fewer patterns, larger cells. */
import { describe, expect, test } from 'vitest';
import { driveRecipe, judgePattern } from '../support/drive-recipe';
import type { RouteLeg } from '../support/raster';

describe('patterns, driven by the triplex and replayed on a raster of 0.5 ft', () => {
  test.each(['arcs-home', 'bullseye', 'checkerboard', 'chevron', 'sunburst', 'wave'])(
    '%s',
    (id) => {
      const driven = driveRecipe(id, 'triplex-reel');
      expect(driven.problems).toEqual([]);
      judgePattern(driven, 0.5);
    },
  );

  test('a checkerboard without its first mowing is told apart', () => {
    const driven = driveRecipe('checkerboard', 'triplex-reel');
    const isAcross = (leg: RouteLeg) => {
      const [[ax, ay], [bx, by]] = [leg.points[0]!, leg.points.at(-1)!];
      return leg.kind === 'mow' && Math.abs(ay - by) < 0.1 && Math.abs(ax - bx) > 5;
    };
    const firstAcross = driven.legs.findIndex(isAcross);
    const without = driven.legs.filter((leg, i) => leg.kind !== 'mow' || i >= firstAcross);
    expect(without.length).toBeLessThan(driven.legs.length - 50);
    expect(() => judgePattern({ ...driven, legs: without }, 0.5)).toThrow(/layer 1/);
    const mown = driven.legs.filter((leg) => leg.kind === 'mow');
    const latest = Math.max(...mown.map((leg) => leg.start_s));
    const swapped = driven.legs.map((leg, i) =>
      leg.kind === 'mow' && i < firstAcross ? { ...leg, start_s: leg.start_s + latest } : leg,
    );
    expect(() => judgePattern({ ...driven, legs: swapped }, 0.5)).toThrow(/last lay|order/);
  });
});
