/**
 * A grid of small cells over a shape in the lay frame, to plan what is still to be cut. Only for
 * choosing swaths: areas and patches are cut exactly afterwards.
 */
import type { Feet } from '../base/units';
import { boxGrow } from '../geometry/box';
import { pointDistance } from '../geometry/point';
import type { Polyline } from '../geometry/polyline';
import { regionBox, type Region } from '../geometry/region';

export interface CoverGrid {
  readonly minX: Feet;
  readonly minY: Feet;
  readonly dx: Feet;
  readonly dy: Feet;
  readonly columns: number;
  readonly rows: number;
  /** 1: inside the shape and not cut yet. Column by column, so that a lane's cells lie together. */
  readonly open: Uint8Array;
}

/** Cells whose middle lies in the region (lay frame) start open. */
export function openGrid(region: Region, dx: Feet, dy: Feet): CoverGrid {
  const box = boxGrow(regionBox(region) ?? { minX: 0, minY: 0, maxX: 0, maxY: 0 }, dx * 2);
  const columns = Math.ceil((box.maxX - box.minX) / dx) + 10;
  const rows = Math.ceil((box.maxY - box.minY) / dy);
  const grid = { minX: box.minX, minY: box.minY, dx, dy, columns, rows };
  const open = new Uint8Array(columns * rows);
  fillColumns(region, grid, (c, from, to) => open.fill(1, c * rows + from, c * rows + to));
  return { ...grid, open };
}

type Frame = Omit<CoverGrid, 'open'>;

/** Even-odd runs of cells [from, to) in every column. */
function fillColumns(
  region: Region,
  g: Frame,
  run: (column: number, from: number, to: number) => void,
): void {
  const crossings: number[][] = Array.from({ length: g.columns }, () => []);
  for (const ring of region) {
    ring.forEach((b, i) => {
      const a = ring[(i + ring.length - 1) % ring.length]!;
      const first = Math.max(0, Math.ceil((Math.min(a.x, b.x) - g.minX) / g.dx - 0.5));
      const last = Math.min(g.columns - 1, Math.floor((Math.max(a.x, b.x) - g.minX) / g.dx - 0.5));
      for (let c = first; c <= last; c++) {
        const x = g.minX + (c + 0.5) * g.dx;
        if (a.x > x !== b.x > x) {
          crossings[c]!.push(a.y + ((x - a.x) / (b.x - a.x)) * (b.y - a.y));
        }
      }
    });
  }
  crossings.forEach((ys, c) => {
    ys.sort((p, q) => p - q);
    for (let i = 0; i + 1 < ys.length; i += 2) {
      const [from, to] = rowSpan(g, ys[i]!, ys[i + 1]!);
      if (from < to) run(c, from, to);
    }
  });
}

/** Rows whose middle lies between two y. */
export function rowSpan(g: Frame, low: Feet, high: Feet): [number, number] {
  const from = Math.max(0, Math.ceil((low - g.minY) / g.dy - 0.5));
  const to = Math.min(g.rows, Math.floor((high - g.minY) / g.dy - 0.5) + 1);
  return [from, to];
}

/** Visits every cell under a swath (a rectangle per piece of its line) once per piece. */
function sweepCells(g: CoverGrid, line: Polyline, half: Feet, visit: (cell: number) => void): void {
  for (let i = 1; i < line.length; i++) {
    const a = line[i - 1]!;
    const b = line[i]!;
    const length = pointDistance(a, b);
    if (length === 0) continue;
    const nx = (-(b.y - a.y) / length) * half;
    const ny = ((b.x - a.x) / length) * half;
    const rectangle = [
      { x: a.x + nx, y: a.y + ny },
      { x: b.x + nx, y: b.y + ny },
      { x: b.x - nx, y: b.y - ny },
      { x: a.x - nx, y: a.y - ny },
    ];
    convexCells(g, rectangle, visit);
  }
}

function convexCells(g: CoverGrid, shape: Polyline, visit: (cell: number) => void): void {
  const xs = shape.map((p) => p.x);
  const first = Math.max(0, Math.ceil((Math.min(...xs) - g.minX) / g.dx - 0.5));
  const last = Math.min(g.columns - 1, Math.floor((Math.max(...xs) - g.minX) / g.dx - 0.5));
  for (let c = first; c <= last; c++) {
    const x = g.minX + (c + 0.5) * g.dx;
    let low = Infinity;
    let high = -Infinity;
    shape.forEach((p, i) => {
      const q = shape[(i + 1) % shape.length]!;
      if (p.x > x === q.x > x) return;
      const y = p.y + ((x - p.x) / (q.x - p.x)) * (q.y - p.y);
      low = Math.min(low, y);
      high = Math.max(high, y);
    });
    if (low > high) continue;
    const [from, to] = rowSpan(g, low, high);
    for (let r = from; r < to; r++) visit(c * g.rows + r);
  }
}

/** Area still open under a swath, square feet. */
export function openUnder(g: CoverGrid, line: Polyline, half: Feet): number {
  const seen = new Set<number>();
  sweepCells(g, line, half, (cell) => {
    if (g.open[cell]) seen.add(cell);
  });
  return seen.size * g.dx * g.dy;
}

/** Marks everything under a swath as cut; changes the grid. */
export function markCut(g: CoverGrid, line: Polyline, half: Feet): void {
  sweepCells(g, line, half, (cell) => {
    g.open[cell] = 0;
  });
}
