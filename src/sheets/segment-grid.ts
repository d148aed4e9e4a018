/** Straight pieces of many lines, found by place. */
import type { Box } from '../geometry/box';
import type { Point } from '../geometry/point';
import type { Polyline } from '../geometry/polyline';

export type Piece = readonly [Point, Point];

/** Cell size in points: about one label. */
const CELL = 20;

/** An index whose `near` gives every piece whose cells meet the box (some may still miss it). */
export function segmentGrid(lines: readonly Polyline[]) {
  const cells = new Map<number, Set<Piece>>();
  for (const piece of lines.flatMap(piecesOf)) {
    for (const key of keysOf(pieceBox(piece))) {
      const cell = cells.get(key) ?? new Set<Piece>();
      cell.add(piece);
      cells.set(key, cell);
    }
  }
  const near = (box: Box): Piece[] => {
    const found = new Set<Piece>();
    for (const key of keysOf(box)) for (const piece of cells.get(key) ?? []) found.add(piece);
    return [...found];
  };
  return { near };
}

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
