/**
 * Which patch lies where and which way its blades lean once it is finished, to tell how far a machine
 * drives over finished grass against its lay. The middle of the machine counts, not its wheels, and
 * the way it moves, not the way it faces; more than 90 degrees off the lay is against it.
 */
import type { Feet } from '../base/units';
import { boxOfPoints } from '../geometry/box';
import { fillCells, type CellGrid } from '../geometry/fill-cells';
import { pointDistance, pointLerp, pointSubtract, type Point } from '../geometry/point';
import type { Polyline } from '../geometry/polyline';
import { regionBox, type Region } from '../geometry/region';
import type { Patch } from '../design/model';
import { stampPiece } from './stamp-piece';
import type { Swath } from './swath-model';

/** Feet along a way that go against the lay of one patch, or of the bands' patches that one band finishes. */
export interface Against {
  readonly patch: string;
  readonly feet: Feet;
}

export interface FinishedLays {
  /** By patch, as if every patch were finished. */
  readonly against: (way: Polyline) => readonly Against[];
}

/** Cells, and steps along a way, of a foot. */
const CELL = 1;

/** Patches with the lay that their own swaths give them, the last one of a place counting. */
export function mapFinishedLays(patches: readonly Patch[], swaths: readonly Swath[]): FinishedLays {
  const box = boxOfPoints(patches.flatMap((p) => p.region.flat()));
  if (!box) return { against: () => [] };
  const columns = Math.ceil((box.maxX - box.minX) / CELL) + 1;
  const rows = Math.ceil((box.maxY - box.minY) / CELL) + 1;
  const grid = { minX: box.minX, minY: box.minY, cell: CELL, columns, rows };
  const owner = new Int32Array(columns * rows).fill(-1);
  patches.forEach((patch, k) => markOwner(grid, owner, patch.region, k));
  const names = patches.map(finishedBy);
  const lay = stampLays(grid, owner, names, swaths);
  return { against: (way) => sumAgainst(way, grid, owner, lay, names) };
}

/** What the last swaths over a patch are laid for: its last band, or the patch itself. */
const finishedBy = (patch: Patch): string => patch.bands?.at(-1) ?? patch.id;

/** Marks the grid's cells in a region, looking at the region's own box alone. */
function markOwner(grid: CellGrid, owner: Int32Array, region: Region, mark: number): void {
  const box = regionBox(region);
  if (!box) return;
  const column = Math.max(0, Math.floor((box.minX - grid.minX) / grid.cell));
  const row = Math.max(0, Math.floor((box.minY - grid.minY) / grid.cell));
  const part = {
    minX: grid.minX + column * grid.cell,
    minY: grid.minY + row * grid.cell,
    cell: grid.cell,
    columns: Math.min(grid.columns - column, Math.ceil((box.maxX - box.minX) / grid.cell) + 2),
    rows: Math.min(grid.rows - row, Math.ceil((box.maxY - box.minY) / grid.cell) + 2),
  };
  fillCells(region, part).forEach((inside, i) => {
    if (!inside) return;
    const [c, r] = [i % part.columns, Math.floor(i / part.columns)];
    owner[(r + row) * grid.columns + c + column] = mark;
  });
}

/** Unit vectors, two numbers a cell; 0, 0 where no swath of the cell's own patch goes. */
function stampLays(
  grid: CellGrid,
  owner: Int32Array,
  names: readonly string[],
  swaths: readonly Swath[],
): Float32Array {
  const lay = new Float32Array(2 * owner.length);
  const known = new Set(names);
  for (const { line, patch, widthFt } of [...swaths].sort((a, b) => a.group - b.group)) {
    line.slice(1).forEach((b, i) => {
      const a = line[i]!;
      const length = pointDistance(a, b);
      if (!known.has(patch) || length === 0) return;
      const [x, y] = [(b.x - a.x) / length, (b.y - a.y) / length];
      stampPiece(grid, a, b, widthFt / 2, (cell) => {
        const own = owner[cell]!;
        if (own >= 0 && names[own] === patch) lay.set([x, y], 2 * cell);
      });
    });
  }
  return lay;
}

function sumAgainst(
  way: Polyline,
  grid: CellGrid,
  owner: Int32Array,
  lay: Float32Array,
  names: readonly string[],
): Against[] {
  const feet = new Map<string, Feet>();
  way.slice(1).forEach((b, i) => {
    const a = way[i]!;
    const length = pointDistance(a, b);
    const steps = Math.ceil(length / CELL);
    const along = pointSubtract(b, a);
    for (let k = 0; k < steps; k++) {
      const cell = cellAt(grid, pointLerp(a, b, (k + 0.5) / steps));
      const patch = cell < 0 ? -1 : owner[cell]!;
      if (patch < 0 || along.x * lay[2 * cell]! + along.y * lay[2 * cell + 1]! >= 0) continue;
      const name = names[patch]!;
      feet.set(name, (feet.get(name) ?? 0) + length / steps);
    }
  });
  return [...feet].map(([patch, sum]) => ({ patch, feet: sum }));
}

function cellAt({ minX, minY, cell, columns, rows }: CellGrid, p: Point): number {
  const [column, row] = [Math.floor((p.x - minX) / cell), Math.floor((p.y - minY) / cell)];
  const inside = column >= 0 && row >= 0 && column < columns && row < rows;
  return inside ? row * columns + column : -1;
}
