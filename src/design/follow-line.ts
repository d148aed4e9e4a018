/** Lines beside a line, and square ends that stay on the ground they are meant for. */
import type { Feet } from '../base/units';
import {
  pointAlong,
  pointDistance,
  pointSubtract,
  vectorUnit,
  type Point,
} from '../geometry/point';
import { polylineAt, polylineLength, type Polyline } from '../geometry/polyline';
import { regionContains, type Region } from '../geometry/region';

/** The line `offset` to the left of `line`, corners mitred; for offsets below every bend's radius. */
export function parallelLine(line: Polyline, offset: Feet): Point[] {
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
export function extendLine(line: Polyline, by: Feet): Point[] {
  const first = pointAlong(line[0]!, endDirection(line, 'start'), by);
  const last = pointAlong(line[line.length - 1]!, endDirection(line, 'end'), by);
  return [first, ...line, last];
}

/** The part of a line between two distances along it. */
export function lineBetween(line: Polyline, from: Feet, to: Feet): Point[] {
  const out: Point[] = [polylineAt(line, from)];
  let at = 0;
  for (let i = 1; i < line.length; i++) {
    at += pointDistance(line[i - 1]!, line[i]!);
    if (at > from && at < to) out.push(line[i]!);
  }
  out.push(polylineAt(line, to));
  return out.filter((p, i) => i === 0 || pointDistance(p, out[i - 1]!) > 0);
}

const STEP: Feet = 0.5;
const HALVINGS = 12;

/** Whether a square cut of half width `half` at distance `s` stands wholly in the region. */
export type CutTest = (at: Point, direction: Point) => boolean;

/** The test of a cut of half width `half`: five points across it lie inside `region`. */
export function cutInside(region: Region, half: Feet): CutTest {
  return (at, d) =>
    [-1, -0.5, 0, 0.5, 1].every((k) =>
      regionContains(region, { x: at.x - d.y * half * k, y: at.y + d.x * half * k }),
    );
}

/**
 * Shortens a line at both ends to where the test first holds, within `reach` of each end; null when
 * it does not hold there at all.
 */
export function trimEnds(line: Polyline, test: CutTest, reach: Feet): Point[] | null {
  const length = polylineLength(line);
  const from = firstGood(line, test, 0, Math.min(reach, length), 1);
  const back = firstGood(line, test, length, Math.max(0, length - reach), -1);
  if (from === null || back === null || back - from <= 0) return null;
  return from === 0 && back === length ? [...line] : lineBetween(line, from, back);
}

function firstGood(
  line: Polyline,
  test: CutTest,
  start: Feet,
  stop: Feet,
  sign: 1 | -1,
): Feet | null {
  const good = (s: Feet) => test(polylineAt(line, s), directionAt(line, s));
  if (good(start)) return start;
  let bad = start;
  for (let s = start + sign * STEP; sign * (stop - s) >= 0; s += sign * STEP) {
    if (good(s)) return bisect(good, bad, s);
    bad = s;
  }
  return null;
}

function bisect(good: (s: Feet) => boolean, bad: Feet, fine: Feet): Feet {
  let [low, high] = [bad, fine];
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2;
    if (good(middle)) high = middle;
    else low = middle;
  }
  return high;
}

/** Unit direction of travel at a distance along a line. */
export function directionAt(line: Polyline, s: Feet): Point {
  let left = s;
  for (let i = 1; i < line.length; i++) {
    const length = pointDistance(line[i - 1]!, line[i]!);
    if (length > 0 && (left <= length || i === line.length - 1)) {
      return vectorUnit(pointSubtract(line[i]!, line[i - 1]!))!;
    }
    left -= length;
  }
  return { x: 0, y: 1 };
}

/** A corner of a line rounded: every kink replaced by an arc of `radius`, where there is room. */
export function roundKinks(line: Polyline, radius: Feet): Point[] {
  const out: Point[] = [line[0]!];
  for (let i = 1; i + 1 < line.length; i++)
    out.push(...fillet(line[i - 1]!, line[i]!, line[i + 1]!, radius));
  out.push(line[line.length - 1]!);
  return out;
}

function fillet(a: Point, b: Point, c: Point, radius: Feet): Point[] {
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
