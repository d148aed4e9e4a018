/** Straight pieces of many lines, found by place. */
import type { Box } from '../geometry/box';
import type { Point } from '../geometry/point';
import type { Polyline } from '../geometry/polyline';

export type Piece = readonly [Point, Point];

/** Cell size in points: about one label. */
const CELL = 20;

export interface SegmentGrid {
  /** How many pieces pass a test, of those whose cells meet the box (each is asked once). */
  readonly count: (box: Box, test: (piece: Piece) => boolean) => number;
}

/** An index of the pieces that meet `window`. */
export function segmentGrid(lines: readonly Polyline[], window: Box): SegmentGrid {
  const pieces = lines.flatMap((line) =>
    piecesOf(line).filter((piece) => boxesTouch(pieceBox(piece), window)),
  );
  const cells = new Map<number, number[]>();
  pieces.forEach((piece, i) => {
    for (const key of keysOf(pieceBox(piece))) {
      const cell = cells.get(key);
      if (cell) cell.push(i);
      else cells.set(key, [i]);
    }
  });
  const asked = new Uint32Array(pieces.length);
  let round = 0;
  const count = (box: Box, test: (piece: Piece) => boolean): number => {
    round++;
    let passed = 0;
    for (const key of keysOf(box)) {
      for (const i of cells.get(key) ?? []) {
        if (asked[i] === round) continue;
        asked[i] = round;
        if (test(pieces[i]!)) passed++;
      }
    }
    return passed;
  };
  return { count };
}

const boxesTouch = (a: Box, b: Box): boolean =>
  a.minX <= b.maxX && b.minX <= a.maxX && a.minY <= b.maxY && b.minY <= a.maxY;

/** Pieces no longer than a cell, so that a long line does not fill a wide block of cells. */
function piecesOf(line: Polyline): Piece[] {
  return line.slice(1).flatMap((to, i) => {
    const from = line[i]!;
    const count = Math.max(1, Math.ceil(Math.hypot(to.x - from.x, to.y - from.y) / CELL));
    const at = (k: number): Point => ({
      x: from.x + ((to.x - from.x) * k) / count,
      y: from.y + ((to.y - from.y) * k) / count,
    });
    return Array.from({ length: count }, (_, k): Piece => [at(k), at(k + 1)]);
  });
}

const pieceBox = ([a, b]: Piece): Box => ({
  minX: Math.min(a.x, b.x),
  maxX: Math.max(a.x, b.x),
  minY: Math.min(a.y, b.y),
  maxY: Math.max(a.y, b.y),
});

/** Columns of cells told apart by one number: more than any sheet has. */
const STRIDE = 65536;

function keysOf(box: Box): number[] {
  const keys: number[] = [];
  for (let i = Math.floor(box.minX / CELL); i <= Math.floor(box.maxX / CELL); i++)
    for (let j = Math.floor(box.minY / CELL); j <= Math.floor(box.maxY / CELL); j++)
      keys.push(i * STRIDE + j);
  return keys;
}
