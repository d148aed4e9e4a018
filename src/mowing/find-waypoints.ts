/** A way round the skin for a machine: lattice search, then only the corners that are needed. */
import { pointDistance, pointLerp, type Point } from '../geometry/point';
import type { Pose } from './drive';
import type { DriveGround } from './drive-ground';
import {
  chainTo,
  isOpen,
  makeLattice,
  nearestNode,
  nodeAt,
  spreadFrom,
  type Lattice,
} from './lattice';

/** Lattice step, feet. */
const STEP = 4;
/** A straight way longer than this is given a waypoint in its middle. */
const LONG = 60;

/** The 4-ft lattice on which ways for a body of this reach are looked for. */
export const waypointLattice = (ground: DriveGround, reach: number): Lattice =>
  makeLattice(ground.box, STEP, (p) => isOpen(ground, reach, p));

/**
 * Poses between `from` and `to` from which each next one can be seen with `reach` + 2 ft of clear
 * ground on either side; empty when `to` is near and can be seen, null when there is no way. The
 * shortest way on `waypointLattice` pulled tight.
 */
export function findWaypoints(
  ground: DriveGround,
  reach: number,
  from: Pose,
  to: Pose,
  lattice: Lattice,
): Pose[] | null {
  const clear = (p: Point) => isOpen(ground, reach, p);
  const start = nearestNode(lattice, from);
  const goal = nearestNode(lattice, to);
  if (start < 0 || goal < 0) return null;
  const chain = chainTo(spreadFrom(lattice, start, goal), goal);
  if (!chain) return null;
  const tight = pullTight(
    chain.map((n) => nodeAt(lattice, n)),
    clear,
  );
  return facing([from, ...corners(tight), to]);
}

/** The corners of a tight way without its ends; the middle of a long straight one. */
function corners(tight: readonly Point[]): readonly Point[] {
  if (tight.length > 2) return tight.slice(1, -1);
  const [a, b] = [tight[0]!, tight[tight.length - 1]!];
  return pointDistance(a, b) > LONG ? [pointLerp(a, b, 0.5)] : [];
}

/** Keeps a corner only where the straight on from the last kept one would come too near an edge. */
function pullTight(chain: readonly Point[], clear: (p: Point) => boolean): Point[] {
  const kept: Point[] = [chain[0]!];
  let i = 0;
  while (i < chain.length - 1) {
    let next = i + 1;
    for (let j = chain.length - 1; j > i + 1; j--) {
      if (sees(chain[i]!, chain[j]!, clear)) {
        next = j;
        break;
      }
    }
    kept.push(chain[next]!);
    i = next;
  }
  return kept;
}

function sees(a: Point, b: Point, clear: (p: Point) => boolean): boolean {
  const steps = Math.ceil(pointDistance(a, b) / 2);
  for (let i = 1; i < steps; i++) if (!clear(pointLerp(a, b, i / steps))) return false;
  return true;
}

/** The inner points, each facing from the one before it toward the one after. */
function facing(points: readonly Point[]): Pose[] {
  return points.slice(1, -1).map((p, i) => {
    const before = points[i]!;
    const after = points[i + 2]!;
    return { x: p.x, y: p.y, heading: Math.atan2(after.y - before.y, after.x - before.x) };
  });
}
