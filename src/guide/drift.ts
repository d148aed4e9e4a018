/**
 * Drift: each pass is laid beside the one before and adds an error of its own to the overlap, a part by
 * chance and a part that is always the same. After k passes the chance parts add up as their squares
 * do, the common part k times.
 */
import { sourced } from '../base/sourced';
import type { GuideSpec } from './model';

/** Inches. Assumptions, to be typed over: measure a few bands of your own. */
export const DEFAULT_GUIDES: GuideSpec = {
  strings: 'fewest',
  order: 'beside',
  passSigmaIn: 1,
  passBiasIn: 0.25,
  stringSigmaIn: 1,
  toleranceIn: 6,
};

/** Bound of good sense for typed errors and tolerances, inches. */
export const MOST_DRIFT_IN = 60;

/** Of a normal error, 95 % lie within so many sigma on either side. */
const TWO_SIDED_95 = sourced(1.96, 'sigma', 'standard normal distribution, 97.5 % point');

/** Inches that a band edge is off on nineteen days in twenty, `passes` after a strung pass. */
export function driftIn(spec: GuideSpec, passes: number): number {
  const chance = Math.hypot(spec.stringSigmaIn, spec.passSigmaIn * Math.sqrt(passes));
  return spec.passBiasIn * passes + TWO_SIDED_95.value * chance;
}

/** Most passes after a strung one that keep the tolerance, `most` at most; −1 when none does. */
export function reachPasses(spec: GuideSpec, most: number): number {
  let passes = -1;
  while (passes < most && driftIn(spec, passes + 1) <= spec.toleranceIn) passes++;
  return passes;
}
