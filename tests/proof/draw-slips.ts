/** Slips of every kind, drawn blindly: any reading of any stake, whichever way. */
import type { Field, Noise, Slip } from '../support/field-crew';

export const SLIP_KINDS = [
  'reading 6',
  'reading 12',
  'reading 60',
  'check 12',
  'swapped',
  'held',
  'side',
  'end',
] as const;
export type SlipKind = (typeof SLIP_KINDS)[number];

/** As the tables say it. */
export const KIND_WORDS: Readonly<Record<SlipKind, string>> = {
  'reading 6': 'slip of 6 in, one reading',
  'reading 12': 'slip of 12 in, one reading',
  'reading 60': 'slip of 60 in, one reading',
  'check 12': 'slip of 12 in, the check itself',
  swapped: 'tapes swapped',
  held: 'wrong control or stake held',
  side: 'wrong side or way',
  end: 'short line from its other end',
};

type Which = 'first' | 'second' | 'offset';

/** The printed readings that set a row's stake. */
const READINGS: Readonly<Record<string, readonly Which[]>> = {
  ties: ['first', 'second'],
  line: ['first'],
  offset: ['first', 'offset'],
  chord: ['offset'],
};

export const readingsOfRow = (row: { readonly method: string }): readonly Which[] =>
  READINGS[row.method]!;

/** Every reading of the list that sets a stake. */
const settings = (field: Field): readonly { readonly row: number; readonly which: Which }[] =>
  field.rows.flatMap((r, row) => readingsOfRow(r).map((which) => ({ row, which })));

export function drawSlip(field: Field, kind: SlipKind, noise: Noise): Slip {
  const sign = noise.uniform() < 0.5 ? -1 : 1;
  if (kind === 'swapped') {
    const ties = field.rows.flatMap((r, row) => (r.method === 'ties' ? [row] : []));
    return { kind: 'swapped', row: ties[noise.below(ties.length)]! };
  }
  if (kind === 'end') {
    const offsets = field.rows.flatMap((r, row) => (r.method === 'offset' ? [row] : []));
    return { kind: 'end', row: offsets[noise.below(offsets.length)]!, sameSide: sign > 0 };
  }
  const row = noise.below(field.rows.length);
  if (kind === 'side') return { kind: 'side', row };
  if (kind === 'held') return drawHeld(field, row, noise);
  if (kind === 'check 12') {
    return { kind: 'reading', row, which: 'check', byFt: signed(field.rows[row]!.check, sign, 1) };
  }
  const all = settings(field);
  const one = all[noise.below(all.length)]!;
  const byFt = signed(field.rows[one.row]![one.which], sign, Number(kind.split(' ')[1]) / 12);
  return { kind: 'reading', ...one, byFt };
}

/** Nobody pulls a tape to less than nothing: a slip that would is one to the other side. */
const signed = (reading: number, sign: number, size: number): number =>
  sign < 0 && reading <= size ? size : sign * size;

/** A misread number on a short line is that of a stake near by. */
const NEAR_FT = 30;

/** A tape held at any other control that stands by then; a short line at any other mark near its end. */
function drawHeld(field: Field, row: number, noise: Noise): Slip {
  const r = field.rows[row]!;
  const isLong = r.method === 'ties' || r.method === 'line';
  const end = noise.uniform() < 0.5 ? 1 : 2;
  const meant = end === 1 ? r.a : r.b;
  const standing = field.sheet.fixed.length + row;
  const marks = Array.from({ length: standing }, (_, i) => i).filter((i) => {
    if (i === r.a || i === r.b) return false;
    if (isLong) return isControl(field, i);
    return planned(field, i, meant) <= NEAR_FT;
  });
  const near = marks.length > 0 ? marks : nearestOf(field, standing, r.a, r.b, meant);
  return { kind: 'held', row, end, instead: near[noise.below(near.length)]! };
}

const isControl = ({ sheet, rows }: Field, mark: number): boolean =>
  mark < sheet.fixed.length || rows[mark - sheet.fixed.length]!.kind === 'control';

const planned = (field: Field, a: number, b: number): number =>
  Math.hypot(field.plannedX[a]! - field.plannedX[b]!, field.plannedY[a]! - field.plannedY[b]!);

function nearestOf(field: Field, standing: number, a: number, b: number, to: number): number[] {
  return Array.from({ length: standing }, (_, i) => i)
    .filter((i) => i !== a && i !== b)
    .sort((p, q) => planned(field, p, to) - planned(field, q, to))
    .slice(0, 1);
}
