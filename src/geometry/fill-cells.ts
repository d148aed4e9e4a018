/** Regions on a grid of square cells. */
import type { Region } from './region';

/** Cells of side `cell`, row by row from the low corner. */
export interface CellGrid {
  readonly minX: number;
  readonly minY: number;
  readonly cell: number;
  readonly columns: number;
  readonly rows: number;
}

/** 1 for every cell whose centre lies in the region, by even-odd scan lines through the centres. */
export function fillCells(region: Region, grid: CellGrid): Uint8Array {
  const { minX, cell, columns, rows } = grid;
  const out = new Uint8Array(columns * rows);
  rowCrossings(region, grid).forEach((xs, r) => {
    xs.sort((a, b) => a - b);
    for (let i = 0; i + 1 < xs.length; i += 2) {
      const from = Math.max(0, Math.ceil((xs[i]! - minX) / cell - 0.5));
      const to = Math.min(columns - 1, Math.floor((xs[i + 1]! - minX) / cell - 0.5));
      if (from <= to) out.fill(1, r * columns + from, r * columns + to + 1);
    }
  });
  return out;
}

/** Where each row's centre line crosses the region's edges. */
function rowCrossings(region: Region, { minY, cell, rows }: CellGrid): number[][] {
  const crossings: number[][] = Array.from({ length: rows }, () => []);
  for (const ring of region) {
    ring.forEach((a, i) => {
      const b = ring[(i + 1) % ring.length]!;
      const low = Math.max(0, Math.floor((Math.min(a.y, b.y) - minY) / cell - 0.5));
      const high = Math.min(rows - 1, Math.ceil((Math.max(a.y, b.y) - minY) / cell));
      for (let r = low; r <= high; r++) {
        const y = minY + (r + 0.5) * cell;
        if (a.y > y !== b.y > y) crossings[r]!.push(a.x + ((y - a.y) / (b.y - a.y)) * (b.x - a.x));
      }
    });
  }
  return crossings;
}
