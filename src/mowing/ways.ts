/**
 * The ways of one machine over one ground: quick estimates for every pair of poses, and real transits
 * for those that matter. What was found once is kept, so that what is priced is what is driven.
 */
import type { Feet, Seconds } from '../base/units';
import type { Pose } from './drive';
import { bodyReach, type DriveGround } from './drive-ground';
import { findTransit, type Transit } from './find-transit';
import { waypointLattice } from './find-waypoints';
import type { Lattice } from './lattice';
import { tablePoses, turnClock } from './turn-seconds';
import type { Vehicle } from './vehicle';
import { prepareWayRound, type WayRound } from './way-round';

/** Seconds from pose i of one list to pose j of another. */
export type Estimates = (i: number, j: number) => Seconds;

export interface Ways {
  /** The quickest legal way, lifting and lowering left out; null where there is none. */
  readonly find: (from: Pose, to: Pose) => Transit | null;
  /** The quickest turn as if the ground were open, and what going round the skin adds. */
  readonly estimate: (from: readonly Pose[], to: readonly Pose[]) => Estimates;
}

/** `around`: ground to keep to wherever there is a way on it. */
export function prepareWays(
  ground: DriveGround,
  around: DriveGround | null,
  vehicle: Vehicle,
): Ways {
  const reach = bodyReach(vehicle.body);
  const lattices = [around, ground].flatMap((g) => (g ? [lazyLattice(g, reach)] : []));
  const known = new Map<string, Transit | null>();
  const search = (from: Pose, to: Pose): Transit | null => {
    for (const { on, lattice } of lattices) {
      const way = findTransit(on, vehicle, from, to, lattice);
      if (way) return way;
    }
    return null;
  };
  const wayRound = lazy((): WayRound => prepareWayRound(around ?? ground, reach));
  return {
    find: (from, to) => {
      const key = `${poseKey(from)} ${poseKey(to)}`;
      const kept = known.get(key);
      if (kept !== undefined) return kept;
      const way = search(from, to);
      known.set(key, way);
      return way;
    },
    estimate: (from, to) => {
      const clock = turnClock(vehicle, tablePoses(vehicle, from), tablePoses(vehicle, to));
      const detours = wayRound().detours(from, to);
      return (i, j) => clock(i, j) + detours(i, j) / vehicle.runningFps;
    },
  };
}

const poseKey = ({ x, y, heading }: Pose): string => `${x},${y},${heading}`;

const lazyLattice = (on: DriveGround, reach: Feet) => ({
  on,
  lattice: lazy((): Lattice => waypointLattice(on, reach)),
});

/** Worked out when first asked for. */
function lazy<T>(make: () => T): () => T {
  let made: { readonly value: T } | null = null;
  return () => (made ??= { value: make() }).value;
}
