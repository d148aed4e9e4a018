/** Lines cut to square ends that stay on the ground they are meant for. */
import type { Feet } from '../base/units';
import { pointDistance, pointSubtract, vectorUnit, type Point } from '../geometry/point';
import { polylineAt, polylineBetween, polylineLength, type Polyline } from '../geometry/polyline';
import { regionContains, type Region } from '../geometry/region';

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
  return from === 0 && back === length ? [...line] : polylineBetween(line, from, back);
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
