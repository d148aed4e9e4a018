/**
 * The route: swaths in the order of work, with turns, runs, the count and the clock. The order is a
 * safety rule: background first; then both machines wait off the set-out area until the stakes are
 * counted and signed for; only then graphic, edge and border.
 */
import { fail, problem, succeed, type Problem, type Result } from '../base/result';
import type { Seconds } from '../base/units';
import type { Point } from '../geometry/point';
import type { Design } from '../design/model';
import type { Field } from '../field/model';
import { placeInWords } from '../field/place-in-words';
import { boxCentre } from '../geometry/box';
import { regionBox, regionSubtract, type Region } from '../geometry/region';
import { indexPatches } from './cut-at-patches';
import { driveOff, driveSwath, posesAt, prepareSwath, type Driver } from './drive-machine';
import { bodyReach, prepareField, prepareGround, type DriveGround } from './drive-ground';
import { findParking } from './find-parking';
import { layTimeline, type Stages } from './lay-timeline';
import { lossPlaces, trimmedProblem } from './lost-ground';
import type { Machine, PassPlan, Phase } from './model';
import { mapLays } from './lay-map';
import { orderSwaths, type Round } from './order-swaths';
import { OVER_LAY_SECONDS_PER_FT, type OverLay } from './over-lay';
import { setOutArea } from './set-out-area';
import { sumPasses } from './sum-passes';
import type { Swath, SwathLayout } from './swath-model';
import { vehicleOf } from './vehicle';
import { prepareWays } from './ways';

export interface RouteInput {
  readonly field: Field;
  readonly design: Design;
  readonly wide: Machine;
  readonly narrow: Machine;
  /** Where machines come on to the grass. */
  readonly gate: Point;
  /** Middle (P50) time from the first head flagged to the signed count. */
  readonly setOutSeconds: Seconds;
  /** What a foot over finished grass against its lay is worth, seconds. */
  readonly overLaySecondsPerFt?: number | undefined;
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
  const lays = mapLays(input.design.patches, layout.swaths);
  const secondsPerFt = input.overLaySecondsPerFt ?? OVER_LAY_SECONDS_PER_FT;
  const steps = driveInOrder(wide, narrow, layout.swaths, around, { lays, secondsPerFt });
  const stranded = [wide, narrow].flatMap(strandedProblems);
  if (stranded.some((p) => p.severity === 'error')) return fail(...stranded);
  const legs = layTimeline(steps, input.setOutSeconds);
  const plan = sumPasses(input, layout, [...wide.passes, ...narrow.passes], legs, lays);
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
    ways: prepareWays(ground, null, vehicle),
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
  swaths: readonly Swath[],
  around: DriveGround | null,
  overLay: OverLay,
): Stages {
  const of = (role: 'wide' | 'narrow', before: boolean) =>
    swaths.filter((s) => s.role === role && isBefore(s) === before);
  const homes = { wide: wide.at, narrow: narrow.at };
  const border = of('wide', false);
  const before = of('wide', true);
  const graphic = of('narrow', false);
  const mown = new Set(around ? before.map((s) => s.patch) : []);
  const start = { overLay, finished: new Set<string>() };
  const after = { overLay, finished: mown };
  driveGroups(wide, around ? before : [...before, ...border], homes.wide, start);
  if (around) driveOff(wide, homes.wide, 'before-count');
  const background = wide.steps.splice(0);
  const holdAt = { wide: wide.at, narrow: narrow.at };
  if (around) {
    wide.ways = prepareWays(wide.ground, around, wide.vehicle);
    driveGroups(wide, border, homes.wide, after);
  }
  driveOff(wide, homes.wide, 'at-end');
  driveGroups(narrow, graphic, homes.narrow, after);
  if (graphic.length > 0) driveOff(narrow, homes.narrow, 'at-end');
  const machines = { wide: wide.vehicle.machine, narrow: narrow.vehicle.machine };
  return {
    machines,
    background,
    hold: around ? holdAt : null,
    after: { wide: wide.steps, narrow: narrow.steps },
  };
}

/** What comes before the count first, then by group; all in the best order that ends near `home`. */
function driveGroups(
  driver: Driver,
  swaths: readonly Swath[],
  home: Point,
  grass: Pick<Round, 'overLay' | 'finished'>,
): void {
  const sorted = swaths
    .filter((s) => s.line.length > 1)
    .sort((a, b) => Number(isBefore(b)) - Number(isBefore(a)) || a.group - b.group);
  let group = 0;
  const stops = sorted.flatMap((swath, i) => {
    const last = sorted[i - 1] ?? swath;
    if (isBefore(last) !== isBefore(swath) || last.group !== swath.group) group++;
    return prepareSwath(driver, swath, group) ?? [];
  });
  const round = { start: driver.at, goals: posesAt(driver, home), ways: driver.ways, ...grass };
  for (const stop of orderSwaths(stops, round)) driveSwath(driver, stop);
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
