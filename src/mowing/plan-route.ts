/**
 * The route: swaths in the order of work, with turns, runs, the count and the clock. The order is a
 * safety rule: background first; then both machines wait off the set-out area until the stakes are
 * counted and signed for; only then graphic, edge and border.
 */
import { fail, problem, succeed, type Problem, type Result } from '../base/result';
import type { Seconds } from '../base/units';
import type { Point } from '../geometry/point';
import type { Polyline } from '../geometry/polyline';
import type { Design } from '../design/model';
import type { Field } from '../field/model';
import { placeInWords } from '../field/place-in-words';
import { boxCentre } from '../geometry/box';
import { regionBox, regionSubtract, type Region } from '../geometry/region';
import { indexPatches } from './cut-at-patches';
import { efficiencyProblems } from './field-efficiency';
import type { Driver } from './drive-machine';
import { driveInOrder, type Drivers } from './drive-teams';
import { bodyReach, prepareField, prepareGround, type DriveGround } from './drive-ground';
import { findParking } from './find-parking';
import { layTimeline } from './lay-timeline';
import { lossPlaces, trimmedProblem } from './lost-ground';
import type { Machine, PassPlan } from './model';
import { mapFinishedLays } from './finished-lays';
import { OVER_LAY_SECONDS_PER_FT } from './over-lay';
import { setOutArea } from './set-out-area';
import { sumPasses } from './sum-passes';
import type { SwathLayout } from './swath-model';
import { vehicleOf } from './vehicle';
import { prepareWays } from './ways';

export interface RouteInput {
  readonly field: Field;
  readonly design: Design;
  readonly wide: Machine;
  readonly narrow: Machine;
  /** More machines of either role, which share its work and cut as wide as its first one. */
  readonly further?: readonly Machine[];
  /** Where machines come on to the grass. */
  readonly gate: Point;
  /** Middle (P50) time from the first head flagged to the signed count. */
  readonly setOutSeconds: Seconds;
  /** What a foot over finished grass against its lay is worth, seconds. */
  readonly overLaySecondsPerFt?: number | undefined;
  /** Swaths driven along a guide string: first in their group, so that the others follow them. */
  readonly isGuided?: (patch: string, line: Polyline) => boolean;
  /** Bands beside what is driven already, one after the other, even where that takes longer ways. */
  readonly bandsBeside?: boolean;
}

/**
 * Orders and drives the swaths. Errors: `gate-shut` (no place where a machine can stand),
 * `machine-stranded` (none that it can get to before the count). Warnings, for what cannot be driven as
 * laid out: `pass-unreached`, `pass-trimmed`, `graphic-disturbed`,
 * `efficiency-above-handbook`, `machines-meet`, `machine-stranded` at the end.
 */
export function planRoute(
  input: RouteInput,
  layout: SwathLayout,
  ground: DriveGround = prepareField(input.field),
): Result<PassPlan> {
  const keepOff = setOutArea(input.design.graphic);
  const places = { ground, keepOff, patches: indexPatches(input.design.patches) };
  const drivers = newDrivers(input, places);
  if (!drivers) return fail(gateShut());
  const all = [...drivers.wide, ...drivers.narrow];
  const isStaked = input.design.graphic.length > 0;
  const around = isStaked ? prepareGround(regionSubtract(ground.region, keepOff)) : null;
  const lays = mapFinishedLays(input.design.patches, layout.swaths);
  const secondsPerFt = input.overLaySecondsPerFt ?? OVER_LAY_SECONDS_PER_FT;
  const stages = driveInOrder(drivers, layout.swaths, around, {
    overLay: { lays, secondsPerFt },
    isGuided: ({ patch, line }) => input.isGuided?.(patch, line) ?? false,
    beside: input.bandsBeside ?? false,
  });
  const stranded = all.flatMap(strandedProblems);
  if (stranded.some((p) => p.severity === 'error')) return fail(...stranded);
  const { legs, meetings } = layTimeline(stages, input.setOutSeconds);
  const machines = all.map((driver) => driver.vehicle.machine);
  const passes = all.flatMap((driver) => driver.passes);
  const plan = sumPasses({ design: input.design, machines }, layout, passes, legs, lays);
  const problems = all.flatMap((driver) => driverProblems(driver, input.design));
  return succeed(plan, [
    ...problems,
    ...stranded,
    ...meetingProblem(meetings),
    ...disturbedProblem(plan, input.narrow),
    ...plan.efficiency.flatMap((e, i) => efficiencyProblems(plan.machines[i]!, e)),
  ]);
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

/** Wide machines first, each waiting at a place of its own. */
function newDrivers(input: RouteInput, places: Places): Drivers | null {
  const taken: Point[] = [];
  const further = input.further ?? [];
  const drivers = [input.wide, input.narrow].map((first) =>
    [first, ...further.filter((m) => m.role === first.role)].map((machine) => {
      const driver = newDriver(input, machine, places, taken);
      if (driver) taken.push(driver.at);
      return driver;
    }),
  );
  const [wide, narrow] = drivers.map((team) => team.filter((d) => d !== null));
  if (!wide || !narrow || drivers.flat().includes(null)) return null;
  return { wide, narrow };
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

function meetingProblem(meetings: number): Problem[] {
  if (meetings === 0) return [];
  const times = meetings === 1 ? 'once' : `${meetings} times`;
  return [
    problem(
      'machines-meet',
      'mowing.further',
      `machines at work together come within a body’s length of each other ${times}, and waiting does not help`,
      'let one of the drivers stop and give way, or plan with fewer machines',
      'warning',
    ),
  ];
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
