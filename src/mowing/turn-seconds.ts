/**
 * The time of the quickest plain turn between two poses, for a great many pairs: what `findTurns` finds
 * without writing out the turns. Ground and body are not looked at.
 */
import type { Seconds } from '../base/units';
import { turnBetween, type Pose } from './drive';
import { RUN_FROM_FT, type Vehicle } from './vehicle';

/** Poses of one kind (all ends, or all starts) with the centres of their smallest circles. */
export interface PoseTable {
  readonly count: number;
  /** Five numbers a pose: heading, then x and y of the left and of the right circle's centre. */
  readonly values: Float64Array;
}

const WIDTH = 5;

/** Circles of the vehicle's radius at each pose. */
export function tablePoses(vehicle: Vehicle, poses: readonly Pose[]): PoseTable {
  const values = new Float64Array(WIDTH * poses.length);
  const r = vehicle.radius;
  poses.forEach(({ x, y, heading }, i) => {
    const [across, along] = [r * Math.sin(heading), r * Math.cos(heading)];
    values.set([heading, x - across, y + along, x + across, y - along], WIDTH * i);
  });
  return { count: poses.length, values };
}

/** Seconds from pose i of one table to pose j of another, lifting and lowering left out. */
export type TurnClock = (i: number, j: number) => Seconds;

/** `vehicle` is the one of both tables. */
export function turnClock(vehicle: Vehicle, from: PoseTable, to: PoseTable): TurnClock {
  const { radius: r, turningFps, runningFps, gearSeconds } = vehicle;
  const backs = vehicle.machine.mayReverse;
  const [a, b] = [from.values, to.values];
  const bends = (radians: number): Seconds => (radians * r) / turningFps;
  const ahead = (feet: number): Seconds => feet / (feet >= RUN_FROM_FT ? runningFps : turningFps);

  /** LSL (side 1) or RSR, and the same backed; the circles' centres are (dx, dy) apart. */
  const sameSide = (h: number, k: number, dx: number, dy: number, side: 1 | -1): Seconds => {
    const along = Math.atan2(dy, dx);
    const apart = Math.sqrt(dx * dx + dy * dy);
    const plain = bends(turnBetween(h, along, side) + turnBetween(along, k, side)) + ahead(apart);
    if (!backs) return plain;
    const back = along + Math.PI;
    const bent = bends(turnBetween(h, back, side) + turnBetween(back, k, side));
    return Math.min(plain, bent + apart / turningFps + 2 * gearSeconds);
  };

  /** LSR (side 1) or RSL. */
  const crossSide = (h: number, k: number, dx: number, dy: number, side: 1 | -1): Seconds => {
    const square = dx * dx + dy * dy;
    if (square < 4 * r * r) return Infinity;
    const along = Math.atan2(dy, dx) + side * Math.asin((2 * r) / Math.sqrt(square));
    const other = side === 1 ? -1 : 1;
    return (
      bends(turnBetween(h, along, side) + turnBetween(along, k, other)) +
      ahead(Math.sqrt(square - 4 * r * r))
    );
  };

  /** LRL (side 1) or RLR, both middle circles. */
  const threeArcs = (h: number, k: number, dx: number, dy: number, side: 1 | -1): Seconds => {
    const apart = Math.sqrt(dx * dx + dy * dy);
    if (apart > 4 * r || apart === 0) return Infinity;
    const [towards, open] = [Math.atan2(dy, dx), Math.acos(apart / (4 * r))];
    const other = side === 1 ? -1 : 1;
    let least = Infinity;
    for (let bend = -1; bend <= 1; bend += 2) {
      const first = towards + bend * open;
      const last = towards + Math.PI - bend * open;
      const quarter = (side * Math.PI) / 2;
      const bent =
        turnBetween(h, first + quarter, side) +
        turnBetween(first, last, other) +
        turnBetween(last + quarter, k, side);
      least = Math.min(least, bends(bent));
    }
    return least;
  };

  return (i, j) => {
    const [p, q] = [WIDTH * i, WIDTH * j];
    const [h, k] = [a[p]!, b[q]!];
    const leftX = b[q + 1]! - a[p + 1]!;
    const leftY = b[q + 2]! - a[p + 2]!;
    const rightX = b[q + 3]! - a[p + 3]!;
    const rightY = b[q + 4]! - a[p + 4]!;
    return Math.min(
      sameSide(h, k, leftX, leftY, 1),
      sameSide(h, k, rightX, rightY, -1),
      crossSide(h, k, b[q + 3]! - a[p + 1]!, b[q + 4]! - a[p + 2]!, 1),
      crossSide(h, k, b[q + 1]! - a[p + 3]!, b[q + 2]! - a[p + 4]!, -1),
      threeArcs(h, k, leftX, leftY, 1),
      threeArcs(h, k, rightX, rightY, -1),
    );
  };
}
