/**
 * A raster that replays `route.json` against `design.json` as a stranger would: plain cells, nothing
 * of the engine. Cells are squares of `cell` feet; a cell is where its centre is.
 */
export type Pair = readonly [number, number];
export type Rings = readonly (readonly Pair[])[];

export interface RouteLeg {
  readonly seq: number;
  readonly machine: string;
  readonly phase: string;
  readonly kind: string;
  readonly pass: number | null;
  readonly patch: string | null;
  readonly width_ft: number;
  readonly points: readonly Pair[];
  readonly start_s: number;
  readonly seconds: number;
  readonly reels: string;
  readonly lays: boolean;
  readonly gear?: string;
}

export interface DesignPatch {
  readonly id: string;
  readonly kind: string;
  readonly tool: string;
  readonly lays: readonly {
    readonly bearing_deg?: number;
    readonly guides?: string;
    readonly sense?: string;
  }[];
  readonly rings: Rings;
}

export interface DesignFile {
  readonly surfaces: readonly { readonly kind: string; readonly rings: Rings }[];
  readonly patches: readonly DesignPatch[];
  readonly guides: readonly { readonly id: string; readonly points: readonly Pair[] }[];
  readonly graphics: readonly { readonly rings: Rings }[];
}

export interface Grid {
  readonly x0: number;
  readonly y0: number;
  readonly cell: number;
  readonly columns: number;
  readonly rows: number;
}

/** A grid over a box, low corner first. */
export function gridOver(low: Pair, high: Pair, cell: number): Grid {
  return {
    x0: low[0],
    y0: low[1],
    cell,
    columns: Math.ceil((high[0] - low[0]) / cell),
    rows: Math.ceil((high[1] - low[1]) / cell),
  };
}

/** Low and high corner of points, grown by `by`. */
export function cornersOf(points: Iterable<Pair>, by = 0): readonly [Pair, Pair] {
  let [x0, y0, x1, y1] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const [x, y] of points) {
    x0 = Math.min(x0, x);
    y0 = Math.min(y0, y);
    x1 = Math.max(x1, x);
    y1 = Math.max(y1, y);
  }
  return [
    [x0 - by, y0 - by],
    [x1 + by, y1 + by],
  ];
}

/** Cells whose centre lies inside the rings, even-odd, by scan lines. */
export function maskOf(grid: Grid, rings: Rings): Uint8Array {
  const mask = new Uint8Array(grid.columns * grid.rows);
  const crossings: number[][] = Array.from({ length: grid.rows }, () => []);
  for (const ring of rings) {
    for (let i = 0; i < ring.length; i++) {
      const [ax, ay] = ring[i]!;
      const [bx, by] = ring[(i + 1) % ring.length]!;
      const first = Math.max(0, Math.floor((Math.min(ay, by) - grid.y0) / grid.cell) - 1);
      const last = Math.min(grid.rows - 1, Math.ceil((Math.max(ay, by) - grid.y0) / grid.cell));
      for (let r = first; r <= last; r++) {
        const y = grid.y0 + (r + 0.5) * grid.cell;
        if (ay <= y !== by <= y) crossings[r]!.push(ax + ((y - ay) * (bx - ax)) / (by - ay));
      }
    }
  }
  crossings.forEach((xs, r) => {
    xs.sort((a, b) => a - b);
    for (let i = 0; i + 1 < xs.length; i += 2) {
      const from = Math.max(0, Math.ceil((xs[i]! - grid.x0) / grid.cell - 0.5));
      const to = Math.min(grid.columns, Math.ceil((xs[i + 1]! - grid.x0) / grid.cell - 0.5));
      if (from < to) mask.fill(1, r * grid.columns + from, r * grid.columns + to);
    }
  });
  return mask;
}

/**
 * Feet from every cell's centre to the nearest cell centre of the given value; 0 on those cells.
 * Meijster, Roerdink and Hesselink 2000. What lies off the grid does not count.
 */
