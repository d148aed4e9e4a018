/** Lines beside a line: parallel, longer, with rounded kinks. */
import { pointAlong, pointDistance, pointSubtract, vectorUnit, type Point } from './point';
import type { Polyline } from './polyline';

/** The line `offset` to the left of `line`, corners mitred; for offsets below every bend's radius. */
export function parallelLine(line: Polyline, offset: number): Point[] {
  const clean = line.filter((p, i) => i === 0 || pointDistance(p, line[i - 1]!) > 0);
  return clean.map((p, i) => {
    const before = unitBetween(clean[i - 1], p);
    const after = unitBetween(p, clean[i + 1]);
    const a = before ?? after ?? { x: 1, y: 0 };
    const b = after ?? before ?? { x: 1, y: 0 };
    const normal = { x: -(a.y + b.y), y: a.x + b.x };
    const scale = offset / (1 + a.x * b.x + a.y * b.y);
    return pointAlong(p, normal, scale);
  });
}

function unitBetween(a: Point | undefined, b: Point | undefined): Point | null {
  return a && b ? vectorUnit(pointSubtract(b, a)) : null;
}

/** Unit direction at an end of a line, out of the line. */
export function endDirection(line: Polyline, end: 'start' | 'end'): Point {
  const [tip, inner] =
    end === 'start' ? [line[0]!, line[1]!] : [line[line.length - 1]!, line[line.length - 2]!];
  return vectorUnit(pointSubtract(tip, inner)) ?? { x: 0, y: 1 };
}

/** The line made longer by `by` at both ends, straight on. */
export function extendLine(line: Polyline, by: number): Point[] {
  const first = pointAlong(line[0]!, endDirection(line, 'start'), by);
  const last = pointAlong(line[line.length - 1]!, endDirection(line, 'end'), by);
  return [first, ...line, last];
}

/** A corner of a line rounded: every kink replaced by an arc of `radius`, where there is room. */
export function roundKinks(line: Polyline, radius: number): Point[] {
  const out: Point[] = [line[0]!];
  for (let i = 1; i + 1 < line.length; i++)
    out.push(...fillet(line[i - 1]!, line[i]!, line[i + 1]!, radius));
  out.push(line[line.length - 1]!);
  return out;
}

function fillet(a: Point, b: Point, c: Point, radius: number): Point[] {
  const u = vectorUnit(pointSubtract(b, a));
  const v = vectorUnit(pointSubtract(c, b));
  if (!u || !v) return [b];
  const turn = Math.atan2(u.x * v.y - u.y * v.x, u.x * v.x + u.y * v.y);
  if (Math.abs(turn) < FILLET_FROM) return [b];
  const room = 0.45 * Math.min(pointDistance(a, b), pointDistance(b, c));
  const back = Math.min(radius * Math.tan(Math.abs(turn) / 2), room);
  const from = pointAlong(b, u, -back);
  const to = pointAlong(b, v, back);
  const pieces = Math.max(2, Math.ceil(Math.abs(turn) / FILLET_FROM));
  return Array.from({ length: pieces + 1 }, (_, k) => quadratic(from, b, to, k / pieces));
}

/** Turns below 3° are taken as part of a bend. */
const FILLET_FROM = Math.PI / 60;

const quadratic = (a: Point, b: Point, c: Point, t: number): Point => ({
  x: (1 - t) ** 2 * a.x + 2 * t * (1 - t) * b.x + t * t * c.x,
  y: (1 - t) ** 2 * a.y + 2 * t * (1 - t) * b.y + t * t * c.y,
});
