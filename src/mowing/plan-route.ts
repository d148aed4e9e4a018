/**
 * The route: swaths in the order of work, with turns, runs, the count and the clock. The order is a
 * safety rule: background first; then both machines wait off the set-out area until the stakes are
 * counted and signed for; only then graphic, edge and border.
 */
import { fail, problem, succeed, type Problem, type Result } from '../base/result';
import type { Seconds } from '../base/units';
import { pointLerp, type Point } from '../geometry/point';
import type { Polyline } from '../geometry/polyline';
import type { Design } from '../design/model';
import type { Field } from '../field/model';
import { placeInWords } from '../field/place-in-words';
import { boxCentre } from '../geometry/box';
import { regionBox, regionSubtract, type Region } from '../geometry/region';
import { areBeside } from './beside';
import { indexPatches } from './cut-at-patches';
import { driveOff, driveSwath, type Driver } from './drive-machine';
import {
  bodyReach,
  clearanceAt,
  prepareField,
  prepareGround,
  type DriveGround,
} from './drive-ground';
import { findParking } from './find-parking';
import { linePose } from './legal-parts';
import { layTimeline, type Stages } from './lay-timeline';
import { lossPlaces, trimmedProblem } from './lost-ground';
import type { Machine, PassPlan, Phase } from './model';
import { orderBeside } from './order-beside';
import { orderSwaths, transits, type Blocked, type SwathEnds } from './order-swaths';
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
  /** Middle (P50) time from the first head flagged to the signed count. */
  readonly setOutSeconds: Seconds;
  /** Swaths driven along a guide string: first in their group, so that the others follow them. */
  readonly isGuided?: (patch: string, line: Polyline) => boolean;
  /** Bands beside what is driven already, one after the other, even where that takes longer ways. */
  readonly bandsBeside?: boolean;
}

/** Phases that are driven before anything is staked; every other one waits for the count. */
export const BEFORE_COUNT: readonly Phase[] = ['erase', 'background'];

const isBefore = (swath: Swath): boolean => BEFORE_COUNT.includes(swath.phase);

/**
 * Orders and drives the swaths. Errors: `gate-shut` (no place where a machine can stand),
 * `machine-stranded` (none that it can get to before the count). Warnings, for what cannot be driven as
 * laid out: `pass-unreached`, `pass-trimmed`, `graphic-disturbed`, `machine-stranded` at the end.
 */
export function planRoute(
  input: RouteInput,
  layout: SwathLayout,
  ground: DriveGround = prepareField(input.field),
): Result<PassPlan> {
  const keepOff = setOutArea(input.design.graphic);
  const places = { ground, keepOff, patches: indexPatches(input.design.patches) };
  const wide = newDriver(input, input.wide, places, []);
  const narrow = newDriver(input, input.narrow, places, wide ? [wide.at] : []);
  if (!wide || !narrow) return fail(gateShut());
  const isStaked = input.design.graphic.length > 0;
  const around = isStaked ? prepareGround(regionSubtract(ground.region, keepOff)) : null;
  const steps = driveInOrder(
    wide,
    narrow,
    firstToLast(input, layout.swaths),
    around,
    input.bandsBeside,
  );
  const stranded = [wide, narrow].flatMap(strandedProblems);
  if (stranded.some((p) => p.severity === 'error')) return fail(...stranded);
  const legs = layTimeline(steps, input.setOutSeconds);
  const plan = sumPasses(input, layout, [...wide.passes, ...narrow.passes], legs);
  const problems = [wide, narrow].flatMap((driver) => driverProblems(driver, input.design));
  return succeed(plan, [...problems, ...stranded, ...disturbedProblem(plan, input.narrow)]);
}

const gateShut = (): Problem =>
  problem(
    'gate-shut',
    'mowing.gate',
    'there is no place off the set-out area where the machine can stand',
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
    stranded: [],
    at: { ...place, heading: Math.atan2(middle.y - place.y, middle.x - place.x) },
  };
}

/**
 * Drives everything. Once a graphic is set out both machines wait for the count, whether or not the
 * narrow tool then has anything to drive, and the wide one afterwards keeps to `around`, off the
 * graphic and out of the way of whoever works on it; without a graphic nobody waits.
 */
