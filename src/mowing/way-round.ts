/** How much farther it is round the skin than straight across: an estimate for a great many pairs. */
import type { Feet } from '../base/units';
import { pointDistance, type Point } from '../geometry/point';
import type { DriveGround } from './drive-ground';
import { isOpen, makeLattice, nearestNode, spreadFrom, type Lattice, type Spread } from './lattice';

/** Step of the lattice, feet: coarse, since what is driven is looked for on a fine one. */
const STEP = 12;
/** A way of steps to eight neighbours is at most this much longer than the shortest one. */
const LATTICE_MOST = 1 / Math.cos(Math.PI / 8);
/** And this much on the average over all directions: (4/π)·2·tan(π/8) of the octagon's steps. */
const LATTICE_MEAN = (8 / Math.PI) * Math.tan(Math.PI / 8);
/** Taken to be that much longer, as a share of the straight line, where the lattice has no way. */
const UNKNOWN = 0.5;

/** Feet by which the way from place i of the one list to place j of the other is longer than straight. */
export type Detour = (i: number, j: number) => Feet;

export interface WayRound {
  readonly detours: (from: readonly Point[], to: readonly Point[]) => Detour;
}

/** Prepares estimates for a body of this reach; ways once spread out are kept. */
export function prepareWayRound(ground: DriveGround, reach: Feet): WayRound {
  const lattice = makeLattice(ground.box, STEP, (p) => isOpen(ground, reach, p));
  const spreads = new Map<number, Spread>();
  const spread = (node: number): Spread => {
    const known = spreads.get(node) ?? spreadFrom(lattice, node);
    spreads.set(node, known);
    return known;
  };
  return {
    detours: (from, to) => {
      const starts = from.map((p) => nearestNode(lattice, p));
      const goals = to.map((p) => nearestNode(lattice, p));
      return (i, j) => {
        const [a, b] = [from[i]!, to[j]!];
        const apart = pointDistance(a, b);
        const [start, goal] = [starts[i]!, goals[j]!];
        return apart <= 2 * STEP || start < 0 ? 0 : detour(lattice, spread(start), goal, apart);
      };
    },
  };
}

function detour({ step }: Lattice, { feet }: Spread, goal: number, apart: Feet): Feet {
  const along = feet[goal]!;
  if (along === Infinity) return UNKNOWN * apart;
  // Both ends are rounded to a node, half a step's diagonal at most.
  if (along <= LATTICE_MOST * apart + Math.SQRT2 * step) return 0;
  return Math.max(0, along / LATTICE_MEAN - apart);
}
