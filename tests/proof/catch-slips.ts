/** Planted slips against the printed checks at their printed limits, beside what theory gives. */
import {
  checkSigmasIn,
  drawCauses,
  newDay,
  normalBelow,
  seeded,
  workThrough,
  type Day,
  type Field,
  type Slip,
} from '../support/field-crew';
import { drawSlip, SLIP_KINDS, type SlipKind } from './draw-slips';

export interface CatchTally {
  readonly kind: SlipKind;
  readonly draws: number;
  /** Shares: caught by the stake's own check, at once. */
  readonly caught: number;
  /** The same by theory, averaged over the same slips. */
  readonly theory: number;
  /** By that check or by one of a later stake, which would not have shown anything that day otherwise. */
  readonly caughtEver: number;
  /** Of all: the tapes do not meet, so that the stake cannot be set. */
  readonly cannotBeSet: number;
  /** By row: drawn, caught at once, chance by theory summed. */
  readonly byRow: readonly RowTally[];
}

export interface RowTally {
  readonly stake: string;
  drawn: number;
  caught: number;
  theory: number;
}

/** One drawn slip on one drawn day. */
export interface Planted {
  readonly slip: Slip;
  readonly z: Float64Array;
}

export interface Catcher {
  readonly field: Field;
  readonly sigmasIn: Float64Array;
}

export const catcherOf = (field: Field): Catcher => ({ field, sigmasIn: checkSigmasIn(field) });

/** Draw `n` of `kind`: the same whoever asks. */
export function* planted(field: Field, kind: SlipKind, draws: number): Generator<Planted> {
  const noise = seeded(1000 + SLIP_KINDS.indexOf(kind));
  for (let n = 0; n < draws; n++) {
    const slip = drawSlip(field, kind, noise);
    yield { slip, z: drawCauses(field, noise) };
  }
}

export function catchSlips(catcher: Catcher, kind: SlipKind, draws: number): CatchTally {
  const { field } = catcher;
  const [day, clean] = [newDay(field), newDay(field)];
  const byRow = field.rows.map((r): RowTally => ({
    stake: r.stake,
    drawn: 0,
    caught: 0,
    theory: 0,
  }));
  let [caught, theory, ever, cannotBeSet] = [0, 0, 0, 0];
  for (const { slip, z } of planted(field, kind, draws)) {
    workThrough(field, z, day, slip);
    workThrough(field, z, clean);
    const atOnce = isCaught(field, day, slip.row);
    const chance = chanceAtOnce(catcher, slip);
    const row = byRow[slip.row]!;
    row.drawn++;
    row.caught += atOnce ? 1 : 0;
    row.theory += chance;
    caught += atOnce ? 1 : 0;
    theory += chance;
    ever += atOnce || isCaughtLater(field, day, clean, slip.row) ? 1 : 0;
    cannotBeSet += day.stuck === slip.row ? 1 : 0;
  }
  return {
    kind,
    draws,
    caught: caught / draws,
    theory: theory / draws,
    caughtEver: ever / draws,
    cannotBeSet: cannotBeSet / draws,
    byRow,
  };
}

/** Over its printed limit, or it cannot even be set. */
const isCaught = (field: Field, day: Day, row: number): boolean =>
  day.stuck === row || Math.abs(day.offIn[row]!) > field.rows[row]!.limitIn;

function isCaughtLater(field: Field, day: Day, clean: Day, row: number): boolean {
  for (let k = row + 1; k < field.rows.length; k++) {
    if (isCaught(field, day, k) && !isCaught(field, clean, k)) return true;
    if (day.stuck === k) return true;
  }
  return false;
}

/**
 * The check's difference is normal with one sigma of s; a slip moves its mean by what the list's own
 * geometry says. Chance that it is over the printed limit, either way.
 */
export function chanceAtOnce({ field, sigmasIn }: Catcher, slip: Slip): number {
  const day = newDay(field);
  workThrough(field, new Float64Array(field.causes), day, slip);
  if (day.stuck === slip.row) return 1;
  const s = sigmasIn[slip.row]!;
  const limit = field.rows[slip.row]!.limitIn / s;
  const shift = day.offIn[slip.row]! / s;
  return normalBelow(shift - limit) + normalBelow(-shift - limit);
}
