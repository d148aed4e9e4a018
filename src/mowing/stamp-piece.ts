/** Cells that a straight piece of a pass goes over. */
import type { CellGrid } from '../geometry/fill-cells';
import { pointSubtract, vectorDot, vectorLength, type Point } from '../geometry/point';

/** Calls `mark` with every cell whose centre lies within `half` of the piece from a to b, square ends. */
export function stampPiece(
  grid: CellGrid,
  a: Point,
  b: Point,
  half: number,
  mark: (cell: number) => void,
): void {
  const { minX, minY, cell, columns, rows } = grid;
  const along = pointSubtract(b, a);
  const length = vectorLength(along);
  if (length === 0) return;
  const column = (x: number) => Math.floor((x - minX) / cell);
  const row = (y: number) => Math.floor((y - minY) / cell);
  const [lowX, highX] = [Math.min(a.x, a.x + along.x) - half, Math.max(a.x, a.x + along.x) + half];
  const [lowY, highY] = [Math.min(a.y, a.y + along.y) - half, Math.max(a.y, a.y + along.y) + half];
  for (let r = Math.max(0, row(lowY)); r <= Math.min(rows - 1, row(highY)); r++) {
    for (let c = Math.max(0, column(lowX)); c <= Math.min(columns - 1, column(highX)); c++) {
      const p = { x: minX + (c + 0.5) * cell, y: minY + (r + 0.5) * cell };
      const d = pointSubtract(p, a);
      const forward = vectorDot(d, along) / length;
      const aside = Math.abs(d.x * along.y - d.y * along.x) / length;
      if (forward >= 0 && forward <= length && aside <= half) mark(r * columns + c);
    }
  }
}
