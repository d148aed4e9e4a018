/** The drawn outline: strings plain, swings dashed with thin radii to their pin, bends dashed short. */
import { arcBetween, fullCircle, pathFlatten } from '../geometry/arc';
import type { Point } from '../geometry/point';
import { bendArc } from '../stakeout/bend';
import type { OutlinePiece, StakePlan } from '../stakeout/model';
import { FAINT_LINE } from './draw-field';
import { inkFill, inkLine, inkRing, inkStroke } from './ink';
import { pointNamed } from './kit';
import { LETTER_GREY, type Mark } from './marks';
import { BEND_DASH, SWING_DASH } from './symbols';
import type { ViewFrame } from './view-frame';

type Places = ReadonlyMap<string, Point>;

/** Half an inch on the ground: finer than a hair on paper. */
const CHORD_FT = 1 / 24;

/** The piece as a line on the ground, ends on its stakes. */
export function pieceLine(piece: OutlinePiece, at: Places): Point[] {
  if (piece.kind === 'string') return [pointNamed(at, piece.from), pointNamed(at, piece.to)];
  if (piece.kind === 'bend') return bendLine(piece, at);
  const pin = pointNamed(at, piece.pin);
  if (piece.kind === 'circle') {
    const round = pathFlatten([fullCircle(pin, piece.radius.ft)], true, CHORD_FT);
    return [...round, round[0]!];
  }
  const from = pointNamed(at, piece.from);
  const to = pointNamed(at, piece.to);
  const arc = arcBetween(pin, from, to, piece.sweep === 'ccw' ? 1 : -1);
  return [from, ...pathFlatten([{ ...arc, radius: piece.radius.ft }], false, CHORD_FT), to];
}

function bendLine(piece: Extract<OutlinePiece, { kind: 'bend' }>, at: Places): Point[] {
  const [from, to] = [pointNamed(at, piece.from), pointNamed(at, piece.to)];
  const arc = bendArc(from, to, piece.offset.ft, piece.side);
  return [from, ...pathFlatten([arc], false, CHORD_FT), to];
}

/** Everything drawn of the outline, as lines on the ground. */
export const outlineLines = (stakes: StakePlan, at: Places): Point[][] =>
  stakes.contours.flatMap((contour) => contour.pieces.map((piece) => pieceLine(piece, at)));

/** The outline's inside in grey, even-odd over all contours. */
export function outlineFill(stakes: StakePlan, at: Places, frame: ViewFrame): Mark {
  const rings = stakes.contours.map((contour) =>
    contour.pieces.flatMap((piece) => pieceLine(piece, at).slice(0, -1).map(frame.toPaper)),
  );
  return inkFill(rings, LETTER_GREY);
}

export function outlineMarks(stakes: StakePlan, at: Places, frame: ViewFrame): Mark[] {
  const pieces = stakes.contours.flatMap((contour) => contour.pieces);
  const radii = pieces.flatMap((piece) => radiusLines(piece, at));
  return [
    ...radii.map((line) => inkLine(line.map(frame.toPaper), FAINT_LINE)),
    ...pieces.map((piece) => pieceMark(piece, pieceLine(piece, at).map(frame.toPaper))),
  ];
}

function pieceMark(piece: OutlinePiece, line: readonly Point[]): Mark {
  if (piece.kind === 'string') return inkLine(line, inkStroke(1.5));
  if (piece.kind === 'bend') return inkLine(line, inkStroke(1.3, 0, BEND_DASH));
  const swing = inkStroke(1.1, 0, SWING_DASH);
  return piece.kind === 'circle' ? inkRing(line.slice(0, -1), swing) : inkLine(line, swing);
}

function radiusLines(piece: OutlinePiece, at: Places): Point[][] {
  if (piece.kind !== 'swing') return [];
  const pin = pointNamed(at, piece.pin);
  return [piece.from, piece.to].map((end) => [pin, pointNamed(at, end)]);
}
