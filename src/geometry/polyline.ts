/** Open polylines and closed rings as point lists; a ring does not repeat its first point. */
import { boxOfPoints } from './box';
import { pointDistance, pointLerp, pointOrientation, type Point } from './point';
import { segmentNearest } from './segment';
import { SAME_POINT } from './tolerance';

export type Polyline = readonly Point[];
/** Closed; the last point joins the first, which is not repeated. */
export type Ring = readonly Point[];

/** Length of an open line. */
export function polylineLength(line: Polyline): number {
  let sum = 0;
  for (let i = 1; i < line.length; i++) sum += pointDistance(line[i - 1]!, line[i]!);
  return sum;
}

/** Length round a ring, its closing side included. */
export function ringPerimeter(ring: Ring): number {
  return ring.length < 2
    ? 0
    : polylineLength(ring) + pointDistance(ring[ring.length - 1]!, ring[0]!);
}

/** Signed area: positive for a counter-clockwise ring (the shoelace formula). */
export function ringSignedArea(ring: Ring): number {
  let sum = 0;
  for (let i = 0, j = ring.length - 1; i < ring.length; j = i++) {
    sum += ring[j]!.x * ring[i]!.y - ring[i]!.x * ring[j]!.y;
  }
  return sum / 2;
}

/** Even-odd test; a point exactly on the edge may fall either way. */
export function ringContains(ring: Ring, p: Point): boolean {
  let inside = false;
  for (let i = 0, j = ring.length - 1; i < ring.length; j = i++) {
    const a = ring[i]!;
    const b = ring[j]!;
    if (a.y > p.y !== b.y > p.y) {
      const side = pointOrientation(a, b, p);
      if (b.y > a.y ? side > 0 : side < 0) inside = !inside;
    }
  }
  return inside;
}

/** Nearest point of a polyline (closed when `closed`) to p. */
export function polylineNearest(
  line: Polyline,
  p: Point,
  closed = false,
): {
  readonly point: Point;
  readonly index: number;
  readonly t: number;
  readonly distance: number;
} {
  let best = { point: line[0] ?? p, index: 0, t: 0, distance: Infinity };
  const last = closed ? line.length : line.length - 1;
  if (line.length === 1) best = { ...best, distance: pointDistance(best.point, p) };
  for (let i = 0; i < last; i++) {
    const near = segmentNearest(line[i]!, line[(i + 1) % line.length]!, p);
    if (near.distance < best.distance) best = { ...near, index: i };
  }
  return best;
}

/** The same line with no piece longer than `step`; original points are kept. */
export function polylineResample(line: Polyline, step: number, closed = false): Point[] {
  const out: Point[] = [];
  const last = closed ? line.length : line.length - 1;
  for (let i = 0; i < last; i++) {
    const a = line[i]!;
    const b = line[(i + 1) % line.length]!;
    const pieces = Math.max(1, Math.ceil(pointDistance(a, b) / step));
    for (let k = 0; k < pieces; k++) out.push(k === 0 ? a : pointLerp(a, b, k / pieces));
  }
  const end = line[line.length - 1];
  if (!closed && end) out.push(end);
  return out;
}

/** The point at `distance` along the line, clamped to its ends. */
export function polylineAt(line: Polyline, distance: number): Point {
  let left = distance;
  for (let i = 1; i < line.length; i++) {
    const a = line[i - 1]!;
    const b = line[i]!;
    const length = pointDistance(a, b);
    if (left <= length && length > 0) return pointLerp(a, b, Math.max(0, left) / length);
    left -= length;
  }
  return line[line.length - 1]!;
}

/** The part of a line between two distances along it. */
export function polylineBetween(line: Polyline, from: number, to: number): Point[] {
  const out: Point[] = [polylineAt(line, from)];
  let at = 0;
  for (let i = 1; i < line.length; i++) {
    at += pointDistance(line[i - 1]!, line[i]!);
    if (at > from && at < to) out.push(line[i]!);
  }
  out.push(polylineAt(line, to));
  return out.filter((p, i) => i === 0 || pointDistance(p, out[i - 1]!) > 0);
}

/** Drops consecutive points closer than `within`. */
export function ringClean(ring: Ring, within = SAME_POINT): Point[] {
  const out: Point[] = [];
  for (const p of ring) {
    const before = out[out.length - 1];
    if (!before || pointDistance(before, p) > within) out.push(p);
  }
  while (out.length > 1 && pointDistance(out[0]!, out[out.length - 1]!) <= within) out.pop();
  return out;
}

/** Douglas-Peucker simplification of an open line (Douglas & Peucker 1973), iterative. */
export function polylineSimplify(line: Polyline, tolerance: number): Point[] {
  if (line.length < 3) return [...line];
  const keep = new Uint8Array(line.length);
  keep[0] = keep[line.length - 1] = 1;
  const stack: [number, number][] = [[0, line.length - 1]];
  for (let span = stack.pop(); span; span = stack.pop()) {
    const [from, to] = span;
    let worst = -1;
    let index = -1;
    for (let i = from + 1; i < to; i++) {
      const d = segmentNearest(line[from]!, line[to]!, line[i]!).distance;
      if (d > worst) {
        worst = d;
        index = i;
      }
    }
    if (worst > tolerance) {
      keep[index] = 1;
      stack.push([from, index], [index, to]);
    }
  }
  return line.filter((_, i) => keep[i] === 1);
}

/** Douglas-Peucker on a ring, opened at its first point and the point farthest from it. */
export function ringSimplify(ring: Ring, tolerance: number): Point[] {
  if (ring.length < 4) return [...ring];
  let far = 0;
  let best = -1;
  ring.forEach((p, i) => {
    const d = pointDistance(ring[0]!, p);
    if (d > best) {
      best = d;
      far = i;
    }
  });
  const first = polylineSimplify(ring.slice(0, far + 1), tolerance);
  const second = polylineSimplify([...ring.slice(far), ring[0]!], tolerance);
  return [...first.slice(0, -1), ...second.slice(0, -1)];
}

/** The smallest box round the line; null for none. */
export function polylineBox(line: Polyline) {
  return boxOfPoints(line);
}
