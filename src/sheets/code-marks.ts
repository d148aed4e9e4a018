/** A printed code (QR, ISO/IEC 18004) as one filled mark: a phone's camera reads it into an address. */
import qrcode from 'qrcode-generator';
import type { PaperPoints } from '../base/units';
import type { Point } from '../geometry/point';
import { inkFill } from './ink';
import { BLACK, type FillMark } from './marks';

/** Modules kept white on each side. Source: ISO/IEC 18004, quiet zone of a QR code. */
const QUIET = 4;
/** Level M: about 15 % of it may be soiled. Source: ISO/IEC 18004. */
const LEVEL = 'M';

/**
 * The code of `text` in a square of side `size` at (x, y), quiet zone included; no module is larger
 * than `largest`, so that short texts do not look like signs. Text of up to 2,000 characters.
 */
export function codeMark(
  text: string,
  x: number,
  y: number,
  size: PaperPoints,
  largest: PaperPoints,
): FillMark {
  const code = qrcode(0, LEVEL);
  code.addData(text, 'Byte');
  code.make();
  const count = code.getModuleCount();
  const module = Math.min(largest, size / (count + 2 * QUIET));
  const inset = (size - count * module) / 2;
  const rings = traceCells(count, (row, column) => code.isDark(row, column));
  const place = (p: Point): Point => ({ x: x + inset + p.x * module, y: y + inset + p.y * module });
  return inkFill(
    rings.map((ring) => ring.map(place)),
    BLACK,
  );
}

/**
 * The outline of all dark cells of a square grid, even-odd: cells that touch become one shape, so that
 * no light shows between them.
 */
function traceCells(count: number, isDark: (row: number, column: number) => boolean): Point[][] {
  const ends = new Map<number, number[]>();
  const side = count + 1;
  const addEdge = (from: number, to: number): void => {
    ends.set(from, [...(ends.get(from) ?? []), to]);
  };
  const dark = (row: number, column: number): boolean =>
    row >= 0 && column >= 0 && row < count && column < count && isDark(row, column);
  for (let row = 0; row < count; row++) {
    for (let column = 0; column < count; column++) {
      if (!dark(row, column)) continue;
      const at = row * side + column;
      if (!dark(row - 1, column)) addEdge(at, at + 1);
      if (!dark(row, column + 1)) addEdge(at + 1, at + 1 + side);
      if (!dark(row + 1, column)) addEdge(at + 1 + side, at + side);
      if (!dark(row, column - 1)) addEdge(at + side, at);
    }
  }
  return chainEdges(ends).map((ring) =>
    ring.map((corner) => ({ x: corner % side, y: Math.floor(corner / side) })),
  );
}

/** Closed rings of corners, each edge used once. */
function chainEdges(ends: Map<number, number[]>): number[][] {
  const rings: number[][] = [];
  for (const [start, list] of ends) {
    while (list.length > 0) {
      const ring: number[] = [];
      let at = start;
      do {
        ring.push(at);
        at = ends.get(at)!.pop()!;
      } while (at !== start);
      rings.push(ring);
    }
  }
  return rings;
}