export function distanceTo(grid: Grid, mask: Uint8Array, value: 0 | 1): Float32Array {
  const { columns, rows } = grid;
  const far = columns + rows;
  const g = new Int32Array(columns * rows);
  for (let c = 0; c < columns; c++) {
    let run = far;
    for (let r = 0; r < rows; r++) {
      run = mask[r * columns + c] === value ? 0 : run + 1;
      g[r * columns + c] = Math.min(run, far);
    }
    run = far;
    for (let r = rows - 1; r >= 0; r--) {
      run = mask[r * columns + c] === value ? 0 : run + 1;
      if (run < g[r * columns + c]!) g[r * columns + c] = run;
    }
  }
  const out = new Float32Array(columns * rows);
  const s = new Int32Array(columns);
  const t = new Int32Array(columns);
  for (let r = 0; r < rows; r++) {
    const row = r * columns;
    const f = (x: number, i: number) => (x - i) ** 2 + g[row + i]! ** 2;
    let q = 0;
    s[0] = 0;
    t[0] = 0;
    for (let u = 1; u < columns; u++) {
      while (q >= 0 && f(t[q]!, s[q]!) > f(t[q]!, u)) q--;
      if (q < 0) {
        q = 0;
        s[0] = u;
      } else {
        const i = s[q]!;
        const w =
          1 + Math.floor((u * u - i * i + g[row + u]! ** 2 - g[row + i]! ** 2) / (2 * (u - i)));
        if (w < columns) {
          q++;
          s[q] = u;
          t[q] = w;
        }
      }
    }
    for (let u = columns - 1; u >= 0; u--) {
      out[row + u] = Math.sqrt(f(u, s[q]!)) * grid.cell;
      if (u === t[q]) q--;
    }
  }
  return out;
}

/** The opening of a mask by a disc of the given diameter: every cell that such a disc inside it covers. */
export function openingOf(grid: Grid, mask: Uint8Array, diameter: number): Uint8Array {
  const depth = distanceTo(grid, mask, 0);
  const eroded = mask.map((_, i) => (depth[i]! >= diameter / 2 ? 1 : 0));
  const reach = distanceTo(grid, eroded, 1);
  return mask.map((m, i) => (m && reach[i]! < diameter / 2 ? 1 : 0));
}

/** Replays laying legs in the order of the clock: what is cut, and the bearing last laid (−1: none). */
export function replay(
  grid: Grid,
  legs: readonly RouteLeg[],
): { readonly cut: Uint8Array; readonly bearing: Float32Array } {
  const cut = new Uint8Array(grid.columns * grid.rows);
  const bearing = new Float32Array(grid.columns * grid.rows).fill(-1);
  replayStamps(grid, legs, (cell, toward, leg) => {
    if (leg.reels === 'down') cut[cell] = 1;
    if (leg.lays) bearing[cell] = toward;
  });
  return { cut, bearing };
}

/**
 * Every cell that a leg cuts or lays, leg by leg in the order of the clock, with the bearing driven and
 * the leg's place in that order. A leg may come over a cell more than once.
 */
export function replayStamps(
  grid: Grid,
  legs: readonly RouteLeg[],
  onCell: (cell: number, towardDeg: number, leg: RouteLeg, turn: number) => void,
): void {
  const ordered = [...legs].sort((a, b) => a.start_s - b.start_s || a.seq - b.seq);
  ordered.forEach((leg, turn) => {
    if (leg.reels !== 'down' && !leg.lays) return;
    const mark = (cell: number, towardDeg: number) => onCell(cell, towardDeg, leg, turn);
    for (let i = 1; i < leg.points.length; i++) {
      stamp(grid, leg.points[i - 1]!, leg.points[i]!, leg.width_ft / 2, mark);
      const next = leg.points[i + 1];
      if (next) stampJoint(grid, leg.points[i - 1]!, leg.points[i]!, next, leg.width_ft / 2, mark);
    }
  });
}

function stamp(
  grid: Grid,
  [ax, ay]: Pair,
  [bx, by]: Pair,
  half: number,
  mark: (cell: number, towardDeg: number) => void,
): void {
  const length = Math.hypot(bx - ax, by - ay);
  if (length === 0) return;
  const [ux, uy] = [(bx - ax) / length, (by - ay) / length];
  const toward = ((Math.atan2(ux, uy) * 180) / Math.PI + 360) % 360;
  const corners: Pair[] = [-half, half].flatMap((side) => [
    [ax - uy * side, ay + ux * side] as const,
    [bx - uy * side, by + ux * side] as const,
  ]);
  const [low, high] = cornersOf(corners);
  const c0 = Math.max(0, Math.floor((low[0] - grid.x0) / grid.cell));
  const c1 = Math.min(grid.columns - 1, Math.floor((high[0] - grid.x0) / grid.cell));
  const r0 = Math.max(0, Math.floor((low[1] - grid.y0) / grid.cell));
  const r1 = Math.min(grid.rows - 1, Math.floor((high[1] - grid.y0) / grid.cell));
  for (let r = r0; r <= r1; r++) {
    const dy = grid.y0 + (r + 0.5) * grid.cell - ay;
    for (let c = c0; c <= c1; c++) {
      const dx = grid.x0 + (c + 0.5) * grid.cell - ax;
      const along = dx * ux + dy * uy;
      if (along < 0 || along > length) continue;
      if (Math.abs(dy * ux - dx * uy) <= half) mark(r * grid.columns + c, toward);
    }
  }
}

