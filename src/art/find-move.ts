/** The shortest straight move that brings a graphic on to the ground it may lie on. */
import type { Feet } from '../base/units';
import { boxHeight, boxWidth } from '../geometry/box';
import { pointAlong, type Point } from '../geometry/point';
import { regionArea, regionBox, regionSubtract, type Region } from '../geometry/region';

/** Art may stick out by no more than this (square feet): a rounding of outlines, not a placement. */
export const SLACK_SQ_FT = 0.05;

export interface Move {
  /** Whole feet. */
  readonly ft: Feet;
  /** As seen from home plate, read after the length: `out toward centre field`, `left`. */
  readonly way: string;
}

const WAYS: readonly { readonly way: string; readonly unit: Point }[] = [
  { way: 'out toward centre field', unit: { x: 0, y: 1 } },
  { way: 'in toward second base', unit: { x: 0, y: -1 } },
  { way: 'to the left', unit: { x: -1, y: 0 } },
  { way: 'to the right', unit: { x: 1, y: 0 } },
];

/** Longer moves than this are a new placement, not a correction. */
const LONGEST: Feet = 128;

/**
 * The shortest move, in whole feet and one of four ways, after which `graphic` lies in `room`. `null`
 * when none of up to 128 ft does it.
 */
export function findMove(graphic: Region, room: Region): Move | null {
  let best: Move | null = null;
  for (const { way, unit } of WAYS) {
    const most = best ? best.ft - 1 : LONGEST;
    const ft = shortest((by) => liesIn(moved(graphic, unit, by), room), most);
    if (ft !== null) best = { ft, way };
  }
  return best;
}

/** True when no more than the slack of `graphic` is outside `room`. */
export function liesIn(graphic: Region, room: Region): boolean {
  const [inner, outer] = [regionBox(graphic), regionBox(room)];
  if (!inner || !outer) return inner === null;
  if (boxWidth(inner) > boxWidth(outer) || boxHeight(inner) > boxHeight(outer)) return false;
  return regionArea(regionSubtract(graphic, room)) <= SLACK_SQ_FT;
}

/** Doubles the move until it helps, then halves the bracket; `null` when nothing up to `most` does. */
function shortest(helps: (ft: Feet) => boolean, most: Feet): Feet | null {
  if (most < 1) return null;
  let high = 1;
  while (!helps(high)) {
    if (high >= most) return null;
    high = Math.min(2 * high, most);
  }
  let low = Math.floor(high / 2);
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (helps(middle)) high = middle;
    else low = middle;
  }
  return high;
}

const moved = (region: Region, unit: Point, by: Feet): Region =>
  region.map((ring) => ring.map((p) => pointAlong(p, unit, by)));
