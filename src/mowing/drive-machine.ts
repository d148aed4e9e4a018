/** One machine driving: passes one after another, with the turns and runs between them. */
import type { Seconds } from '../base/units';
import type { Point } from '../geometry/point';
import { polylineLength, type Polyline } from '../geometry/polyline';
import { cutAtPatches, type indexPatches } from './cut-at-patches';
import { driveEnd, poseAlong, stretchPoints, type Drive, type Pose, type Stretch } from './drive';
import { bodyFits, type DriveGround } from './drive-ground';
import type { Transit } from './find-transit';
import { legalParts, linePose } from './legal-parts';
import { firstLost, LOST_WORTH_NOTING, type Loss } from './lost-ground';
import { cutFt } from './machines';
import type { Leg, Pass, Phase } from './model';
import type { Stop } from './order-swaths';
import type { Swath } from './swath-model';
import { driveSeconds, isRun, stretchSeconds, type Vehicle } from './vehicle';
import type { Ways } from './ways';

/** A leg before the clock and the sequence are known. */
export type Step = Omit<Leg, 'seq' | 'startS' | 'machine' | 'visit'>;

/** Where a machine found no way to its waiting place, before the count or at the end. */
export interface Stranded {
  readonly at: Point;
  readonly when: 'before-count' | 'at-end';
}

/** What a machine has done so far; `drive*` functions add to it. */
export interface Driver {
  readonly vehicle: Vehicle;
  readonly ground: DriveGround;
  /** Ways over the ground as it may be driven by now. */
  ways: Ways;
  readonly patches: ReturnType<typeof indexPatches>;
  readonly steps: Step[];
  readonly passes: Pass[];
  /** Swaths, or parts of them, that could not be reached. */
  readonly unreached: { readonly patch: string; readonly at: Point }[];
  /** Parts of swaths on which the body has no room. */
  readonly trimmed: Loss[];
  readonly stranded: Stranded[];
  at: Pose;
}

/** A swath with the parts of it on which the body has room, and where those are entered and left. */
export interface Drivable extends Stop {
  readonly swath: Swath;
  readonly parts: readonly Polyline[];
}

/** The swath as the machine can drive it, null when it has room nowhere; what is lost is noted. */
export function prepareSwath(driver: Driver, swath: Swath, group: number): Drivable | null {
  const parts = legalParts(driver.ground, driver.vehicle.body, swath.line);
  const lostFt = polylineLength(swath.line) - parts.reduce((n, p) => n + polylineLength(p), 0);
  if (lostFt > LOST_WORTH_NOTING) {
    driver.trimmed.push({ patch: swath.patch, at: firstLost(swath.line, parts), lostFt });
  }
  const [first, last] = [parts[0], parts[parts.length - 1]];
  if (!first || !last) return null;
  const [entry, exit] = [linePose(first, 'start'), linePose(last, 'end')];
  return { swath, parts, group, patch: swath.patch, entry, exit };
}

/** Drives a swath from where the machine is; what cannot be reached is noted, not forced. */
export function driveSwath(driver: Driver, { swath, parts }: Drivable): void {
  for (const line of parts) {
    const way = driver.ways.find(driver.at, linePose(line, 'start'));
    if (!way) {
      driver.unreached.push({ patch: swath.patch, at: line[0]! });
      continue;
    }
    driveTransit(driver, way, swath.phase, driver.vehicle.machine.turnSeconds);
    mowLine(driver, swath, line);
  }
}

function mowLine(driver: Driver, swath: Swath, line: Polyline): void {
  const number = driver.passes.length + 1;
  const { machine } = driver.vehicle;
  driver.passes.push({
    number,
    machine: machine.id,
    phase: swath.phase,
    patch: swath.patch,
    line,
    lengthFt: polylineLength(line),
    widthFt: swath.widthFt,
  });
  for (const piece of cutAtPatches(driver.patches, line, swath.patch)) {
    driver.steps.push({
      phase: swath.phase,
      kind: 'mow',
      pass: number,
      patch: piece.patch,
      widthFt: swath.widthFt,
      points: piece.points,
      seconds: polylineLength(piece.points) / driver.vehicle.cuttingFps,
      reels: 'down',
      lays: machine.lays,
    });
  }
  driver.at = linePose(line, 'end');
}

/** Adds a transit as legs, one for each gear; `lostSeconds` go to the first. */
export function driveTransit(
  driver: Driver,
  way: Transit,
  phase: Phase,
  lostSeconds: Seconds,
): void {
  let lost = lostSeconds + gearSeconds(driver, way.drive);
  let from = way.drive.start;
  for (const stretches of byGear(way.drive.stretches)) {
    const points: Point[] = [{ x: from.x, y: from.y }];
    for (const s of stretches) {
      points.push(...stretchPoints(from, s));
      from = poseAlong(from, s, s.lengthFt);
    }
    driver.steps.push(transitStep(driver, stretches, points, phase, lost));
    lost = 0;
  }
  driver.at = driveEnd(way.drive);
}

const gearSeconds = (driver: Driver, drive: Drive): Seconds =>
  driveSeconds(driver.vehicle, drive.stretches) -
  byGear(drive.stretches).reduce((n, run) => n + plainSeconds(driver.vehicle, run), 0);

const plainSeconds = (vehicle: Vehicle, run: readonly Stretch[]): Seconds =>
  run.reduce((n, s) => n + stretchSeconds(vehicle, s), 0);

function transitStep(
  driver: Driver,
  stretches: readonly Stretch[],
  points: readonly Point[],
  phase: Phase,
  lost: Seconds,
): Step {
  const { machine } = driver.vehicle;
  const step: Step = {
    phase,
    kind: phase === 'carry' || stretches.some(isRun) ? 'run' : 'turn',
    pass: null,
    patch: null,
    widthFt: cutFt(machine),
    points,
    seconds: lost + plainSeconds(driver.vehicle, stretches),
    reels: 'up',
    lays: machine.laysInTransit,
  };
  return stretches[0]?.gear === -1 ? { ...step, gear: 'reverse' } : step;
}

function byGear(stretches: readonly Stretch[]): Stretch[][] {
  const runs: Stretch[][] = [];
  for (const s of stretches) {
    const last = runs[runs.length - 1];
    if (last?.[0]?.gear === s.gear) last.push(s);
    else runs.push([s]);
  }
  return runs;
}

/** Headings tried when a machine only has to get to a place. */
const HEADINGS = 8;

/** The poses in which the machine may stand at a place. */
export function posesAt(driver: Driver, place: Point): Pose[] {
  return Array.from({ length: HEADINGS }, (_, i) => ({
    x: place.x,
    y: place.y,
    heading: (2 * Math.PI * i) / HEADINGS,
  })).filter((pose) => bodyFits(driver.ground, driver.vehicle.body, pose));
}

/**
 * Drives off to a place, whichever way it then faces; `when` says before what. Where there is no way
 * it stays and that is noted.
 */
export function driveOff(driver: Driver, place: Point, when: Stranded['when']): void {
  let best: Transit | null = null;
  for (const pose of posesAt(driver, place)) {
    const way = driver.ways.find(driver.at, pose);
    if (way && (!best || way.seconds < best.seconds)) best = way;
  }
  if (best) driveTransit(driver, best, 'carry', 0);
  else driver.stranded.push({ at: driver.at, when });
}
