/** What a replayed route does to the grass, counted cell by cell. Shares no code with the engine. */
import {
  apartDeg,
  bodyHits,
  cornersOf,
  distanceTo,
  gridOver,
  maskOf,
  openingOf,
  posesOf,
  replay,
  wantedBearing,
  type BodyFigures,
  type DesignFile,
  type DesignPatch,
  type Grid,
  type Pair,
  type RouteLeg,
} from './raster';

export interface Window {
  readonly low: Pair;
  readonly high: Pair;
}

export interface PatchCount {
  readonly id: string;
  readonly kind: string;
  readonly cells: number;
  readonly covered: number;
  readonly openCells: number;
  readonly openCovered: number;
  readonly laid: number;
  readonly innerCells: number;
  readonly innerLaid: number;
}

/** A lay within this of the wanted one is the wanted one, degrees. */
const SAME_LAY_DEG = 20;

/**
 * Counts every patch inside the window: covered cells, covered cells of the opening by the cutting
 * width, cells in the wanted lay, and those farther than one overlap from the patch's edge.
 */
export function countPatches(
  design: DesignFile,
  legs: readonly RouteLeg[],
  window: Window,
  cell: number,
  figures: (patch: DesignPatch) => { readonly cutFt: number; readonly overlapFt: number },
): PatchCount[] {
  const grid = gridOver(window.low, window.high, cell);
  const near = legs.filter((leg) => touches(leg, window));
  const { cut, bearing } = replay(grid, near);
  return design.patches.flatMap((patch) => {
    const { cutFt, overlapFt } = figures(patch);
    const [low, high] = cornersOf(patch.rings.flat(), cutFt);
    const sub = subGrid(grid, low, high, cutFt);
    if (!sub) return [];
    const mask = maskOf(sub.grid, patch.rings);
    const opened = openingOf(sub.grid, mask, cutFt);
    const depth = distanceTo(sub.grid, mask, 0);
    const wanted = wantedBearing(design, patch);
    const count = [0, 0, 0, 0, 0, 0, 0] as [number, number, number, number, number, number, number];
    for (let r = 0; r < sub.grid.rows; r++) {
      for (let c = 0; c < sub.grid.columns; c++) {
        const i = r * sub.grid.columns + c;
        const [gc, gr] = [c + sub.column, r + sub.row];
        const inside = gc >= 0 && gr >= 0 && gc < grid.columns && gr < grid.rows;
        if (!mask[i] || !inside) continue;
        const g = gr * grid.columns + gc;
        const at: Pair = [grid.x0 + (gc + 0.5) * cell, grid.y0 + (gr + 0.5) * cell];
        const right =
          cut[g] === 1 && wanted !== null && apartDeg(wanted(at), bearing[g]!) <= SAME_LAY_DEG;
        count[0]++;
        if (cut[g]) count[1]++;
        if (opened[i]) count[2]++;
        if (opened[i] && cut[g]) count[3]++;
        if (right) count[4]++;
        if (depth[i]! > overlapFt) count[5]++;
        if (depth[i]! > overlapFt && right) count[6]++;
      }
    }
    const [cells, covered, openCells, openCovered, laid, innerCells, innerLaid] = count;
    const sums = { cells, covered, openCells, openCovered, laid, innerCells, innerLaid };
    return cells === 0 ? [] : [{ id: patch.id, kind: patch.kind, ...sums }];
  });
}

function touches(leg: RouteLeg, { low, high }: Window): boolean {
  const [a, b] = cornersOf(leg.points, leg.width_ft);
  return a[0] <= high[0] && b[0] >= low[0] && a[1] <= high[1] && b[1] >= low[1];
}

const boxOfGrid = (grid: Grid, by: number): Window => ({
  low: [grid.x0 - by, grid.y0 - by],
  high: [grid.x0 + grid.columns * grid.cell + by, grid.y0 + grid.rows * grid.cell + by],
});

/** The cells of a grid round a patch, wide enough beyond the window for openings to be right in it. */
function subGrid(grid: Grid, low: Pair, high: Pair, margin: number) {
  const pad = Math.ceil((2 * margin) / grid.cell);
  const clampTo = (v: number, most: number) => Math.max(-pad, Math.min(most + pad, v));
  const column = clampTo(Math.floor((low[0] - grid.x0) / grid.cell), grid.columns);
  const row = clampTo(Math.floor((low[1] - grid.y0) / grid.cell), grid.rows);
  const columns = clampTo(Math.ceil((high[0] - grid.x0) / grid.cell), grid.columns) - column;
  const rows = clampTo(Math.ceil((high[1] - grid.y0) / grid.cell), grid.rows) - row;
  const outside = column + columns <= 0 || row + rows <= 0;
  if (columns <= 0 || rows <= 0 || outside || column >= grid.columns || row >= grid.rows)
    return null;
  const x0 = grid.x0 + column * grid.cell;
  const y0 = grid.y0 + row * grid.cell;
  return { grid: { x0, y0, cell: grid.cell, columns, rows }, column, row };
}

const GRASS = ['outfield-grass', 'infield-grass', 'foul-grass'];
const FORBIDDEN = ['skin', 'mound', 'home-circle', 'infield-grass'];

/** Rings of the kinds of surface named. */
const ringsOf = (design: DesignFile, kinds: readonly string[]) =>
  design.surfaces.filter((s) => kinds.includes(s.kind));

/** Mask of several surfaces together. */
function maskOfSurfaces(grid: Grid, design: DesignFile, kinds: readonly string[]): Uint8Array {
  const all = new Uint8Array(grid.columns * grid.rows);
  for (const surface of ringsOf(design, kinds)) {
    maskOf(grid, surface.rings).forEach((m, i) => {
      if (m) all[i] = 1;
    });
  }
  return all;
}

