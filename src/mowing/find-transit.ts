/** The way from one pose to another with the reels up: a turn, a turn with backing, or a longer run. */
import type { Seconds } from '../base/units';
import { findTurns, turnStretches, type Turn } from './dubins';
import {
  driveEnd,
  keepLong,
  poseAlong,
  poseShift,
  straight,
  type Drive,
  type Pose,
  type Stretch,
} from './drive';
import {
  bodyEitherWay,
  bodyFits,
  bodyGrow,
  bodyReach,
  clearanceAt,
  type Body,
  type DriveGround,
} from './drive-ground';
import { findWaypoints } from './find-waypoints';
import type { Lattice } from './lattice';
import { tablePoses, turnClock } from './turn-seconds';
import { driveSeconds, RUN_FROM_FT, type Vehicle } from './vehicle';

export interface Transit {
  readonly drive: Drive;
  readonly seconds: Seconds;
}

/** Room kept about the body in turns where there is any, feet (3 in); assumption. */
const ELBOW_ROOM = 0.25;
/** The body is tested at least this often along a drive, feet. */
const TEST_STEP = 0.5;

/** Straight lengths tried before and after a turn, in half turning radii: out, and backing. */
const RUN_OUTS = [1, 2, 4, 7];
const BACK_UPS = [-1, -2, -3, -4, -6, -8, -11];

/**
 * The quickest legal way from `from` to `to`, or null. First the plain turns; when the quickest of
 * those would put the body on forbidden ground, turns with a straight before and after, backing up
 * where the machine may; then a way round by waypoints on the `waypointLattice` of ground and body.
 */
export function findTransit(
  ground: DriveGround,
  vehicle: Vehicle,
  from: Pose,
  to: Pose,
  lattice: () => Lattice,
): Transit | null {
  return nearTransit(ground, vehicle, from, to) ?? farTransit(ground, vehicle, from, to, lattice());
}

function nearTransit(ground: DriveGround, vehicle: Vehicle, from: Pose, to: Pose): Transit | null {
  const fits = bodyTest(ground, vehicle.body, from, to);
  if (!fits) return null;
  const either = bodyEitherWay(fits);
  const firstOf = (ways: Iterable<Candidate>, backing: Body): Transit | null => {
    for (const candidate of ways) {
      const way = writeOut(vehicle, from, candidate);
      if (driveFits(ground, way.drive, fits, backing)) return way;
    }
    return null;
  };
  const [quickest] = candidates(vehicle, from, to, NO_SHIFT);
  const plain = quickest ? firstOf([quickest], either) : null;
  if (plain) return plain;
  const shifts = shiftLengths(vehicle);
  const all = (): Iterable<Candidate> => candidates(vehicle, from, to, shifts);
  return firstOf(all(), either) ?? firstOf(all(), fits);
}

const NO_SHIFT: readonly number[] = [0];

/** Bodies to test with, elbow room where both ends have it; null when an end itself is forbidden. */
function bodyTest(ground: DriveGround, body: Body, from: Pose, to: Pose): Body | null {
  const roomy = bodyGrow(body, ELBOW_ROOM);
  if (bodyFits(ground, roomy, from) && bodyFits(ground, roomy, to)) return roomy;
  return bodyFits(ground, body, from) && bodyFits(ground, body, to) ? body : null;
}

function shiftLengths(vehicle: Vehicle): number[] {
  const unit = Math.max(1.5, vehicle.radius / 2);
  const steps = vehicle.machine.mayReverse ? [...RUN_OUTS, ...BACK_UPS] : RUN_OUTS;
  return [0, ...steps.map((n) => n * unit)];
}

/** A way not yet written out: a turn with a straight before it and one after it. */
interface Candidate {
  readonly exit: number;
  readonly entry: number;
  readonly turn: Turn;
  readonly seconds: Seconds;
}

/**
 * Every turn with a straight of one of these lengths before it and after it, quickest first. The turns
 * of a pair of straights are only written out when the quickest of them is due.
 */
