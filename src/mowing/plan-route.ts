/**
 * The route: swaths in the order of work, with turns, runs, the count and the clock. The order is a
 * safety rule: background first; then both machines wait off the set-out area until the stakes are
 * counted and signed for; only then graphic, edge and border.
 */
import { fail, problem, succeed, type Problem, type Result } from '../base/result';
import type { Seconds } from '../base/units';
import { pointLerp, type Point } from '../geometry/point';
import type { Design } from '../design/model';
import type { Field } from '../field/model';
import { boxCentre } from '../geometry/box';
import { regionBox, regionSubtract, type Region } from '../geometry/region';
import { indexPatches } from './cut-at-patches';
import { driveOff, driveSwath, type Driver } from './drive-machine';
import {
  bodyReach,
  clearanceAt,
  drivableRegion,
  prepareGround,
  type DriveGround,
} from './drive-ground';
import { findParking } from './find-parking';
import { linePose } from './legal-parts';
import { layTimeline, type Stages } from './lay-timeline';
import type { Machine, PassPlan, Phase } from './model';
import { orderSwaths, type Blocked } from './order-swaths';
import { setOutArea } from './set-out-area';
import { sumPasses } from './sum-passes';
import type { Swath, SwathLayout } from './swath-model';
import { vehicleOf, type Vehicle } from './vehicle';

export interface RouteInput {
  readonly field: Field;
  readonly design: Design;
  readonly wide: Machine;
  readonly narrow: Machine;
  /** Where machines come on to the grass. */
  readonly gate: Point;
  /** Likely time from the first tape to the signed count. */
  readonly setOutSeconds: Seconds;
}

/** Phases that are driven before anything is staked; every other one waits for the count. */
export const BEFORE_COUNT: readonly Phase[] = ['erase', 'background'];

const isBefore = (swath: Swath): boolean => BEFORE_COUNT.includes(swath.phase);

/**
 * Orders and drives the swaths. Problems: `gate-shut` (no place where a machine can stand),
 * `pass-unreached`, `pass-trimmed`, `graphic-disturbed` (warnings: what cannot be driven as laid out).
 */
export function planRoute(input: RouteInput, layout: SwathLayout): Result<PassPlan> {
  const drivable = drivableRegion(input.field);
  const ground = prepareGround(drivable);
  const keepOff = setOutArea(input.design.graphic);
  const places = { ground, keepOff, patches: indexPatches(input.design.patches) };
  const wide = newDriver(input, input.wide, places, []);
  const narrow = newDriver(input, input.narrow, places, wide ? [wide.at] : []);
  if (!wide || !narrow) return fail(gateShut());
  const around = prepareGround(regionSubtract(drivable, keepOff));
  const steps = driveInOrder(wide, narrow, layout.swaths, around);
  const legs = layTimeline(steps, input.setOutSeconds);
  const plan = sumPasses(input, layout, [...wide.passes, ...narrow.passes], legs);
  const problems = [wide, narrow].flatMap((driver) => driverProblems(driver, input.design));
  return succeed(plan, [...problems, ...disturbedProblem(plan, input.narrow)]);
}

const gateShut = (): Problem =>
  problem(
    'gate-shut',
    'mowing.gate',
    'There is no place off the set-out area where the machine can stand',
    'make the graphic smaller, or check fence, track and keep-outs',
  );

/** Clear ground about a waiting machine, feet; assumption. */
const PARKING_ROOM = 1;

interface Places {
  readonly ground: DriveGround;
  readonly keepOff: Region;
  readonly patches: Driver['patches'];
}

function newDriver(
  input: RouteInput,
  machine: Machine,
  { ground, keepOff, patches }: Places,
  taken: readonly Point[],
): Driver | null {
  const vehicle = vehicleOf(machine);
  const reach = bodyReach(vehicle.body) + PARKING_ROOM;
  const place = findParking(ground, input.gate, reach, keepOff, taken);
  if (!place) return null;
  const box = regionBox(input.field.outfieldGrass);
  const middle = box ? boxCentre(box) : place;
  return {
    vehicle,
    ground,
    around: null,
    patches,
    steps: [],
    passes: [],
    unreached: [],
    trimmed: [],
    at: { ...place, heading: Math.atan2(middle.y - place.y, middle.x - place.x) },
  };
}

/**
 * Drives everything. With a graphic both machines wait for the count, and the wide one then keeps to
 * `around`, off the graphic and out of the way of whoever works on it; without one nobody waits.
 */
