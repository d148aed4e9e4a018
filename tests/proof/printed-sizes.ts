/** What the sheets say of the slips that checks show, held against chances worked out from the files. */
import type { Plan } from '../../src/plan/model';
import { leastShownIn } from '../../src/sheets/check-reach';
import type { Catcher } from './catch-slips';
import { worstChance } from './shown-slips';

/** Larger slips than the printed size are tried too, inches. */
const LARGER_IN = [12, 24, 60];

export interface PrintedSizes {
  /** Stakes whose sheets name a size. */
  readonly told: number;
  /** Those of them that show it, or a larger slip, less than 8 times in 10 at worst. */
  readonly short: readonly string[];
  /** Stakes named as those whose check may miss a slip. */
  readonly blind: readonly string[];
}

export function printedSizes(plan: Plan, catcher: Catcher): PrintedSizes {
  const { stakes, controls } = plan.stakes!;
  const at = new Map([...controls, ...stakes].map((p) => [p.id, p.at]));
  const sizes = stakes.map((s) => ({ id: s.id, least: leastShownIn(s, at) }));
  const told = sizes.filter((s) => s.least < Infinity);
  const hides = (id: string, sizesIn: readonly number[]): boolean =>
    sizesIn.some((size) => worstChance(catcher, id, size) < 0.8);
  const larger = (least: number) => LARGER_IN.filter((size) => size >= least);
  return {
    told: told.length,
    short: told.filter((s) => hides(s.id, [s.least, ...larger(s.least)])).map((s) => s.id),
    blind: sizes.filter((s) => s.least === Infinity).map((s) => s.id),
  };
}
