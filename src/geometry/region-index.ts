/** A region prepared for many point tests: its edges sorted into level strips. */
import { boxOfRings } from './box';
import { pointOrientation, type Point } from './point';
import type { Region } from './region';

const STRIP_FT = 2;

interface Edge {
  readonly a: Point;
  readonly b: Point;
}

export interface RegionIndex {
  readonly contains: (p: Point) => boolean;
}

/** Even-odd over all rings, the same answer as `regionContains`. */
export function indexRegion(region: Region): RegionIndex {
  const box = boxOfRings(region);
  if (!box) return { contains: () => false };
  const strips: Edge[][] = [];
  const stripOf = (y: number): number => Math.floor((y - box.minY) / STRIP_FT);
  for (const ring of region) {
    ring.forEach((b, i) => {
      const a = ring[(i === 0 ? ring.length : i) - 1]!;
      const top = stripOf(Math.max(a.y, b.y));
      for (let s = stripOf(Math.min(a.y, b.y)); s <= top; s++) (strips[s] ??= []).push({ a, b });
    });
  }
  return {
    contains: (p) => p.x >= box.minX && p.x <= box.maxX && isInside(strips[stripOf(p.y)] ?? [], p),
  };
}

function isInside(edges: readonly Edge[], p: Point): boolean {
  let inside = false;
  for (const { a, b } of edges) {
    if (a.y > p.y === b.y > p.y) continue;
    const side = pointOrientation(a, b, p);
    if (b.y > a.y ? side > 0 : side < 0) inside = !inside;
  }
  return inside;
}
