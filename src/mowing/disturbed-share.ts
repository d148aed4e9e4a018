/** What a drum that never lifts does to a graphic in its turns: the share left in a wrong lay. */
import { bearingDifference, vectorBearing } from '../geometry/angle';
import { boxGrow, type Box } from '../geometry/box';
import { fillCells, type CellGrid } from '../geometry/fill-cells';
import { pointSubtract } from '../geometry/point';
import { regionBox } from '../geometry/region';
import type { Design } from '../design/model';
import type { Leg } from './model';
import { stampPiece } from './stamp-piece';

/** Cells of half a foot: a share of a few per cent needs no finer. */
const CELL = 0.5;
/** A lay this far off the mown one (degrees) shows. */
const SHOWS_DEG = 45;

interface Grid extends CellGrid {
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
  const inside = fillCells(design.graphic, grid);
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
  return { minX: box.minX, minY: box.minY, cell: CELL, columns, rows, mown, last: mown.slice() };
}

function stampLeg(grid: Grid, leg: Leg): void {
  for (let i = 1; i < leg.points.length; i++) {
    const [a, b] = [leg.points[i - 1]!, leg.points[i]!];
    const bearing = vectorBearing(pointSubtract(b, a));
    stampPiece(grid, a, b, leg.widthFt / 2, (cell) => {
      grid.last[cell] = bearing;
      if (leg.kind === 'mow') grid.mown[cell] = bearing;
    });
  }
}
