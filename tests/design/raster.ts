/**
 * A raster judge that shares no code with the engine's geometry: it paints patches and swaths on small
 * cells and reads coverage and lay off the picture. Swaths are painted in driving order.
 */
import type { Design, Patch } from '../../src/design/model';
import type { Swath } from '../../src/mowing/swath-model';

interface Xy {
  readonly x: number;
  readonly y: number;
}
export interface Window {
  readonly x0: number;
  readonly y0: number;
  readonly nx: number;
  readonly ny: number;
  readonly h: number;
}

/** Cells of `h` feet; corners off the round foot, so that no edge runs through cell middles. */
export function windowOf(x0: number, y0: number, x1: number, y1: number, h: number): Window {
  return {
    x0: x0 + 0.0137,
    y0: y0 + 0.0291,
    nx: Math.round((x1 - x0) / h),
    ny: Math.round((y1 - y0) / h),
    h,
  };
}

/** Even-odd scan lines. */
export function paintRings(
  w: Window,
  rings: readonly (readonly Xy[])[],
  put: (cell: number) => void,
): void {
  const rows: number[][] = Array.from({ length: w.ny }, () => []);
  for (const ring of rings) {
    for (let i = 0; i < ring.length; i++) {
      const a = ring[i]!;
      const b = ring[(i + 1) % ring.length]!;
      const lo = Math.max(0, Math.floor((Math.min(a.y, b.y) - w.y0) / w.h - 0.5));
      const hi = Math.min(w.ny - 1, Math.ceil((Math.max(a.y, b.y) - w.y0) / w.h));
      for (let r = lo; r <= hi; r++) {
        const y = w.y0 + (r + 0.5) * w.h;
        if (a.y > y !== b.y > y) rows[r]!.push(a.x + ((y - a.y) / (b.y - a.y)) * (b.x - a.x));
      }
    }
  }
  rows.forEach((xs, r) => {
    xs.sort((p, q) => p - q);
    for (let k = 0; k + 1 < xs.length; k += 2) {
      const from = Math.max(0, Math.ceil((xs[k]! - w.x0) / w.h - 0.5));
      const to = Math.min(w.nx - 1, Math.floor((xs[k + 1]! - w.x0) / w.h - 0.5));
      for (let c = from; c <= to; c++) put(r * w.nx + c);
    }
  });
}

/** Every cell whose middle a cut of `width` passes over, with the heading there (radians). */
export function paintSwath(
  w: Window,
  line: readonly Xy[],
  width: number,
  put: (cell: number, heading: number) => void,
): void {
  const half = width / 2;
  for (let i = 1; i < line.length; i++) {
    const a = line[i - 1]!;
    const b = line[i]!;
    const next = line[i + 1];
    const length = Math.hypot(b.x - a.x, b.y - a.y);
    if (length === 0) continue;
    const ux = (b.x - a.x) / length;
    const uy = (b.y - a.y) / length;
    const span = (lo: number, hi: number, at: number, n: number): [number, number] => [
      Math.max(0, Math.floor((lo - half - at) / w.h)),
      Math.min(n - 1, Math.ceil((hi + half - at) / w.h)),
    ];
    const [c0, c1] = span(Math.min(a.x, b.x), Math.max(a.x, b.x), w.x0, w.nx);
    const [r0, r1] = span(Math.min(a.y, b.y), Math.max(a.y, b.y), w.y0, w.ny);
    for (let r = r0; r <= r1; r++) {
      for (let c = c0; c <= c1; c++) {
        const px = w.x0 + (c + 0.5) * w.h - a.x;
        const py = w.y0 + (r + 0.5) * w.h - a.y;
        const along = px * ux + py * uy;
        const across = py * ux - px * uy;
        const under = along >= 0 && along <= length && Math.abs(across) <= half;
        // The outside of a bend: past this piece, short of the next, within half a width of the joint.
        const bend =
          !under &&
          along > length &&
          next !== undefined &&
          (along - length) ** 2 + across ** 2 <= half * half &&
          (next.x - b.x) * (px + a.x - b.x) + (next.y - b.y) * (py + a.y - b.y) <= 0;
        if (under || bend) put(r * w.nx + c, Math.atan2(uy, ux));
      }
    }
  }
}

/** Exact distance, in cells, from every set cell to the nearest clear one. */
export function distanceInside(set: Uint8Array, nx: number, ny: number): Float32Array {
  const g = Float64Array.from(set, (v) => (v ? 1e12 : 0));
  const n = Math.max(nx, ny);
  const f = new Float64Array(n);
  const v = new Int32Array(n);
  const z = new Float64Array(n + 1);
  const pass = (start: number, stride: number, count: number): void => {
    for (let i = 0; i < count; i++) f[i] = g[start + i * stride]!;
    let k = 0;
    v[0] = 0;
    z[0] = -Infinity;
    z[1] = Infinity;
    for (let q = 1; q < count; q++) {
      const meet = () => (f[q]! + q * q - f[v[k]!]! - v[k]! ** 2) / (2 * (q - v[k]!));
      let s = meet();
      while (s <= z[k]!) {
        k--;
        s = meet();
      }
      v[++k] = q;
      z[k] = s;
      z[k + 1] = Infinity;
    }
    k = 0;
    for (let q = 0; q < count; q++) {
      while (z[k + 1]! < q) k++;
      g[start + q * stride] = (q - v[k]!) ** 2 + f[v[k]!]!;
    }
  };
  for (let c = 0; c < nx; c++) pass(c, nx, ny);
  for (let r = 0; r < ny; r++) pass(r * nx, 1, nx);
  return Float32Array.from(g, Math.sqrt);
}

