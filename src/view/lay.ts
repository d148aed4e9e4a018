/**
 * The lean of the grass. L is a plane vector, |L| ≤ 1: its direction is where the blades point, its
 * length how strongly they lean. One pass in unit direction d moves it to (1 − w)·L + w·d.
 */
import { sourced } from '../base/sourced';
import { pointAdd, pointScale, type Point } from '../geometry/point';

/** Share of the lean that one pass of a reel with a roller renews. */
export const PASS_WEIGHT = sourced(
  0.65,
  'share',
  'assumption',
  'two to three cuts reverse a pattern: 0.30, 0.76, 0.91 of full strength',
);

/** The lean after one pass in unit direction `direction` with weight `weight` (0 to 1). */
export const layAfterPass = (lay: Point, direction: Point, weight: number): Point =>
  pointAdd(pointScale(lay, 1 - weight), pointScale(direction, weight));

/**
 * The lean that repeated visits settle to when each visit makes the same passes in the same order:
 * L = Σ w·(1−w)^(n−i)·dᵢ ÷ (1 − (1−w)^n). One direction gives full lean, |L| = 1.
 */
export function burnedInLay(directions: readonly Point[], weight = PASS_WEIGHT.value): Point {
  const start: Point = { x: 0, y: 0 };
  const visit = directions.reduce((lay, d) => layAfterPass(lay, d, weight), start);
  const renewed = 1 - (1 - weight) ** directions.length;
  return renewed > 0 ? pointScale(visit, 1 / renewed) : start;
}

/**
 * Strength of a patch after `passes` passes its own way, −1 to 1. `before` is the lean it starts
 * from along that way: 0 for erased grass, −1 for the opposite pattern fully burned in. The first
 * day's picture is the burned-in one with its contrast times `layStrength(1)`.
 */
export const layStrength = (passes: number, before = 0, weight = PASS_WEIGHT.value): number =>
  1 - (1 - before) * (1 - weight) ** passes;