/** Turns of more than this between two pieces of a leg are corners, and sweep nothing; degrees. */
const CORNER_DEG = 45;

/** What the cutting line sweeps as it turns from one piece to the next: a triangle on either side. */
function stampJoint(
  grid: Grid,
  a: Pair,
  b: Pair,
  c: Pair,
  half: number,
  mark: (cell: number, towardDeg: number) => void,
): void {
  const [before, after] = [
    Math.atan2(b[0] - a[0], b[1] - a[1]),
    Math.atan2(c[0] - b[0], c[1] - b[1]),
  ];
  if (apartDeg((before * 180) / Math.PI, (after * 180) / Math.PI) > CORNER_DEG) return;
  const toward = ((before * 180) / Math.PI + 360) % 360;
  for (const side of [-half, half]) {
    const p: Pair = [b[0] + side * Math.cos(before), b[1] - side * Math.sin(before)];
    const q: Pair = [b[0] + side * Math.cos(after), b[1] - side * Math.sin(after)];
    stampTriangle(grid, [b, p, q], (cell) => mark(cell, toward));
  }
}

function stampTriangle(
  grid: Grid,
  [a, b, c]: readonly [Pair, Pair, Pair],
  mark: (cell: number) => void,
): void {
  const [low, high] = cornersOf([a, b, c]);
  const edge = ([px, py]: Pair, [qx, qy]: Pair, x: number, y: number) =>
    (qx - px) * (y - py) - (qy - py) * (x - px);
  const c1 = Math.min(grid.columns - 1, Math.floor((high[0] - grid.x0) / grid.cell));
  const r1 = Math.min(grid.rows - 1, Math.floor((high[1] - grid.y0) / grid.cell));
  for (let r = Math.max(0, Math.floor((low[1] - grid.y0) / grid.cell)); r <= r1; r++) {
    for (let k = Math.max(0, Math.floor((low[0] - grid.x0) / grid.cell)); k <= c1; k++) {
      const x = grid.x0 + (k + 0.5) * grid.cell;
      const y = grid.y0 + (r + 0.5) * grid.cell;
      const sides = [edge(a, b, x, y), edge(b, c, x, y), edge(c, a, x, y)];
      if (sides.every((s) => s >= 0) || sides.every((s) => s <= 0)) mark(r * grid.columns + k);
    }
  }
}

export interface BodyFigures {
  readonly widthFt: number;
  readonly frontFt: number;
  readonly rearFt: number;
}

/**
 * Cells of `forbidden` under the body as it follows the leg, tested at poses and body points at most
 * `step` apart. A leg in reverse faces against its points.
 */
export function bodyHits(
  grid: Grid,
  forbidden: Uint8Array,
  leg: RouteLeg,
  body: BodyFigures,
  step = 0.25,
): { readonly at: Pair; readonly under: Pair }[] {
  const hits: { at: Pair; under: Pair }[] = [];
  for (const { at, ux, uy } of posesOf(leg, step)) {
    const nLong = Math.ceil((body.frontFt + body.rearFt) / step);
    const nWide = Math.ceil(body.widthFt / step);
    for (let i = 0; i <= nLong; i++) {
      const u = -body.rearFt + ((body.frontFt + body.rearFt) * i) / nLong;
      for (let k = 0; k <= nWide; k++) {
        if (i > 0 && i < nLong && k > 0 && k < nWide) continue;
        const v = -body.widthFt / 2 + (body.widthFt * k) / nWide;
        const under: Pair = [at[0] + u * ux - v * uy, at[1] + u * uy + v * ux];
        if (valueAt(grid, forbidden, under)) hits.push({ at, under });
      }
    }
  }
  return hits;
}

