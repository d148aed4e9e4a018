/**
 * Cutting big outlines down to a neighbourhood before a boolean, which costs time by the vertex.
 */
import { boxesMeet, boxGrow, type Box } from '../geometry/box';
import type { Point } from '../geometry/point';
import { regionBox, regionIntersect, regionSubtract, type Region } from '../geometry/region';

/**
 * The rings clipped to a box (Sutherland & Hodgman 1974), with the even-odd meaning kept inside the
 * box. Rings may run back and forth along the box's edge: grow the box and use the result as the
 * partner of a boolean only.
 */
export function clipToBox(region: Region, box: Box): Region {
  return region
    .map((ring) => {
      let out = cutSide(ring, (p) => p.x - box.minX);
      out = cutSide(out, (p) => box.maxX - p.x);
      out = cutSide(out, (p) => p.y - box.minY);
      return cutSide(out, (p) => box.maxY - p.y);
    })
    .filter((ring) => ring.length > 2);
}

function cutSide(ring: readonly Point[], inside: (p: Point) => number): Point[] {
  const out: Point[] = [];
  for (let i = 0, j = ring.length - 1; i < ring.length; j = i++) {
    const a = ring[j]!;
    const b = ring[i]!;
    const da = inside(a);
    const db = inside(b);
    if (da >= 0 !== db >= 0) {
      const t = da / (da - db);
      out.push({ x: a.x + t * (b.x - a.x), y: a.y + t * (b.y - a.y) });
    }
    if (db >= 0) out.push(b);
  }
  return out;
}

/** How far beyond a region its neighbourhood reaches, so that clip edges stay clear of it. */
const MARGIN = 1;

/** `small` ∩ `large`, looking only at the part of `large` round `small`. */
export function intersectNear(small: Region, large: Region): Region {
  const box = regionBox(small);
  return box ? regionIntersect(small, clipToBox(large, boxGrow(box, MARGIN))) : small;
}

/** `from` − `cut`, untouched when they are apart. */
export function subtractNear(from: Region, cut: Region): Region {
  const box = regionBox(from);
  const other = regionBox(cut);
  if (!box || !other || !boxesMeet(box, other)) return from;
  return regionSubtract(from, clipToBox(cut, boxGrow(box, MARGIN)));
}

/** True when the whole box round `inner` lies within `outer`: no boolean is needed then. */
export function boxWithin(inner: Region, outer: Region): boolean {
  const box = regionBox(inner);
  if (!box) return true;
  const clipped = clipToBox(outer, box);
  return (
    clipped.length === 1 && clipped[0]!.length === 4 && clipped[0]!.every((p) => onCorner(box, p))
  );
}

const onCorner = (box: Box, p: Point): boolean =>
  (p.x === box.minX || p.x === box.maxX) && (p.y === box.minY || p.y === box.maxY);
