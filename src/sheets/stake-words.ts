/**
 * The words of a table row. They are a contract: docs/sheets.md gives the grammar, and a stranger's
 * program rebuilds the whole set-out from them. Plain ASCII; one row on one baseline.
 */
import type { Control } from '../field/model';
import type { Contour, OutlinePiece, Stake } from '../stakeout/model';

/** How the stake is found: two ties and a side, or a place on a line. */
export interface SetWords {
  readonly first: { readonly from: string; readonly reading: string };
  readonly second: { readonly from: string; readonly reading: string } | null;
  /** `left`, `right`; for a line `toward 2B`, `away from 2B`. */
  readonly side: string;
}

export function setWords(stake: Stake): SetWords {
  const { set } = stake;
  const first = { from: set.tie1.from, reading: set.tie1.reading.text };
  if (set.method === 'line') {
    const side = set.side === 'T' ? `toward ${set.lineTo}` : `away from ${set.lineTo}`;
    return { first, second: null, side };
  }
  const second = { from: set.tie2.from, reading: set.tie2.reading.text };
  return { first, second, side: set.side === 'L' ? 'left' : 'right' };
}

/** `HP fixed x 0.000 y 0.000 sigma 0.50`. */
export function controlCells(control: Control): string[] {
  const { xx, yy } = control.covariance;
  return [
    control.id,
    control.kind,
    `x ${plainNumber(control.at.x, 3)}`,
    `y ${plainNumber(control.at.y, 3)}`,
    `sigma ${plainNumber(Math.sqrt((xx + yy) / 2), 2)}`,
  ];
}

/** Fixed decimals without a minus sign before zero. */
function plainNumber(value: number, decimals: number): string {
  const text = value.toFixed(decimals);
  return Number(text) === 0 ? text.replace('-', '') : text;
}

/** Cells of an outline row: `1.2`, what, from and to, pin and radius, turn. */
export function outlineCells(contour: Contour, index: number): string[] {
  const piece = contour.pieces[index]!;
  return [`${contour.contour}.${index + 1}`, piece.kind, ...pieceCells(piece)];
}

function pieceCells(piece: OutlinePiece): string[] {
  if (piece.kind === 'string') return [`from ${piece.from}`, `to ${piece.to}`, '', '', ''];
  const pin = [`pin ${piece.pin}`, `radius ${piece.radius.text}`];
  if (piece.kind === 'circle') return ['', '', ...pin, 'full circle'];
  const turn = piece.sweep === 'cw' ? 'turn clockwise' : 'turn counter-clockwise';
  return [`from ${piece.from}`, `to ${piece.to}`, ...pin, turn];
}