/** Poses along a leg at most `step` apart. */
export function posesOf(
  leg: RouteLeg,
  step: number,
): { readonly at: Pair; readonly ux: number; readonly uy: number }[] {
  const facing = leg.gear === 'reverse' ? -1 : 1;
  const out: { at: Pair; ux: number; uy: number }[] = [];
  for (let i = 1; i < leg.points.length; i++) {
    const [ax, ay] = leg.points[i - 1]!;
    const [bx, by] = leg.points[i]!;
    const length = Math.hypot(bx - ax, by - ay);
    if (length === 0) continue;
    const pieces = Math.ceil(length / step);
    for (let k = 0; k <= pieces; k++) {
      const t = k / pieces;
      out.push({
        at: [ax + t * (bx - ax), ay + t * (by - ay)],
        ux: (facing * (bx - ax)) / length,
        uy: (facing * (by - ay)) / length,
      });
    }
  }
  return out;
}

/** Mask value at a point; 0 off the grid. */
export function valueAt(grid: Grid, mask: Uint8Array, [x, y]: Pair): number {
  const c = Math.floor((x - grid.x0) / grid.cell);
  const r = Math.floor((y - grid.y0) / grid.cell);
  if (c < 0 || r < 0 || c >= grid.columns || r >= grid.rows) return 0;
  return mask[r * grid.columns + c]!;
}

/** Wanted bearing of a patch at a point, that of its last lay. */
export const wantedBearing = (
  design: DesignFile,
  patch: DesignPatch,
): ((p: Pair) => number) | null => wantedBearings(design, patch).at(-1) ?? null;

/** Wanted bearings of a patch's lays in order: its own, or along the nearest piece of its guide. */
export const wantedBearings = (design: DesignFile, patch: DesignPatch): ((p: Pair) => number)[] =>
  patch.lays.map((lay) => wantedOf(design, lay));

function wantedOf(design: DesignFile, lay: DesignPatch['lays'][number]): (p: Pair) => number {
  if (lay.bearing_deg !== undefined) {
    const fixed = lay.bearing_deg;
    return () => fixed;
  }
  const guide = design.guides.find((g) => g.id === lay.guides);
  if (!guide) throw new Error(`there is no guide ${lay.guides}`);
  const flip = lay.sense === 'backward' ? 180 : 0;
  const near = nearestPiece(guide.points);
  return (p) => {
    const { a, b } = near(p);
    return ((Math.atan2(b[0] - a[0], b[1] - a[1]) * 180) / Math.PI + flip + 720) % 360;
  };
}

interface Piece {
  readonly a: Pair;
  readonly b: Pair;
}

/** Side of a bucket, and how far from it a piece is still listed in it, feet. */
const BUCKET = 8;
const LISTED = 16;

/** The piece of a line nearest to a point: looked up among near ones, else among all. */
function nearestPiece(points: readonly Pair[]): (p: Pair) => Piece {
  const pieces = points
    .slice(1)
    .map((b, i) => ({ a: points[i]!, b }))
    .filter(({ a, b }) => a[0] !== b[0] || a[1] !== b[1]);
  const buckets = new Map<string, Piece[]>();
  for (const piece of pieces) {
    const [low, high] = cornersOf([piece.a, piece.b], LISTED);
    for (let c = Math.floor(low[0] / BUCKET); c <= Math.floor(high[0] / BUCKET); c++) {
      for (let r = Math.floor(low[1] / BUCKET); r <= Math.floor(high[1] / BUCKET); r++) {
        const key = `${c} ${r}`;
        buckets.set(key, [...(buckets.get(key) ?? []), piece]);
      }
    }
  }
  return (p) => {
    const key = `${Math.floor(p[0] / BUCKET)} ${Math.floor(p[1] / BUCKET)}`;
    const here = nearestOf(buckets.get(key) ?? [], p);
    return here && here.distance <= LISTED ? here.piece : nearestOf(pieces, p)!.piece;
  };
}

function nearestOf(pieces: readonly Piece[], [x, y]: Pair) {
  let best: { readonly piece: Piece; readonly distance: number } | null = null;
  for (const piece of pieces) {
    const { a, b } = piece;
    const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
    const t = Math.min(1, Math.max(0, ((x - a[0]) * dx + (y - a[1]) * dy) / (dx * dx + dy * dy)));
    const distance = Math.hypot(x - a[0] - t * dx, y - a[1] - t * dy);
    if (!best || distance < best.distance) best = { piece, distance };
  }
  return best;
}

/** Smallest angle between two bearings, degrees. */
export function apartDeg(a: number, b: number): number {
  const d = (((a - b) % 360) + 360) % 360;
  return Math.min(d, 360 - d);
}
