/**
 * The words of a table row. They are a contract: docs/sheets.md gives the grammar, and a stranger's
 * program rebuilds the whole set-out from them. Plain ASCII; one row on one baseline.
 */
import type { Control } from '../field/model';
import type { Contour, OutlinePiece, SetMethod, Stake } from '../stakeout/model';
import { methodControls } from '../stakeout/ties';

/** How the stake is found: two ties and a side, a place on a line, or an offset from one. */
export interface SetWords {
  readonly method: SetMethod['method'];
  /** The reading is empty for a chord, which starts at the middle. */
  readonly first: { readonly from: string; readonly reading: string };
  /** The second tie, or the far end of a short line and the offset from it; null on a line. */
  readonly second: { readonly from: string; readonly reading: string } | null;
  /** `left`, `right`; for a line `toward 2B`, `away from 2B`. */
  readonly side: string;
}

export function setWords(stake: Stake): SetWords {
  const { set } = stake;
  const { method } = set;
  const [from, to] = methodControls(set);
  const first = { from, reading: method === 'chord' ? '' : set.tie1.reading.text };
  if (method === 'line') {
    const side = set.side === 'T' ? `toward ${to}` : `away from ${to}`;
    return { method, first, second: null, side };
  }
  const reading = method === 'ties' ? set.tie2.reading.text : set.offset.text;
  const side = set.side === 'L' ? 'left' : 'right';
  return { method, first, second: { from: to, reading }, side };
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

/** Cells of an outline row: `1.2`, what, from and to, pin and radius or offset, turn or side. */
export function outlineCells(contour: Contour, index: number): string[] {
  const piece = contour.pieces[index]!;
  return [`${contour.contour}.${index + 1}`, piece.kind, ...pieceCells(piece)];
}

function pieceCells(piece: OutlinePiece): string[] {
  if (piece.kind === 'string') return [`from ${piece.from}`, `to ${piece.to}`, '', '', ''];
  if (piece.kind === 'bend') {
    const side = piece.side === 'L' ? 'left' : 'right';
    return [`from ${piece.from}`, `to ${piece.to}`, '', `offset ${piece.offset.text}`, side];
  }
  const pin = [`pin ${piece.pin}`, `radius ${piece.radius.text}`];
  if (piece.kind === 'circle') return ['', '', ...pin, 'full circle'];
  const turn = piece.sweep === 'cw' ? 'turn clockwise' : 'turn counter-clockwise';
  return [`from ${piece.from}`, `to ${piece.to}`, ...pin, turn];
}
