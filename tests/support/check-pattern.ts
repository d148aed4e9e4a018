/**
 * What a replayed route does to the whole pattern, cell by cell: whether every layer of lay is there,
 * in its own bearing and in its order. Plain cells, nothing of the engine.
 */
import {
  apartDeg,
  cornersOf,
  distanceTo,
  gridOver,
  maskOf,
  openingOf,
  replayStamps,
  wantedBearings,
  type DesignFile,
  type DesignPatch,
  type Grid,
  type RouteLeg,
} from './raster';

export interface PatternCount {
  /** Square feet of the patches judged. */
  readonly areaSqFt: number;
  /** Share of the ground's opening by the cutting width that is cut. */
  readonly covered: number;
  /** Share of the cells farther than one overlap from a patch edge whose last lay is the wanted one. */
  readonly lastLay: number;
  /** Per layer: share of those cells that have it, that were cut in its own bearing. */
  readonly layers: readonly number[];
  /** Share of those cells with two layers or more on which the last cuts came in the layers' order. */
  readonly inOrder: number;
  /** Square feet cut oftener than the layers ask for. */
  readonly doubleCutSqFt: number;
}

/** A lay within this of the wanted one is the wanted one, degrees. */
const SAME_LAY_DEG = 20;

/** Counts the wide machine's patches of the given kinds. */
export function countPattern(
  design: DesignFile,
  legs: readonly RouteLeg[],
  cell: number,
  figures: { readonly cutFt: number; readonly overlapFt: number },
  kinds: readonly string[] = ['background'],
): PatternCount {
  const patches = design.patches.filter((p) => p.tool === 'wide' && kinds.includes(p.kind));
  const [low, high] = cornersOf(
    design.patches.flatMap((p) => p.rings.flat()),
    2,
  );
  const grid = gridOver(low, high, cell);
  const size = grid.columns * grid.rows;
  const most = Math.max(...patches.map((p) => p.lays.length));
  const owner = new Int16Array(size).fill(-1);
  const wanted = Array.from({ length: most }, () => new Float32Array(size).fill(-1));
  const depth = new Float32Array(size);
  const ground = new Uint8Array(size);
  patches.forEach((patch, k) => {
    const bearings = wantedBearings(design, patch);
    forEachCell(grid, patch, (i, deep) => {
      owner[i] = k;
      ground[i] = 1;
      depth[i] = deep;
      const x = grid.x0 + ((i % grid.columns) + 0.5) * cell;
      const y = grid.y0 + (Math.floor(i / grid.columns) + 0.5) * cell;
      bearings.forEach((of, order) => (wanted[order]![i] = of([x, y])));
    });
  });
  const last = new Float32Array(size).fill(-1);
  const cuts = new Uint8Array(size);
  const had = Array.from({ length: most }, () => new Int32Array(size).fill(-1));
  replayStamps(grid, legs, (i, bearing, leg, turn) => {
    if (owner[i]! < 0) return;
    if (leg.lays) last[i] = bearing;
    if (leg.reels !== 'down') return;
    if (cuts[i]! < 255) cuts[i]!++;
    for (let order = 0; order < most; order++) {
      const want = wanted[order]![i]!;
      if (want >= 0 && apartDeg(want, bearing) <= SAME_LAY_DEG) had[order]![i] = turn;
    }
  });
  const opened = openingOf(grid, ground, figures.cutFt);
  return sumUp();

  function sumUp(): PatternCount {
    let [open, openCut, inner, innerRight, layered, ordered, twice, cells] = Array<number>(8).fill(
      0,
    ) as [number, number, number, number, number, number, number, number];
    const layerCells = Array<number>(most).fill(0);
    const layerHad = Array<number>(most).fill(0);
    for (let i = 0; i < size; i++) {
      if (owner[i]! < 0) continue;
      cells++;
      const lays = patches[owner[i]!]!.lays.length;
      if (opened[i]) open++;
      if (opened[i] && cuts[i]) openCut++;
      if (cuts[i]! > lays) twice++;
      if (depth[i]! - cell / 2 <= figures.overlapFt) continue;
      inner++;
      if (apartDeg(wanted[lays - 1]![i]!, last[i]!) <= SAME_LAY_DEG && last[i]! >= 0) innerRight++;
      let right = true;
      for (let order = 0; order < lays; order++) {
        layerCells[order]!++;
        if (had[order]![i]! >= 0) layerHad[order]!++;
        if (had[order]![i]! < 0 || (order > 0 && had[order]![i]! <= had[order - 1]![i]!))
          right = false;
      }
      if (lays > 1) layered++;
      if (lays > 1 && right) ordered++;
    }
    return {
      areaSqFt: cells * cell * cell,
      covered: openCut / open,
      lastLay: innerRight / inner,
      layers: layerCells.map((n, k) => (n === 0 ? 1 : layerHad[k]! / n)),
      inOrder: layered === 0 ? 1 : ordered / layered,
      doubleCutSqFt: twice * cell * cell,
    };
  }
}

/** The cells of a patch, each with its distance from the patch's edge; looked at in the patch's own box. */
function forEachCell(
  grid: Grid,
  patch: DesignPatch,
  onCell: (cell: number, depthFt: number) => void,
): void {
  const [low, high] = cornersOf(patch.rings.flat(), 2 * grid.cell);
  const column = Math.max(0, Math.floor((low[0] - grid.x0) / grid.cell));
  const row = Math.max(0, Math.floor((low[1] - grid.y0) / grid.cell));
  const part: Grid = {
    x0: grid.x0 + column * grid.cell,
    y0: grid.y0 + row * grid.cell,
    cell: grid.cell,
    columns: Math.min(grid.columns, Math.ceil((high[0] - grid.x0) / grid.cell)) - column,
    rows: Math.min(grid.rows, Math.ceil((high[1] - grid.y0) / grid.cell)) - row,
  };
  const mask = maskOf(part, patch.rings);
  const deep = distanceTo(part, mask, 0);
  mask.forEach((m, i) => {
    if (!m) return;
    const [c, r] = [i % part.columns, Math.floor(i / part.columns)];
    onCell((r + row) * grid.columns + c + column, deep[i]!);
  });
}
