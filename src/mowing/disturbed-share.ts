/** What a drum that never lifts does to a graphic in its turns: the share left in a wrong lay. */
import { bearingDifference, vectorBearing } from '../geometry/angle';
import { boxGrow, type Box } from '../geometry/box';
import { fillCells } from '../geometry/fill-cells';
import { pointSubtract, vectorDot, vectorLength, type Point } from '../geometry/point';
import { regionBox } from '../geometry/region';
import type { Design } from '../design/model';
import type { Leg } from './model';

/** Cells of half a foot: a share of a few per cent needs no finer. */
const CELL = 0.5;
/** A lay this far off the mown one (degrees) shows. */
const SHOWS_DEG = 45;

interface Grid {
  readonly box: Box;
  readonly columns: number;
  readonly rows: number;
  readonly mown: Float32Array;
  readonly last: Float32Array;
}

/**
 * Share of the graphic, 0 to 1, whose last lay is more than 45° off the lay that a pass gave it. 0
 * when no leg lays the grass with the reels up.
 */
export function disturbedShare(design: Design, legs: readonly Leg[]): number {
  const box = regionBox(design.graphic);
  if (!box || !legs.some((leg) => leg.lays && leg.kind !== 'mow')) return 0;
  const grid = makeGrid(boxGrow(box, CELL));
  for (const leg of legs) if (leg.lays) stampLeg(grid, leg);
  const { minX, minY } = grid.box;
  const inside = fillCells(design.graphic, { ...grid, minX, minY, cell: CELL });
  let cells = 0;
  let wrong = 0;
  inside.forEach((isInside, i) => {
    if (isInside === 0) return;
    cells++;
    const mown = grid.mown[i]!;
    if (mown >= 0 && bearingDifference(mown, grid.last[i]!) > SHOWS_DEG) wrong++;
  });
  return cells === 0 ? 0 : wrong / cells;
}

function makeGrid(box: Box): Grid {
  const columns = Math.ceil((box.maxX - box.minX) / CELL);
  const rows = Math.ceil((box.maxY - box.minY) / CELL);
  const mown = new Float32Array(columns * rows).fill(-1);
  return { box, columns, rows, mown, last: mown.slice() };
}

function stampLeg(grid: Grid, leg: Leg): void {
  for (let i = 1; i < leg.points.length; i++) {
    const [a, b] = [leg.points[i - 1]!, leg.points[i]!];
    const along = pointSubtract(b, a);
    const bearing = vectorBearing(along);
    stampPiece(grid, a, along, leg.widthFt / 2, (cell) => {
      grid.last[cell] = bearing;
      if (leg.kind === 'mow') grid.mown[cell] = bearing;
    });
  }
}

function stampPiece(
  grid: Grid,
  a: Point,
  along: Point,
  half: number,
  mark: (cell: number) => void,
): void {
  const length = vectorLength(along);
  if (length === 0) return;
  const column = (x: number) => Math.floor((x - grid.box.minX) / CELL);
  const row = (y: number) => Math.floor((y - grid.box.minY) / CELL);
  const [lowX, highX] = [Math.min(a.x, a.x + along.x) - half, Math.max(a.x, a.x + along.x) + half];
  const [lowY, highY] = [Math.min(a.y, a.y + along.y) - half, Math.max(a.y, a.y + along.y) + half];
  for (let r = Math.max(0, row(lowY)); r <= Math.min(grid.rows - 1, row(highY)); r++) {
    for (let c = Math.max(0, column(lowX)); c <= Math.min(grid.columns - 1, column(highX)); c++) {
      const p = { x: grid.box.minX + (c + 0.5) * CELL, y: grid.box.minY + (r + 0.5) * CELL };
      const d = pointSubtract(p, a);
      const forward = vectorDot(d, along) / length;
      const aside = Math.abs(d.x * along.y - d.y * along.x) / length;
      if (forward >= 0 && forward <= length && aside <= half) mark(r * grid.columns + c);
    }
  }
}
