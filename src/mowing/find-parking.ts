/** Where a machine waits: the clear place nearest the gate, off the set-out area. */
import { pointDistance, type Point } from '../geometry/point';
import { regionContains, regionEdgeDistance, type Region } from '../geometry/region';
import { clearanceAt, type DriveGround } from './drive-ground';

/** Spacing of the places tried, feet. */
const STEP = 2;

/**
 * The place nearest `gate` with `reach` of drivable ground all round, outside `keepOff` by `reach`
 * and at least `2·reach` from the places in `taken`. Null when the ground has no such place.
 */
export function findParking(
  ground: DriveGround,
  gate: Point,
  reach: number,
  keepOff: Region,
  taken: readonly Point[],
): Point | null {
  const near = findWithin(ground, gate, reach, keepOff, taken, NEAR);
  return near ?? findWithin(ground, gate, reach, keepOff, taken, Infinity);
}

/** Tried first: places within this of the gate, feet. */
const NEAR = 60;

function findWithin(
  ground: DriveGround,
  gate: Point,
  reach: number,
  keepOff: Region,
  taken: readonly Point[],
  most: number,
): Point | null {
  const places: { readonly at: Point; readonly away: number }[] = [];
  const { minX, minY, maxX, maxY } = ground.box;
  for (let x = Math.max(minX, gate.x - most); x <= Math.min(maxX, gate.x + most); x += STEP) {
    for (let y = Math.max(minY, gate.y - most); y <= Math.min(maxY, gate.y + most); y += STEP) {
      const at = { x, y };
      if (clearanceAt(ground, at) >= reach) places.push({ at, away: pointDistance(at, gate) });
    }
  }
  places.sort((a, b) => a.away - b.away);
  const found = places.find(
    ({ at }) =>
      taken.every((t) => pointDistance(t, at) >= 2 * reach) &&
      !regionContains(keepOff, at) &&
      (keepOff.length === 0 || regionEdgeDistance(keepOff, at) >= reach),
  );
  return found?.at ?? null;
}