function driveInOrder(
  wide: Driver,
  narrow: Driver,
  swaths: readonly Swath[],
  around: DriveGround,
): Stages {
  const of = (role: 'wide' | 'narrow', before: boolean) =>
    swaths.filter((s) => s.role === role && isBefore(s) === before);
  const graphic = of('narrow', false);
  const homes = { wide: wide.at, narrow: narrow.at };
  driveGroups(wide, of('wide', true));
  if (graphic.length > 0) driveOff(wide, homes.wide);
  const background = wide.steps.splice(0);
  wide.around = graphic.length > 0 ? around : null;
  const holdAt = { wide: wide.at, narrow: narrow.at };
  driveGroups(wide, of('wide', false));
  driveOff(wide, homes.wide);
  driveGroups(narrow, graphic);
  if (graphic.length > 0) driveOff(narrow, homes.narrow);
  const machines = { wide: wide.vehicle.machine, narrow: narrow.vehicle.machine };
  return {
    machines,
    background,
    hold: graphic.length > 0 ? holdAt : null,
    after: { wide: wide.steps, narrow: narrow.steps },
  };
}

/** Every swath of a group before the next group, each group in its own best order. */
function driveGroups(driver: Driver, swaths: readonly Swath[]): void {
  const groups = [...new Set(swaths.map((s) => s.group))].sort((a, b) => a - b);
  const blocked = sightLine(driver.ground, driver.vehicle);
  for (const group of groups) {
    const ends = swaths
      .filter((s) => s.group === group && s.line.length > 1)
      .map((swath) => ({
        swath,
        entry: linePose(swath.line, 'start'),
        exit: linePose(swath.line, 'end'),
      }));
    const ordered = orderSwaths(ends, driver.at, driver.vehicle.radius, blocked);
    for (const { swath } of ordered) driveSwath(driver, swath);
  }
}

/** Whether a straight drive would leave the drivable ground; looked at every 4 ft. */
function sightLine(ground: DriveGround, vehicle: Vehicle): Blocked {
  return (from, to) => {
    const steps = Math.ceil(Math.hypot(to.x - from.x, to.y - from.y) / 4);
    for (let i = 1; i < steps; i++) {
      if (clearanceAt(ground, pointLerp(from, to, i / steps)) < vehicle.body.half) return true;
    }
    return false;
  };
}

function driverProblems(driver: Driver, design: Design): Problem[] {
  const name = driver.vehicle.machine.name;
  const out: Problem[] = [];
  if (driver.unreached.length > 0) {
    out.push(
      problem(
        'pass-unreached',
        `mowing.${driver.vehicle.machine.role}`,
        `${name} cannot get to ${driver.unreached.length} of its passes: ${placesOf(driver.unreached)}`,
        'choose a machine that turns tighter, more edge laps, or trim those by hand',
        'warning',
      ),
    );
  }
  const lost = driver.trimmed.filter(({ swath }) => !isLap(swath, design));
  const lostFt = lost.reduce((n, t) => n + t.lostFt, 0);
  if (lostFt > 0) {
    out.push(
      problem(
        'pass-trimmed',
        `mowing.${driver.vehicle.machine.role}`,
        `${lost.length} passes of ${name} are ${Math.round(lostFt)} ft short in all, to keep its body on the grass: ${placesOf(lost.map((t) => t.swath))}`,
        'add an edge lap, or trim those ends by hand',
        'warning',
      ),
    );
  }
  return out;
}

const isLap = (swath: Swath, design: Design): boolean =>
  design.patches.some((p) => p.id === swath.patch && p.kind === 'border');

/** The first few patches concerned. */
function placesOf(swaths: readonly Swath[]): string {
  const names = [...new Set(swaths.map((s) => s.patch))];
  return names.length > 4 ? `${names.slice(0, 4).join(', ')} and more` : names.join(', ');
}

/** A drum that cannot be lifted may spoil this share of the graphic before it is worth a word. */
const DISTURBED_WORTH_NOTING = 0.02;

function disturbedProblem(plan: PassPlan, narrow: Machine): Problem[] {
  const share = plan.disturbed;
  if (share <= DISTURBED_WORTH_NOTING) return [];
  return [
    problem(
      'graphic-disturbed',
      'mowing.narrow',
      `${narrow.name} stays down in turns and leaves ${(share * 100).toFixed(1)} % of the graphic in a wrong lay`,
      'use a tool that can be lifted, or brush those places by hand afterwards',
      'warning',
    ),
  ];
}
