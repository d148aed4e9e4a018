/** Nearest distance from a place to closed outlines, by square buckets. Shares no code with the engine. */

export interface Edge {
  readonly ax: number;
  readonly ay: number;
  readonly bx: number;
  readonly by: number;
  /** Whatever belongs to it. */
  readonly tag: number;
}

export interface NearLine {
  /** The nearest edge and how far it is, feet; Infinity beyond `CELL_FT`. */
  nearest(x: number, y: number): { readonly distance: number; readonly tag: number };
}

/** Distances up to this are found. */
export const CELL_FT = 2;
const SPAN = 4096;
const key = (i: number, j: number): number => (i + SPAN / 2) * SPAN + (j + SPAN / 2);
const cell = (v: number): number => Math.floor(v / CELL_FT);

export function nearLine(edges: readonly Edge[]): NearLine {
  const buckets = new Map<number, Edge[]>();
  for (const edge of edges.flatMap(cut)) {
    const [i0, i1] = [cell(Math.min(edge.ax, edge.bx)), cell(Math.max(edge.ax, edge.bx))];
    const [j0, j1] = [cell(Math.min(edge.ay, edge.by)), cell(Math.max(edge.ay, edge.by))];
    for (let i = i0; i <= i1; i++) {
      for (let j = j0; j <= j1; j++) {
        const bucket = buckets.get(key(i, j));
        if (bucket) bucket.push(edge);
        else buckets.set(key(i, j), [edge]);
      }
    }
  }
  return {
    nearest(x, y) {
      let best = Infinity;
      let tag = -1;
      for (let i = cell(x) - 1; i <= cell(x) + 1; i++) {
        for (let j = cell(y) - 1; j <= cell(y) + 1; j++) {
          for (const edge of buckets.get(key(i, j)) ?? []) {
            const d = toEdge(x, y, edge);
            if (d < best) [best, tag] = [d, edge.tag];
          }
        }
      }
      return { distance: best <= CELL_FT ? best : Infinity, tag };
    },
  };
}

function cut(edge: Edge): Edge[] {
  const [dx, dy] = [edge.bx - edge.ax, edge.by - edge.ay];
  const n = Math.max(1, Math.ceil(Math.hypot(dx, dy) / CELL_FT));
  return Array.from({ length: n }, (_, k) => ({
    ax: edge.ax + (dx * k) / n,
    ay: edge.ay + (dy * k) / n,
    bx: edge.ax + (dx * (k + 1)) / n,
    by: edge.ay + (dy * (k + 1)) / n,
    tag: edge.tag,
  }));
}

function toEdge(x: number, y: number, { ax, ay, bx, by }: Edge): number {
  const [dx, dy] = [bx - ax, by - ay];
  const l2 = dx * dx + dy * dy;
  const t = l2 === 0 ? 0 : Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / l2));
  return Math.hypot(x - ax - t * dx, y - ay - t * dy);
}
