/** Straight edges in square buckets: nearest edge, and crossings. */
import type { Point } from '../geometry/point';
import { segmentIntersection } from '../geometry/segment';

/** An edge with the caller's tag. */
export interface TaggedEdge<T> {
  readonly a: Point;
  readonly b: Point;
  readonly tag: T;
}

export interface EdgeIndex<T> {
  readonly cell: number;
  readonly edges: readonly TaggedEdge<T>[];
  readonly buckets: ReadonlyMap<number, readonly number[]>;
}

/** Buckets are numbered on a square of this many cells a side, centred on the origin. */
const SPAN = 1 << 20;
const bucketOf = (x: number, y: number): number => (x + SPAN / 2) * SPAN + (y + SPAN / 2);

/** Edges in buckets of side `cell`, in the edges' own unit. */
export function edgeIndex<T>(edges: readonly TaggedEdge<T>[], cell: number): EdgeIndex<T> {
  const buckets = new Map<number, number[]>();
  edges.forEach((edge, i) => {
    eachCell(edge.a, edge.b, cell, (key) => {
      const bucket = buckets.get(key);
      if (bucket) bucket.push(i);
      else buckets.set(key, [i]);
    });
  });
  return { cell, edges, buckets };
}

/** Calls for every cell of the edge's box (edges are short against a cell or nearly straight). */
function eachCell(a: Point, b: Point, cell: number, visit: (key: number) => void): void {
  const x0 = Math.floor(Math.min(a.x, b.x) / cell);
  const x1 = Math.floor(Math.max(a.x, b.x) / cell);
  const y0 = Math.floor(Math.min(a.y, b.y) / cell);
  const y1 = Math.floor(Math.max(a.y, b.y) / cell);
  for (let x = x0; x <= x1; x++) for (let y = y0; y <= y1; y++) visit(bucketOf(x, y));
}

/** Distance from p to the nearest edge, at most `limit` (returned when nothing is nearer). */
export function nearestEdgeDistance<T>(index: EdgeIndex<T>, p: Point, limit: number): number {
  const cx = Math.floor(p.x / index.cell);
  const cy = Math.floor(p.y / index.cell);
  let best = limit;
  for (let ring = 0; (ring - 1) * index.cell < best; ring++) {
    for (let x = cx - ring; x <= cx + ring; x++) {
      const side = Math.abs(x - cx) === ring;
      for (let y = cy - ring; y <= cy + ring; y += side ? 1 : Math.max(1, 2 * ring)) {
        const bucket = index.buckets.get(bucketOf(x, y));
        if (bucket === undefined) continue;
        for (const i of bucket) best = Math.min(best, edgeDistance(index.edges[i]!, p));
      }
    }
  }
  return best;
}

/** The nearest edge within `limit` of p, with its distance; null when there is none. */
export function nearestEdge<T>(
  index: EdgeIndex<T>,
  p: Point,
  limit: number,
): { readonly edge: TaggedEdge<T>; readonly distance: number } | null {
  const distance = nearestEdgeDistance(index, p, limit);
  if (distance >= limit) return null;
  const reach = Math.ceil(distance / index.cell);
  const cx = Math.floor(p.x / index.cell);
  const cy = Math.floor(p.y / index.cell);
  for (let x = cx - reach; x <= cx + reach; x++) {
    for (let y = cy - reach; y <= cy + reach; y++) {
      for (const i of index.buckets.get(bucketOf(x, y)) ?? []) {
        const edge = index.edges[i]!;
        if (edgeDistance(edge, p) <= distance) return { edge, distance };
      }
    }
  }
  return null;
}

/** As `segmentNearest`, without the point: this is asked tens of thousands of times. */
function edgeDistance<T>(edge: TaggedEdge<T>, p: Point): number {
  const dx = edge.b.x - edge.a.x;
  const dy = edge.b.y - edge.a.y;
  const px = p.x - edge.a.x;
  const py = p.y - edge.a.y;
  const length2 = dx * dx + dy * dy;
  const t = length2 > 0 ? Math.min(1, Math.max(0, (px * dx + py * dy) / length2)) : 0;
  const ex = px - t * dx;
  const ey = py - t * dy;
  return Math.sqrt(ex * ex + ey * ey);
}

/** Tags of each two edges that cross, edges that share an end left out. */
export function crossingEdges<T>(
  index: EdgeIndex<T>,
): { readonly a: T; readonly b: T; readonly at: Point }[] {
  const seen = new Set<number>();
  const out: { a: T; b: T; at: Point }[] = [];
  for (const bucket of index.buckets.values()) {
    for (let i = 0; i < bucket.length; i++) {
      for (let j = 0; j < i; j++) {
        const key = bucket[j]! * index.edges.length + bucket[i]!;
        if (seen.has(key)) continue;
        seen.add(key);
        const at = crossing(index.edges[bucket[i]!]!, index.edges[bucket[j]!]!);
        if (at) out.push({ a: index.edges[bucket[i]!]!.tag, b: index.edges[bucket[j]!]!.tag, at });
      }
    }
  }
  return out;
}

function crossing<T>(e: TaggedEdge<T>, f: TaggedEdge<T>): Point | null {
  if (e.a === f.a || e.a === f.b || e.b === f.a || e.b === f.b) return null;
  return segmentIntersection(e.a, e.b, f.a, f.b)?.point ?? null;
}
