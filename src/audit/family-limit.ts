/** How often a job without any slip raises an alarm, all its tests together. */
import type { Judged } from '../adjust/network-model';
import { chiSquareAbove } from '../adjust/chi-square';
import { twoSidedLimit } from '../adjust/normal-quantile';
import { CRITICAL } from '../adjust/reliability';

/** The readings of an adjustment as they were judged. */
interface Tested {
  readonly readings: readonly Pick<Judged, 'redundancy' | 'standardised'>[];
}

/** At most this share of jobs without a slip raises a false alarm at the family's limit. */
const FAMILY_ALPHA = 0.05;
/** Digits to which standardised residuals are equal when they are one and the same test. */
const SAME_DIGITS = 6;
/** A redundancy number below this is rounding: no other reading controls that one. */
const NO_REDUNDANCY = 1 / 1_000_000;

/**
 * Different tests among the standardised residuals: readings that only control each other share one, a
 * setting that several readings control has more.
 */
function testsIn({ readings }: Tested): number {
  const controlled = readings.filter((r) => r.redundancy > NO_REDUNDANCY);
  return new Set(controlled.map((r) => Math.abs(r.standardised).toPrecision(SAME_DIGITS))).size;
}

/**
 * Standardised residual that at most one job in twenty goes beyond without a slip (Bonferroni), never
 * below 3.29.
 */
export function familyLimitOf(adjustment: Tested): number {
  const tests = testsIn(adjustment);
  return tests === 0 ? CRITICAL : Math.max(CRITICAL, twoSidedLimit(FAMILY_ALPHA / tests));
}

/**
 * Most that the chance can be that a job without a slip goes beyond 3.29 (Sidak 1967: tests that hang
 * together raise fewer alarms than as many that do not); 0 when nothing is tested.
 */
export function falseAlarmChanceOf(adjustment: Tested): number {
  return 1 - (1 - chiSquareAbove(CRITICAL * CRITICAL, 1)) ** testsIn(adjustment);
}