function driveInOrder(
  wide: Driver,
  narrow: Driver,
  batches: readonly Batch[],
  around: DriveGround | null,
  bandsBeside = false,
): Stages {
  const of = (role: 'wide' | 'narrow', before: boolean) =>
    batches.map((batch) => batch.filter((s) => s.role === role && isBefore(s) === before));
  const homes = { wide: wide.at, narrow: narrow.at };
  driveBatches(wide, of('wide', true), bandsBeside);
  if (around) driveOff(wide, homes.wide, 'before-count');
  const background = wide.steps.splice(0);
  wide.around = around;
  const holdAt = { wide: wide.at, narrow: narrow.at };
  driveBatches(wide, of('wide', false));
  driveOff(wide, homes.wide, 'at-end');
  const graphic = of('narrow', false);
  driveBatches(narrow, graphic);
  if (graphic.some((batch) => batch.length > 0)) driveOff(narrow, homes.narrow, 'at-end');
  const machines = { wide: wide.vehicle.machine, narrow: narrow.vehicle.machine };
  return {
    machines,
    background,
    hold: around ? holdAt : null,
    after: { wide: wide.steps, narrow: narrow.steps },
  };
}

/** Swaths of which none comes before those of an earlier batch. */
type Batch = readonly Swath[];

/** Group after group, of each the guided swaths first. */
function firstToLast(input: RouteInput, swaths: readonly Swath[]): Batch[] {
  const groups = [...new Set(swaths.map((s) => s.group))].sort((a, b) => a - b);
  const guided = new Set(swaths.filter((s) => input.isGuided?.(s.patch, s.line)));
  return groups.flatMap((group) => {
    const own = swaths.filter((s) => s.group === group);
    return [own.filter((s) => guided.has(s)), own.filter((s) => !guided.has(s))];
  });
}

/**
 * Every swath of a batch before the next batch, each batch in its own best order; bands beside what is
 * there when that is asked for.
 */
function driveBatches(driver: Driver, batches: readonly Batch[], bandsBeside = false): void {
  const blocked = sightLine(driver.ground, driver.vehicle);
  const driven: Swath[] = [];
  for (const batch of batches) {
    const ends = batch
      .filter((s) => s.line.length > 1)
      .map((swath) => ({
        swath,
        entry: linePose(swath.line, 'start'),
        exit: linePose(swath.line, 'end'),
      }));
    const isFollowed = bandsBeside && driven.length > 0 && batch[0]?.band !== undefined;
    const ordered = isFollowed
      ? orderAfter(driver, ends, driven, blocked)
      : orderSwaths(ends, driver.at, driver.vehicle.radius, blocked);
    for (const { swath } of ordered) driveSwath(driver, swath);
    driven.push(...batch.filter((s) => s.band !== undefined));
  }
}

/** Each swath after one that it is laid beside. */
function orderAfter(
  driver: Driver,
  ends: readonly SwathEnds[],
  driven: readonly Swath[],
  blocked: Blocked,
): SwathEnds[] {
  const swaths = ends.map(({ swath }) => swath);
  const own = driven.filter((d) => d.group === swaths[0]?.group);
  const free = swaths.flatMap((s, i) => (own.some((d) => areBeside(d, s)) ? [i] : []));
  const beside = swaths.map((s) =>
    swaths.flatMap((other, j) => (other !== s && areBeside(other, s) ? [j] : [])),
  );
  const matrix = transits(ends, driver.at, driver.vehicle.radius, blocked);
  return orderBeside({ matrix, beside, free: new Set(free) }).map((i) => ends[i]!);
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
  const { name, role } = driver.vehicle.machine;
  const where = `mowing.${role}`;
  const trimmed = trimmedProblem(where, name, driver.trimmed, design);
  if (driver.unreached.length === 0) return trimmed;
  return [
    problem(
      'pass-unreached',
      where,
      `${name} cannot get to ${driver.unreached.length} of its passes or parts of them: ${lossPlaces(driver.unreached)}`,
      'choose a machine that turns tighter, more edge laps, or trim those by hand',
      'warning',
    ),
    ...trimmed,
  ];
}

/** The count must not start while a machine stands among the stakes to be; at the end it may wait. */
function strandedProblems(driver: Driver): Problem[] {
  const { name, role } = driver.vehicle.machine;
  return driver.stranded.map(({ at, when }) =>
    problem(
      'machine-stranded',
      `mowing.${role}`,
      `${name} finds no way to its waiting place ${when === 'at-end' ? 'at the end' : 'before the stakes are set'}: it stands ${placeInWords(at)}`,
      'choose a machine that turns tighter or backs up, or move the gate',
      when === 'at-end' ? 'warning' : 'error',
    ),
  );
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
