/**
 * True arcs, and paths of straight pieces and arcs. Boundaries that are arcs on the ground stay arcs
 * here; they become polygons only for booleans, within `FLATTEN`.
 */
import { angleNormalise, unitFromAngle } from './angle';
import { pointAlong, pointDistance, pointLerp, type Point } from './point';
import { segmentNearest } from './segment';
import { FLATTEN } from './tolerance';

export interface LineSegment {
  readonly kind: 'line';
  readonly from: Point;
  readonly to: Point;
}

/** A circular arc; `sweep` is signed, counter-clockwise positive, |sweep| ≤ 2π. */
export interface ArcSegment {
  readonly kind: 'arc';
  readonly centre: Point;
  readonly radius: number;
  readonly startAngle: number;
  readonly sweep: number;
}

export type PathSegment = LineSegment | ArcSegment;
/** Head to tail; closed when the last end meets the first start. */
export type Path = readonly PathSegment[];

export const lineSegment = (from: Point, to: Point): LineSegment => ({ kind: 'line', from, to });

export const arcPointAt = (arc: ArcSegment, angle: number): Point =>
  pointAlong(arc.centre, unitFromAngle(angle), arc.radius);

/** The arc about `centre` from `from` to `to`, turning `sense` (+1 counter-clockwise). */
export function arcBetween(centre: Point, from: Point, to: Point, sense: 1 | -1): ArcSegment {
  const startAngle = Math.atan2(from.y - centre.y, from.x - centre.x);
  const endAngle = Math.atan2(to.y - centre.y, to.x - centre.x);
  const turn = angleNormalise(sense * (endAngle - startAngle));
  return {
    kind: 'arc',
    centre,
    radius: pointDistance(centre, from),
    startAngle,
    sweep: sense * (turn === 0 ? 2 * Math.PI : turn),
  };
}

export const fullCircle = (centre: Point, radius: number): ArcSegment => ({
  kind: 'arc',
  centre,
  radius,
  startAngle: 0,
  sweep: 2 * Math.PI,
});

export const segmentStart = (s: PathSegment): Point =>
  s.kind === 'line' ? s.from : arcPointAt(s, s.startAngle);
export const segmentEnd = (s: PathSegment): Point =>
  s.kind === 'line' ? s.to : arcPointAt(s, s.startAngle + s.sweep);
export const segmentLength = (s: PathSegment): number =>
  s.kind === 'line' ? pointDistance(s.from, s.to) : Math.abs(s.sweep) * s.radius;

/** The point at share `t` (0 to 1) of the segment's length. */
export function segmentAt(s: PathSegment, t: number): Point {
  return s.kind === 'line' ? pointLerp(s.from, s.to, t) : arcPointAt(s, s.startAngle + t * s.sweep);
}

/** Distance from p to the segment, exactly. */
export function segmentDistance(s: PathSegment, p: Point): number {
  if (s.kind === 'line') return segmentNearest(s.from, s.to, p).distance;
  const angle = Math.atan2(p.y - s.centre.y, p.x - s.centre.x);
  const turned = angleNormalise(Math.sign(s.sweep) * (angle - s.startAngle));
  if (turned <= Math.abs(s.sweep)) return Math.abs(pointDistance(p, s.centre) - s.radius);
  return Math.min(pointDistance(p, segmentStart(s)), pointDistance(p, segmentEnd(s)));
}

/** The segment reversed. */
export function segmentReverse(s: PathSegment): PathSegment {
  return s.kind === 'line'
    ? { kind: 'line', from: s.to, to: s.from }
    : { ...s, startAngle: s.startAngle + s.sweep, sweep: -s.sweep };
}

export const pathReverse = (path: Path): Path => [...path].reverse().map(segmentReverse);
export const pathLength = (path: Path): number => path.reduce((n, s) => n + segmentLength(s), 0);

/** Chord count so that the sagitta stays within `tolerance`. */
export function arcPieces(radius: number, sweep: number, tolerance: number): number {
  if (radius <= tolerance) return 4;
  const step = 2 * Math.acos(1 - tolerance / radius);
  return Math.max(1, Math.ceil(Math.abs(sweep) / step));
}

/** Points along the path; a closed path's first point is not repeated when `closed`. */
export function pathFlatten(path: Path, closed: boolean, tolerance = FLATTEN): Point[] {
  const out: Point[] = [];
  for (const s of path) {
    const pieces = s.kind === 'line' ? 1 : arcPieces(s.radius, s.sweep, tolerance);
    for (let i = 0; i < pieces; i++) out.push(segmentAt(s, i / pieces));
  }
  const last = path[path.length - 1];
  if (!closed && last) out.push(segmentEnd(last));
  return out;
}

/** Signed area inside a closed path, arcs exact (chord polygon plus circular segments). */
export function pathSignedArea(path: Path): number {
  let sum = 0;
  for (const s of path) {
    const a = segmentStart(s);
    const b = segmentEnd(s);
    sum += (a.x * b.y - b.x * a.y) / 2;
    if (s.kind === 'arc') sum += (s.radius * s.radius * (s.sweep - Math.sin(s.sweep))) / 2;
  }
  return sum;
}

/** The circle through three points, or null when they lie on a line. */
export function circleThrough(
  a: Point,
  b: Point,
  c: Point,
): { readonly centre: Point; readonly radius: number } | null {
  const bx = b.x - a.x;
  const by = b.y - a.y;
  const cx = c.x - a.x;
  const cy = c.y - a.y;
  const d = 2 * (bx * cy - by * cx);
  if (d === 0) return null;
  const b2 = bx * bx + by * by;
  const c2 = cx * cx + cy * cy;
  const ux = (cy * b2 - by * c2) / d;
  const uy = (bx * c2 - cx * b2) / d;
  return { centre: { x: a.x + ux, y: a.y + uy }, radius: Math.hypot(ux, uy) };
}

/**
 * The two points at `r1` from `a` and `r2` from `b`: left then right of the line a→b; null when the
 * circles do not meet.
 */
export function circleIntersection(
  a: Point,
  r1: number,
  b: Point,
  r2: number,
): { readonly left: Point; readonly right: Point } | null {
  const d = pointDistance(a, b);
  if (d === 0 || d > r1 + r2 || d < Math.abs(r1 - r2)) return null;
  const along = (d * d + r1 * r1 - r2 * r2) / (2 * d);
  const off = Math.sqrt(Math.max(0, r1 * r1 - along * along));
  const e = { x: (b.x - a.x) / d, y: (b.y - a.y) / d };
  const foot = pointAlong(a, e, along);
  return {
    left: { x: foot.x - e.y * off, y: foot.y + e.x * off },
    right: { x: foot.x + e.y * off, y: foot.y - e.x * off },
  };
}
