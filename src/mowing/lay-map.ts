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
import type { Patch } from '../design/model';
import { stampPiece } from './stamp-piece';
import type { Swath } from './swath-model';

/** Feet along a way that go against the lay of one patch. */
export interface Against {
  readonly patch: string;
  readonly feet: Feet;
}

export interface LayMap {
  /** By patch, as if every patch were finished. */
  readonly against: (way: Polyline) => readonly Against[];
}

/** Cells, and steps along a way, of a foot. */
const CELL = 1;

/** Patches with the lay that their own swaths give them, the last one of a place counting. */
export function mapLays(patches: readonly Patch[], swaths: readonly Swath[]): LayMap {
  const box = boxOfPoints(patches.flatMap((p) => p.region.flat()));
  if (!box) return { against: () => [] };
  const columns = Math.ceil((box.maxX - box.minX) / CELL) + 1;
  const rows = Math.ceil((box.maxY - box.minY) / CELL) + 1;
  const grid = { minX: box.minX, minY: box.minY, cell: CELL, columns, rows };
  const owner = new Int32Array(columns * rows).fill(-1);
  patches.forEach((patch, k) => {
    fillCells(patch.region, grid).forEach((inside, cell) => {
      if (inside) owner[cell] = k;
    });
  });
  const lay = stampLays(grid, owner, patches, swaths);
  return { against: (way) => sumAgainst(way, grid, owner, lay, patches) };
}

/** Unit vectors, two numbers a cell; 0, 0 where no swath of the cell's own patch goes. */
function stampLays(
  grid: CellGrid,
  owner: Int32Array,
  patches: readonly Patch[],
  swaths: readonly Swath[],
): Float32Array {
  const lay = new Float32Array(2 * owner.length);
  const numbers = new Map(patches.map((p, k) => [p.id, k]));
  for (const { line, patch, widthFt } of [...swaths].sort((a, b) => a.group - b.group)) {
    const own = numbers.get(patch);
    line.slice(1).forEach((b, i) => {
      const a = line[i]!;
      const length = pointDistance(a, b);
      if (own === undefined || length === 0) return;
      const [x, y] = [(b.x - a.x) / length, (b.y - a.y) / length];
      stampPiece(grid, a, b, widthFt / 2, (cell) => {
        if (owner[cell] === own) lay.set([x, y], 2 * cell);
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
  patches: readonly Patch[],
): Against[] {
  const feet = new Map<number, Feet>();
  way.slice(1).forEach((b, i) => {
    const a = way[i]!;
    const length = pointDistance(a, b);
    const steps = Math.ceil(length / CELL);
    const along = pointSubtract(b, a);
    for (let k = 0; k < steps; k++) {
      const cell = cellAt(grid, pointLerp(a, b, (k + 0.5) / steps));
      const patch = cell < 0 ? -1 : owner[cell]!;
      if (patch < 0 || along.x * lay[2 * cell]! + along.y * lay[2 * cell + 1]! >= 0) continue;
      feet.set(patch, (feet.get(patch) ?? 0) + length / steps);
    }
  });
  return [...feet].map(([patch, sum]) => ({ patch: patches[patch]!.id, feet: sum }));
}

function cellAt({ minX, minY, cell, columns, rows }: CellGrid, p: Point): number {
  const [column, row] = [Math.floor((p.x - minX) / cell), Math.floor((p.y - minY) / cell)];
  const inside = column >= 0 && row >= 0 && column < columns && row < rows;
  return inside ? row * columns + column : -1;
}
