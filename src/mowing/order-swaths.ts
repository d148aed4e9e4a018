/** The order in which one machine drives the swaths of one group. Directions are given, never turned. */
import type { Feet } from '../base/units';
import { searchTour } from '../tour/search-tour';
import type { CostMatrix } from '../tour/model';
import { shortestTurn } from './dubins';
import type { Pose } from './drive';
import type { Swath } from './swath-model';

/** Ends of a swath as driven. */
export interface SwathEnds {
  readonly swath: Swath;
  readonly entry: Pose;
  readonly exit: Pose;
}

/** Whether the straight line between two places crosses forbidden ground. */
export type Blocked = (from: Pose, to: Pose) => boolean;

/** Extra way round when the straight line is blocked, as a share of it; a rough guess. */
const WAY_ROUND = 0.5;
/** Kicks of the search, for each swath of a group and at most. */
const KICKS_EACH = 12;
const MOST_KICKS = 2000;

/**
 * The swaths in driving order, starting from `start` and ending where it may: a short tour over the
 * transits from each swath's end to each other's start (`tour/`).
 */
export function orderSwaths(
  ends: readonly SwathEnds[],
  start: Pose,
  radius: Feet,
  blocked: Blocked,
): SwathEnds[] {
  if (ends.length < 2) return [...ends];
  const search = searchTour(transits(ends, start, radius, blocked));
  search.improve(Math.min(MOST_KICKS, KICKS_EACH * ends.length));
  return search
    .tour()
    .slice(1)
    .map((node) => ends[node - 1]!);
}

/** Lengths of the ways. Node 0 is the start, and the end of the way from whatever swath comes last: that costs nothing. */
export function transits(
  ends: readonly SwathEnds[],
  start: Pose,
  radius: Feet,
  blocked: Blocked,
): CostMatrix {
  const count = ends.length + 1;
  const cost = new Float64Array(count * count);
  for (let i = 0; i < count; i++) {
    const from = i === 0 ? start : ends[i - 1]!.exit;
    for (let j = 1; j < count; j++) {
      if (i !== j) cost[i * count + j] = wayLength(from, ends[j - 1]!.entry, radius, blocked);
    }
  }
  return { count, cost };
}

function wayLength(from: Pose, to: Pose, radius: Feet, blocked: Blocked): number {
  const apart = Math.hypot(to.x - from.x, to.y - from.y);
  const far = apart > 8 * radius;
  const extra = far && blocked(from, to) ? WAY_ROUND * apart : 0;
  return shortestTurn(from, to, radius).lengthFt + extra;
}
