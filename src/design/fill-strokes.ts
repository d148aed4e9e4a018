/**
 * Straight swaths with the lay that fill what the outline's swaths leave. Lanes may stand anywhere
 * across the lay; each next one is where it cuts most that is still open (greedy cover), so that few
 * are needed. A swath runs only where its whole width stays within the reach of the tool.
 */
import type { Feet } from '../base/units';
import type { Polyline } from '../geometry/polyline';
import type { Region } from '../geometry/region';
import { rowSpan, type CoverGrid } from './cover-grid';
import { scanEdges, scanLane, type Interval } from './scan-lane';
import type { NarrowCut } from './outline-strokes';

/** Lanes stand on a raster of this many steps to the swath. */
export const LANE_STEPS = 8;
/** A swath that cuts less than this (square feet) is not worth its turn. */
const WORTH = 0.6;
const SHORTEST: Feet = 1.5;
/** Grass already cut for longer than this between two open stretches: two swaths, not one. */
const GAP: Feet = 6;
const PAD: Feet = 0.35;
const SIDE_GUARD: Feet = 0.005;

interface Candidate {
  readonly column: number;
  readonly free: Interval;
  gain: number;
  from: number;
  to: number;
}

/** Lines in the lay frame, from the home end of the lay on; the grid's cells are `LANE_STEPS` to a swath. */
export function fillStrokes(allowed: Region, grid: CoverGrid, cut: NarrowCut): Polyline[] {
  let queue = candidates(allowed, grid, cut);
  const out: Polyline[] = [];
  const cell = grid.dx * grid.dy;
  queue.forEach((c) => measure(c, grid));
  queue = queue.filter((c) => c.gain * cell >= WORTH);
  while (queue.length > 0) {
    const best = queue.reduce((a, b) => (b.gain > a.gain ? b : a));
    out.push(take(best, grid));
    for (const c of queue) {
      if (Math.abs(c.column - best.column) < LANE_STEPS) measure(c, grid);
    }
    queue = queue.filter((c) => c.gain * cell >= WORTH);
  }
  return out.sort((a, b) => a[0]!.x - b[0]!.x || a[0]!.y - b[0]!.y);
}

function candidates(allowed: Region, grid: CoverGrid, cut: NarrowCut): Candidate[] {
  const edges = scanEdges(allowed);
  const half = cut.cutFt / 2 - SIDE_GUARD;
  const out: Candidate[] = [];
  for (let column = 0; column + LANE_STEPS <= grid.columns; column++) {
    const x = laneMiddle(grid, column);
    for (const free of scanLane(edges, x - half, x + half).inside) {
      if (free.to - free.from >= SHORTEST) out.push({ column, free, gain: 0, from: 0, to: 0 });
    }
  }
  return out;
}

const laneMiddle = (grid: CoverGrid, column: number): Feet =>
  grid.minX + (column + LANE_STEPS / 2) * grid.dx;

/** The best stretch of a candidate: most open cells without a long gap; rows [from, to). */
function measure(c: Candidate, grid: CoverGrid): void {
  const [low, high] = rowSpan(grid, c.free.from, c.free.to);
  const gapRows = GAP / grid.dy;
  c.gain = 0;
  let run = { gain: 0, from: 0, to: 0 };
  for (let r = low; r < high; r++) {
    let open = 0;
    for (let k = 0; k < LANE_STEPS; k++) open += grid.open[(c.column + k) * grid.rows + r] ?? 0;
    if (open === 0) continue;
    if (run.gain > 0 && r - run.to > gapRows) run = { gain: 0, from: r, to: r };
    if (run.gain === 0) run = { gain: 0, from: r, to: r };
    run = { gain: run.gain + open, from: run.from, to: r + 1 };
    if (run.gain > c.gain) Object.assign(c, run);
  }
}

/** Cuts the stretch: marks its cells and returns its line, a little longer than what is open. */
function take(c: Candidate, grid: CoverGrid): Polyline {
  const x = laneMiddle(grid, c.column);
  const low = Math.max(c.free.from, grid.minY + c.from * grid.dy - PAD);
  const high = Math.min(c.free.to, grid.minY + c.to * grid.dy + PAD);
  const middle = (low + high) / 2;
  const half = Math.max((high - low) / 2, SHORTEST / 2);
  const from = Math.max(c.free.from, middle - half);
  const to = Math.min(c.free.to, middle + half);
  const [first, last] = rowSpan(grid, from, to);
  for (let k = 0; k < LANE_STEPS; k++) {
    const start = (c.column + k) * grid.rows;
    grid.open.fill(0, start + first, start + last);
  }
  return [
    { x, y: from },
    { x, y: to },
  ];
}
