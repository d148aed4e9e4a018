/** How surely a stake's check shows a slip of a size, in whichever reading and way it hides best. */
import type { Field } from '../support/field-crew';
import { chanceAtOnce, type Catcher } from './catch-slips';
import { readingsOfRow } from './draw-slips';

/** Slips that nobody can make, to less than nothing on the tape, are left out: 1 when none is left. */
export function worstChance(catcher: Catcher, stake: string, slipIn: number): number {
  const row = rowOf(catcher.field, stake);
  const r = catcher.field.rows[row]!;
  const slips = readingsOfRow(r).flatMap((which) =>
    [1, -1]
      .map((sign) => (sign * slipIn) / 12)
      .filter((byFt) => r[which] + byFt > 0)
      .map((byFt) => ({ kind: 'reading', row, which, byFt }) as const),
  );
  return Math.min(1, ...slips.map((slip) => chanceAtOnce(catcher, slip)));
}

function rowOf(field: Field, stake: string): number {
  const row = field.rows.findIndex((r) => r.stake === stake);
  if (row < 0) throw new Error(`no stake ${stake}`);
  return row;
}