/** Where no body may be: skin, mound, home circle, infield grass, and all beyond fence and wall. */
export function forbiddenMask(
  grid: Grid,
  design: DesignFile,
  keepOuts: readonly (readonly Pair[])[],
): Uint8Array {
  const ground = maskOfSurfaces(
    grid,
    design,
    design.surfaces.map((s) => s.kind),
  );
  const forbidden = maskOfSurfaces(grid, design, FORBIDDEN);
  const out = forbidden.map((f, i) => (f || !ground[i] ? 1 : 0));
  for (const ring of keepOuts) {
    maskOf(grid, [ring]).forEach((m, i) => {
      if (m) out[i] = 1;
    });
  }
  return shrink(grid, out);
}

/** A mask less its outermost cells: what is surely inside whatever the cells' rounding. */
function shrink(grid: Grid, mask: Uint8Array): Uint8Array {
  const depth = distanceTo(grid, mask, 0);
  return mask.map((m, i) => (m && depth[i]! > 1.5 * grid.cell ? 1 : 0));
}

/** Every place where a machine's body stands on forbidden cells, by leg. */
export function findBodyHits(
  grid: Grid,
  forbidden: Uint8Array,
  legs: readonly RouteLeg[],
  bodies: Readonly<Record<string, BodyFigures>>,
): string[] {
  return legs
    .filter((leg) => touches(leg, boxOfGrid(grid, 12)))
    .flatMap((leg) => {
      const body = bodies[leg.machine];
      const hit =
        body && leg.points.length > 1 ? bodyHits(grid, forbidden, leg, body)[0] : undefined;
      return hit
        ? [
            `leg ${leg.seq} ${leg.machine} ${leg.kind} over ${hit.under.map((v) => v.toFixed(1)).join(' ')}`,
          ]
        : [];
    });
}

/** Farthest that reels reach beyond the grass while down, feet. */
export function farthestBeyondGrass(
  grid: Grid,
  design: DesignFile,
  legs: readonly RouteLeg[],
): number {
  const toGrass = distanceTo(grid, maskOfSurfaces(grid, design, GRASS), 1);
  let worst = 0;
  for (const leg of legs) {
    if (leg.reels !== 'down' || !touches(leg, boxOfGrid(grid, 0))) continue;
    for (const { at, ux, uy } of posesOf(leg, grid.cell)) {
      for (const side of [-leg.width_ft / 2, leg.width_ft / 2]) {
        const end: Pair = [at[0] - uy * side, at[1] + ux * side];
        if (!onGrid(grid, end)) continue;
        const c = Math.floor((end[0] - grid.x0) / grid.cell);
        const r = Math.floor((end[1] - grid.y0) / grid.cell);
        worst = Math.max(worst, toGrass[r * grid.columns + c]!);
      }
    }
  }
  return worst;
}

const onGrid = (grid: Grid, [x, y]: Pair): boolean =>
  x >= grid.x0 &&
  y >= grid.y0 &&
  x < grid.x0 + grid.columns * grid.cell &&
  y < grid.y0 + grid.rows * grid.cell;

/** Breaks in the route: legs that do not join, clocks that overlap, pass numbers out of order. */
export function findBreaks(legs: readonly RouteLeg[]): string[] {
  const out: string[] = [];
  for (const machine of new Set(legs.map((leg) => leg.machine))) {
    const own = legs.filter((leg) => leg.machine === machine).sort((a, b) => a.seq - b.seq);
    let highest = 0;
    own.forEach((leg, i) => {
      const before = own[i - 1];
      if (leg.pass !== null && leg.pass !== highest) {
        if (leg.pass !== highest + 1) out.push(`leg ${leg.seq}: pass ${leg.pass} after ${highest}`);
        highest = leg.pass;
      }
      if (!before) return;
      const [x, y] = before.points[before.points.length - 1]!;
      const gap = Math.hypot(leg.points[0]![0] - x, leg.points[0]![1] - y);
      if (gap > 0.01) out.push(`leg ${leg.seq}: ${gap.toFixed(3)} ft from leg ${before.seq}`);
      const late = leg.start_s - before.start_s - before.seconds;
      if (Math.abs(late) > 0.001) out.push(`leg ${leg.seq}: starts ${late.toFixed(3)} s off`);
      out.push(...headingBreak(before, leg));
    });
  }
  return out;
}

/** A machine cannot turn on the spot: headings run on from leg to leg, but for gear changes. */
function headingBreak(before: RouteLeg, leg: RouteLeg): string[] {
  const [a, b] = [headingOf(before, 'end'), headingOf(leg, 'start')];
  const samePass = leg.pass !== null && leg.pass === before.pass;
  if (a === null || b === null || samePass) return [];
  const jump = apartDeg(a, b);
  return jump > 16 ? [`leg ${leg.seq}: heading jumps ${jump.toFixed(0)}° (${leg.kind})`] : [];
}

/** Bearing that the machine faces at an end of a leg; null for a place without a direction. */
function headingOf(leg: RouteLeg, end: 'start' | 'end'): number | null {
  const n = leg.points.length;
  if (n < 2) return null;
  const [a, b] =
    end === 'start' ? [leg.points[0]!, leg.points[1]!] : [leg.points[n - 2]!, leg.points[n - 1]!];
  const facing = leg.gear === 'reverse' ? 180 : 0;
  return (Math.atan2(b[0] - a[0], b[1] - a[1]) * 180) / Math.PI + facing;
}