function* candidates(
  vehicle: Vehicle,
  from: Pose,
  to: Pose,
  shifts: readonly number[],
): Generator<Candidate> {
  const starts = shifts.map((by) => poseShift(from, by));
  const ends = shifts.map((by) => poseShift(to, -by));
  const clock = turnClock(vehicle, tablePoses(vehicle, starts), tablePoses(vehicle, ends));
  const pairs = shifts.flatMap((exit, i) =>
    shifts.map((entry, j) => ({
      exit,
      entry,
      i,
      j,
      seconds: shiftSeconds(vehicle, exit, entry) + clock(i, j),
    })),
  );
  const waiting: Candidate[] = [];
  for (const { exit, entry, i, j, seconds } of pairs.sort((a, b) => a.seconds - b.seconds)) {
    while (waiting.length > 0 && waiting[waiting.length - 1]!.seconds < seconds - ROUNDING) {
      yield waiting.pop()!;
    }
    for (const turn of findTurns(
      starts[i]!,
      ends[j]!,
      vehicle.radius,
      vehicle.machine.mayReverse,
    )) {
      waiting.push({ exit, entry, turn, seconds: quickSeconds(vehicle, exit, entry, turn) });
    }
    waiting.sort((a, b) => b.seconds - a.seconds);
  }
  while (waiting.length > 0) yield waiting.pop()!;
}

/** Sums of the same times in another order differ by less, seconds. */
const ROUNDING: Seconds = 1 / 1_000_000;

/** The time of a candidate, as `driveSeconds` would find it, but for straights that run together. */
function quickSeconds(vehicle: Vehicle, exit: number, entry: number, turn: Turn): Seconds {
  const fast = !turn.backs && turn.word[1] === 'S' && turn.middle >= RUN_FROM_FT;
  const middle = turn.middle / (fast ? vehicle.runningFps : vehicle.turningFps);
  const backing = turn.backs ? 2 * vehicle.gearSeconds : 0;
  const bends = (turn.first + turn.last) / vehicle.turningFps;
  return shiftSeconds(vehicle, exit, entry) + bends + middle + backing;
}

function shiftSeconds(vehicle: Vehicle, exit: number, entry: number): Seconds {
  const changes = (exit < 0 ? 2 : 0) + (entry < 0 ? 2 : 0);
  return (Math.abs(exit) + Math.abs(entry)) / vehicle.turningFps + changes * vehicle.gearSeconds;
}

function writeOut(vehicle: Vehicle, from: Pose, candidate: Candidate): Transit {
  const { exit, entry, turn } = candidate;
  const stretches = keepLong([shift(exit), ...turnStretches(turn, vehicle.radius), shift(entry)]);
  return { drive: { start: from, stretches }, seconds: driveSeconds(vehicle, stretches) };
}

const shift = (by: number): Stretch => straight(Math.abs(by), by < 0 ? -1 : 1);

/**
 * Whether the body stays on drivable ground all along. Backing is first tested with a body that holds
 * both ways of facing, so that whoever reads only the points cannot find it on the skin.
 */
export function driveFits(ground: DriveGround, drive: Drive, body: Body, backing: Body): boolean {
  let from = drive.start;
  for (const stretch of drive.stretches) {
    if (!stretchFits(ground, from, stretch, stretch.gear === 1 ? body : backing)) return false;
    from = poseAlong(from, stretch, stretch.lengthFt);
  }
  return true;
}

function stretchFits(ground: DriveGround, from: Pose, stretch: Stretch, body: Body): boolean {
  const reach = bodyReach(body);
  let s = 0;
  for (;;) {
    const pose = poseAlong(from, stretch, s);
    const spare = clearanceAt(ground, pose) - reach;
    if (spare < 0 && !bodyFits(ground, body, pose)) return false;
    if (s >= stretch.lengthFt) return true;
    s = Math.min(stretch.lengthFt, s + Math.max(TEST_STEP, spare));
  }
}

/** Round the obstacles: from waypoint to waypoint, each reached along the way to the next. */
function farTransit(
  ground: DriveGround,
  vehicle: Vehicle,
  from: Pose,
  to: Pose,
  lattice: Lattice,
): Transit | null {
  const waypoints = findWaypoints(ground, bodyReach(vehicle.body), from, to, lattice);
  if (!waypoints || waypoints.length === 0) return null;
  const stretches: Stretch[] = [];
  let at = from;
  for (const next of [...waypoints, to]) {
    const link = nearTransit(ground, vehicle, at, next);
    if (!link) return null;
    stretches.push(...link.drive.stretches);
    at = driveEnd(link.drive);
  }
  return { drive: { start: from, stretches }, seconds: driveSeconds(vehicle, stretches) };
}
