/**
 * What a straight lane meets. In the lay frame a lane is the strip lo ≤ x ≤ hi; a cross-section is
 * the strip's width at one y. Exact for polygons: between two places where an edge enters the strip,
 * a cross-section lies wholly inside or wholly outside.
 */
import type { Region } from '../geometry/region';

export interface Interval {
  readonly from: number;
  readonly to: number;
}

export interface LaneScan {
  /** Where the cross-section meets the region at all. */
  readonly touched: readonly Interval[];
  /** Where the cross-section is wholly inside the region. */
  readonly inside: readonly Interval[];
}

/** Edges as flat numbers x1 y1 x2 y2, ready to be scanned many times. */
export interface ScanEdges {
  readonly edges: Float64Array;
}

/** The region's edges for `scanLane`; the region is already in the lay frame. */
export function scanEdges(region: Region): ScanEdges {
  const edges = new Float64Array(4 * region.reduce((n, ring) => n + ring.length, 0));
  let at = 0;
  for (const ring of region) {
    for (let i = 0, j = ring.length - 1; i < ring.length; j = i++) {
      edges.set([ring[j]!.x, ring[j]!.y, ring[i]!.x, ring[i]!.y], at);
      at += 4;
    }
  }
  return { edges };
}

/** Scans the strip lo ≤ x ≤ hi; intervals of y, ascending and apart. */
export function scanLane(scan: ScanEdges, lo: number, hi: number): LaneScan {
  const met = mergeIntervals(edgeSpans(scan.edges, lo, hi));
  const crossings = middleCrossings(scan.edges, (lo + hi) / 2);
  const inside: Interval[] = [];
  for (let i = 1; i < met.length; i++) {
    const gap = { from: met[i - 1]!.to, to: met[i]!.from };
    if (insideAt(crossings, (gap.from + gap.to) / 2)) inside.push(gap);
  }
  return { inside, touched: mergeIntervals([...met, ...inside]) };
}

/** The y-span of each edge's part within the strip. */
function edgeSpans(edges: Float64Array, lo: number, hi: number): Interval[] {
  const out: Interval[] = [];
  for (let i = 0; i < edges.length; i += 4) {
    const x1 = edges[i]!;
    const x2 = edges[i + 2]!;
    if ((x1 < lo && x2 < lo) || (x1 > hi && x2 > hi)) continue;
    const a = yAt(edges, i, Math.min(hi, Math.max(lo, x1)));
    const b = yAt(edges, i, Math.min(hi, Math.max(lo, x2)));
    if (x1 === x2) out.push(ordered(edges[i + 1]!, edges[i + 3]!));
    else out.push(ordered(a, b));
  }
  return out;
}

const ordered = (a: number, b: number): Interval =>
  a < b ? { from: a, to: b } : { from: b, to: a };

function yAt(edges: Float64Array, i: number, x: number): number {
  const x1 = edges[i]!;
  const x2 = edges[i + 2]!;
  if (x1 === x2) return edges[i + 1]!;
  return edges[i + 1]! + ((x - x1) / (x2 - x1)) * (edges[i + 3]! - edges[i + 1]!);
}

function middleCrossings(edges: Float64Array, x: number): number[] {
  const out: number[] = [];
  for (let i = 0; i < edges.length; i += 4) {
    if (edges[i]! > x !== edges[i + 2]! > x) out.push(yAt(edges, i, x));
  }
  return out.sort((a, b) => a - b);
}

/** Even-odd along the strip's middle line. */
function insideAt(crossings: readonly number[], y: number): boolean {
  let below = 0;
  while (below < crossings.length && crossings[below]! < y) below++;
  return below % 2 === 1;
}

/** Union of intervals, ascending. */
export function mergeIntervals(intervals: readonly Interval[]): Interval[] {
  const sorted = [...intervals].sort((a, b) => a.from - b.from);
  const out: Interval[] = [];
  for (const next of sorted) {
    const last = out[out.length - 1];
    if (last && next.from <= last.to) {
      if (next.to > last.to) out[out.length - 1] = { from: last.from, to: next.to };
    } else out.push(next);
  }
  return out;
}

/** Overlap of two ascending lists. */
export function intersectIntervals(
  a: readonly Interval[],
  b: readonly Interval[],
): readonly Interval[] {
  const out: Interval[] = [];
  for (const p of a) {
    for (const q of b) {
      const from = Math.max(p.from, q.from);
      const to = Math.min(p.to, q.to);
      if (from < to) out.push({ from, to });
    }
  }
  return out;
}
