/**
 * Contours of one shape: equal letters, and parts that are each other's mirror image left and right. They
 * get one trace, moved or mirrored, so that they can be given the same pieces.
 */
import { boxHeight, boxOfPoints, boxWidth } from '../geometry/box';
import { inches } from '../base/units';
import type { Point } from '../geometry/point';
import { ringPerimeter, ringSignedArea, type Ring } from '../geometry/polyline';
import type { Region } from '../geometry/region';
import type { Chain, Link } from './chain';
import { edgeIndex, nearestEdgeDistance } from './edge-index';
import { traceContour, type Trace } from './trace';

/** How a contour follows from an earlier one. */
export interface Likeness {
  /** Which contour of the region. */
  readonly of: number;
  readonly mirrored: boolean;
}

export interface ShapedTrace {
  readonly trace: Trace;
  /** Null for a shape's first contour. */
  readonly like: Likeness | null;
}

/** Two contours of one shape lie this near each other when laid over one another. */
const SAME_SHAPE_FT = inches(0.05);
const CELL_FT = 1.5;

/** The trace of every contour; those of a shape seen before are the first one's, moved or mirrored. */
export function traceContours(region: Region): ShapedTrace[] {
  const out: ShapedTrace[] = [];
  region.forEach((ring, i) => {
    const found = findLike(region, out, ring);
    if (!found) out.push({ trace: traceContour(ring, i), like: null });
    else
      out.push({ trace: placeTrace(out[found.of]!.trace, ring, i, found.mirrored), like: found });
  });
  return out;
}

function findLike(region: Region, before: readonly ShapedTrace[], ring: Ring): Likeness | null {
  for (const [of, { like }] of before.entries()) {
    if (like || !sameSize(region[of]!, ring)) continue;
    for (const mirrored of [false, true]) {
      if (liesOver(region[of]!, ring, mirrored)) return { of, mirrored };
    }
  }
  return null;
}

function sameSize(a: Ring, b: Ring): boolean {
  const [boxA, boxB] = [boxOfPoints(a)!, boxOfPoints(b)!];
  const near = (p: number, q: number) => Math.abs(p - q) <= 2 * SAME_SHAPE_FT;
  return (
    near(boxWidth(boxA), boxWidth(boxB)) &&
    near(boxHeight(boxA), boxHeight(boxB)) &&
    ringSignedArea(a) > 0 === ringSignedArea(b) > 0 &&
    Math.abs(ringPerimeter(a) / ringPerimeter(b) - 1) < 0.01
  );
}

/** What lays ring `a` over ring `b`, their boxes middle on middle. */
function placing(a: Ring, b: Ring, mirrored: boolean): (p: Point) => Point {
  const [from, to] = [boxOfPoints(a)!, boxOfPoints(b)!];
  const sign = mirrored ? -1 : 1;
  const dx = (to.minX + to.maxX - sign * (from.minX + from.maxX)) / 2;
  const dy = (to.minY + to.maxY - from.minY - from.maxY) / 2;
  return (p) => ({ x: sign * p.x + dx, y: p.y + dy });
}

function liesOver(a: Ring, b: Ring, mirrored: boolean): boolean {
  const placed = a.map(placing(a, b, mirrored));
  return allNear(placed, b) && allNear(b, placed);
}

function allNear(points: readonly Point[], ring: Ring): boolean {
  const edges = ring.map((a, i) => ({ a, b: ring[(i + 1) % ring.length]!, tag: null }));
  const index = edgeIndex(edges, CELL_FT);
  return points.every((p) => nearestEdgeDistance(index, p, 1) <= SAME_SHAPE_FT);
}

/** A mirrored trace runs backward, so that it keeps its sense round the contour. */
function placeTrace(t: Trace, ring: Ring, contour: number, mirrored: boolean): Trace {
  const move = placing(t.ring, ring, mirrored);
  const index = (k: number) => (mirrored ? (t.count - k) % t.count : k);
  const points = Array.from({ length: t.count }, (_, k) =>
    move({ x: t.x[index(k)]!, y: t.y[index(k)]! }),
  );
  return {
    ...t,
    contour,
    ring,
    x: Float64Array.from(points, (p) => p.x),
    y: Float64Array.from(points, (p) => p.y),
    along: t.along.map((_, k) => (mirrored ? t.perimeter - t.along[t.count - k]! : t.along[k]!)),
    corners: t.corners.map((_, k) => t.corners[index(k)]!),
  };
}

/** The chain of the first contour as it runs along one that is like it. */
export function likeChain(chain: Chain, count: number, mirrored: boolean): Chain {
  if (!mirrored) return { ...chain, links: chain.links.map((link) => ({ ...link })) };
  const links = [...chain.links].reverse().map((link): Link => {
    const from = (2 * count - link.to) % count;
    return { ...link, from, to: from + link.to - link.from };
  });
  return { ...chain, links };
}
