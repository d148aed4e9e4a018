/** The two foul lines, by their outer edges: rays from the plate's rear point at 45° each side. */
import { unitFromBearing } from '../geometry/angle';
import { vectorDot, type Point } from '../geometry/point';

export type Side = 'left' | 'right';

/** Unit vectors from home along each foul line. */
export const FOUL_DIRECTION: Readonly<Record<Side, Point>> = {
  left: unitFromBearing(-45),
  right: unitFromBearing(45),
};

/** Unit vectors square to each foul line, pointing into foul ground. */
export const FOUL_OUTWARD: Readonly<Record<Side, Point>> = {
  left: unitFromBearing(-135),
  right: unitFromBearing(135),
};

/** The point `along` feet from home on the foul line and `outward` feet off it into foul ground. */
export function foulPoint(side: Side, along: number, outward = 0): Point {
  const d = FOUL_DIRECTION[side];
  const n = FOUL_OUTWARD[side];
  return { x: d.x * along + n.x * outward, y: d.y * along + n.y * outward };
}

/**
 * How far along the line parallel to a foul line (`outward` feet off it) a circle is left behind,
 * in feet from the foot of home on that line; null when the line misses the circle.
 */
export function alongToCircle(
  side: Side,
  centre: Point,
  radius: number,
  outward = 0,
): number | null {
  const along = vectorDot(centre, FOUL_DIRECTION[side]);
  const off = vectorDot(centre, FOUL_OUTWARD[side]) - outward;
  const half2 = radius * radius - off * off;
  return half2 < 0 ? null : along + Math.sqrt(half2);
}