/** The bearing (as a heading, radians) that a patch asks for at a place. */
function wantedHeading(design: Design, patch: Patch, x: number, y: number): number {
  const lay = patch.lays[0]!;
  if ('bearingDeg' in lay) return Math.PI / 2 - (lay.bearingDeg * Math.PI) / 180;
  let best = Infinity;
  let heading = 0;
  const piece = (ax: number, ay: number, bx: number, by: number): void => {
    const dx = bx - ax;
    const dy = by - ay;
    const t = Math.max(0, Math.min(1, ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy || 1)));
    const d = (ax + t * dx - x) ** 2 + (ay + t * dy - y) ** 2;
    if (d >= best) return;
    best = d;
    heading = Math.atan2(dy, dx);
  };
  for (const s of design.guides[lay.guides]!) {
    if (s.kind === 'line') piece(s.from.x, s.from.y, s.to.x, s.to.y);
    else {
      for (let i = 0; i < 180; i++) {
        const [p, q] = [i, i + 1].map((k) => s.startAngle + (s.sweep * k) / 180) as [
          number,
          number,
        ];
        const { x: cx, y: cy } = s.centre;
        piece(
          cx + s.radius * Math.cos(p),
          cy + s.radius * Math.sin(p),
          cx + s.radius * Math.cos(q),
          cy + s.radius * Math.sin(q),
        );
      }
    }
  }
  return lay.sense === 'forward' ? heading : heading + Math.PI;
}

export interface PatchCover {
  readonly id: string;
  readonly kind: Patch['kind'];
  readonly tool: Patch['tool'];
  readonly cells: number;
  /** Covered share of the patch's opening by a disc of the cutting width. */
  readonly covered: number;
  /** Cells farther than one overlap from the patch's edge, and those with the wanted lay. */
  readonly inner: number;
  readonly innerRight: number;
  readonly right: number;
}

const PHASES = ['background', 'graphic', 'edge', 'border'];
/** A lay within 10 degrees of the wanted one counts as right. */
const RIGHT = Math.cos((10 * Math.PI) / 180);

/**
 * Paints everything in the window and reads each patch off it; patches must not be cut by the window.
 * The lay is read at every `every`-th cell.
 */
export function judge(
  design: Design,
  swaths: readonly Swath[],
  w: Window,
  widths: Readonly<
    Record<'wide' | 'narrow', { readonly cutFt: number; readonly overlapFt: number }>
  >,
  every = 1,
): PatchCover[] {
  const owner = new Int16Array(w.nx * w.ny).fill(-1);
  design.patches.forEach((p, k) => paintRings(w, p.region, (cell) => (owner[cell] = k)));
  const lay = new Float32Array(w.nx * w.ny).fill(NaN);
  const turn = (s: Swath) => PHASES.indexOf(s.phase) * 100 + s.group;
  for (const s of [...swaths].sort((a, b) => turn(a) - turn(b))) {
    paintSwath(w, s.line, s.widthFt, (cell, heading) => (lay[cell] = heading));
  }
  return design.patches
    .map((patch, k) => judgePatch(design, patch, k, owner, lay, w, widths[patch.tool], every))
    .filter((row) => row !== null);
}

function judgePatch(
  design: Design,
  patch: Patch,
  k: number,
  owner: Int16Array,
  lay: Float32Array,
  w: Window,
  width: { readonly cutFt: number; readonly overlapFt: number },
  every: number,
): PatchCover | null {
  const xs: number[] = [];
  const ys: number[] = [];
  owner.forEach((o, cell) => {
    if (o !== k) return;
    xs.push(cell % w.nx);
    ys.push(Math.floor(cell / w.nx));
  });
  if (xs.length === 0) return null;
  const least = (v: number[]) => Math.max(0, v.reduce((a, b) => Math.min(a, b)) - 1);
  const most = (v: number[], n: number) => Math.min(n - 1, v.reduce((a, b) => Math.max(a, b)) + 1);
  const [c0, r0] = [least(xs), least(ys)];
  const [nx, ny] = [most(xs, w.nx) - c0 + 1, most(ys, w.ny) - r0 + 1];
  const own = new Uint8Array(nx * ny);
  xs.forEach((x, i) => (own[(ys[i]! - r0) * nx + x - c0] = 1));
  const depth = distanceInside(own, nx, ny);
  const radius = width.cutFt / 2 / w.h;
  const reach = distanceInside(
    Uint8Array.from(depth, (d) => (d >= radius ? 0 : 1)),
    nx,
    ny,
  );
  const sum = { open: 0, covered: 0, inner: 0, innerRight: 0, right: 0 };
  xs.forEach((x, i) => {
    const cell = ys[i]! * w.nx + x;
    const at = (ys[i]! - r0) * nx + x - c0;
    const heading = lay[cell]!;
    const done = !Number.isNaN(heading);
    if (reach[at]! <= radius) {
      sum.open++;
      if (done) sum.covered++;
    }
    if (i % every !== 0) return;
    const px = w.x0 + (x + 0.5) * w.h;
    const py = w.y0 + (ys[i]! + 0.5) * w.h;
    const right = done && Math.cos(heading - wantedHeading(design, patch, px, py)) > RIGHT;
    if (right) sum.right++;
    if (depth[at]! > width.overlapFt / w.h + 0.5) {
      sum.inner++;
      if (right) sum.innerRight++;
    }
  });
  return {
    id: patch.id,
    kind: patch.kind,
    tool: patch.tool,
    cells: xs.length,
    covered: sum.open === 0 ? 1 : sum.covered / sum.open,
    inner: sum.inner,
    innerRight: sum.innerRight,
    right: sum.right,
  };
}
