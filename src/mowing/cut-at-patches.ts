/** Passes cut where they enter another patch, so that each piece names the patch it is laid in. */
import { boxGrow, type Box } from '../geometry/box';
import { pointDistance, pointLerp, type Point } from '../geometry/point';
import type { Polyline } from '../geometry/polyline';
import { regionBox, regionContains } from '../geometry/region';
import { segmentIntersection } from '../geometry/segment';
import { SAME_POINT } from '../geometry/tolerance';
import type { Patch } from '../design/model';

interface PatchEdges {
  readonly patches: readonly { readonly patch: Patch; readonly box: Box }[];
  readonly buckets: ReadonlyMap<number, readonly (readonly [Point, Point])[]>;
}

export interface PatchPiece {
  readonly patch: string;
  readonly points: Polyline;
}

const BUCKET = 3;
/** A piece shorter than this, feet, goes with its neighbour: nobody lifts the reels for two inches. */
const SHORTEST_PIECE = 0.2;
const bucketKey = (column: number, row: number): number => column * 65536 + row;
const bucketOf = (v: number): number => Math.floor(v / BUCKET) + 16384;

/** Indexes the edges of the patches for `cutAtPatches`. */
export function indexPatches(patches: readonly Patch[]): PatchEdges {
  const buckets = new Map<number, [Point, Point][]>();
  const boxed = patches.flatMap((patch) => {
    const box = regionBox(patch.region);
    return box ? [{ patch, box: boxGrow(box, 0) }] : [];
  });
  for (const { patch } of boxed) {
    for (const ring of patch.region) {
      ring.forEach((a, i) => addEdge(buckets, a, ring[(i + 1) % ring.length]!));
    }
  }
  return { patches: boxed, buckets };
}

function addEdge(buckets: Map<number, [Point, Point][]>, a: Point, b: Point): void {
  for (const key of bucketsTouched(a, b)) {
    const list = buckets.get(key);
    if (list) list.push([a, b]);
    else buckets.set(key, [[a, b]]);
  }
}

function bucketsTouched(a: Point, b: Point): number[] {
  const keys: number[] = [];
  for (let c = bucketOf(Math.min(a.x, b.x)); c <= bucketOf(Math.max(a.x, b.x)); c++) {
    for (let r = bucketOf(Math.min(a.y, b.y)); r <= bucketOf(Math.max(a.y, b.y)); r++) {
      keys.push(bucketKey(c, r));
    }
  }
  return keys;
}

/** The line in pieces, each with the patch under its middle; `own` where there is none. */
export function cutAtPatches(index: PatchEdges, line: Polyline, own: string): PatchPiece[] {
  const pieces: { patch: string; points: Point[] }[] = [];
  for (let i = 1; i < line.length; i++) {
    const stops = crossingStops(index, line[i - 1]!, line[i]!);
    for (let k = 1; k < stops.length; k++) {
      const from = stops[k - 1]!;
      const to = stops[k]!;
      const last = pieces[pieces.length - 1];
      const short = pointDistance(from, to) < SHORTEST_PIECE;
      const patch = short && last ? last.patch : patchAt(index, pointLerp(from, to, 0.5), own);
      if (last?.patch === patch) last.points.push(to);
      else pieces.push({ patch, points: [from, to] });
    }
  }
  return pieces;
}

/** The segment's ends and the places between them where it crosses a patch edge, in order. */
function crossingStops(index: PatchEdges, a: Point, b: Point): Point[] {
  const at = new Set<number>([0, 1]);
  const steps = Math.max(1, Math.ceil(pointDistance(a, b) / BUCKET));
  for (let s = 0; s < steps; s++) {
    const touched = bucketsTouched(pointLerp(a, b, s / steps), pointLerp(a, b, (s + 1) / steps));
    for (const key of touched) {
      for (const [c, d] of index.buckets.get(key) ?? []) {
        const hit = segmentIntersection(a, b, c, d);
        if (hit) at.add(hit.t);
      }
    }
  }
  const apart = SAME_POINT / Math.max(SAME_POINT, pointDistance(a, b));
  const inner = [...at]
    .sort((x, y) => x - y)
    .filter((t, i, all) => t > apart && t < 1 - apart && t - (all[i - 1] ?? 0) > apart);
  return [a, ...inner.map((t) => pointLerp(a, b, t)), b];
}

function patchAt(index: PatchEdges, p: Point, own: string): string {
  const found = index.patches.find(
    ({ patch, box }) =>
      p.x >= box.minX &&
      p.x <= box.maxX &&
      p.y >= box.minY &&
      p.y <= box.maxY &&
      regionContains(patch.region, p),
  );
  return found?.patch.id ?? own;
}
