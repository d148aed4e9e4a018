/** Where readings of a setting put a stake. */
import type { LineReading, NetworkReading } from '../adjust/network-model';
import { isLineReading } from '../adjust/network-model';
import { circleIntersection } from '../geometry/arc';
import { pointDistance, type Point } from '../geometry/point';

export type SettingPair = readonly [NetworkReading, NetworkReading];
export type PlaceOf = (id: string) => Point;

/**
 * Ties: the crossing nearer to `near`, which says the side. Along and across a line otherwise. Null
 * when the circles do not meet or the line has no length.
 */
export function placeSetting(
  [first, second]: SettingPair,
  placeOf: PlaceOf,
  near: Point,
): Point | null {
  if (isLineReading(first) && isLineReading(second)) return besideLine(first, second, placeOf);
  const meet = circleIntersection(
    placeOf(first.from),
    first.distance,
    placeOf(second.from),
    second.distance,
  );
  if (!meet) return null;
  return pointDistance(meet.left, near) <= pointDistance(meet.right, near) ? meet.left : meet.right;
}

function besideLine(first: LineReading, second: LineReading, placeOf: PlaceOf): Point | null {
  const [a, b] = [placeOf(first.from), placeOf(first.to)];
  const length = pointDistance(a, b);
  if (!(length > 0)) return null;
  const e = { x: (b.x - a.x) / length, y: (b.y - a.y) / length };
  const along = first.distance + (first.kind === 'middle' ? length / 2 : 0);
  return {
    x: a.x + along * e.x - second.distance * e.y,
    y: a.y + along * e.y + second.distance * e.x,
  };
}
