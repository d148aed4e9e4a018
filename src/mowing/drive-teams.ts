/**
 * The order of work, driven: every machine's steps in stages. Machines of a kind share each group of
 * swaths, and a group starts when all of them have finished the one before.
 */
import type { Seconds } from '../base/units';
import { polylineLength } from '../geometry/polyline';
import type { Pose } from './drive';
import {
  driveOff,
  driveSwath,
  posesAt,
  prepareSwath,
  type Drivable,
  type Driver,
  type Step,
} from './drive-machine';
import type { DriveGround } from './drive-ground';
import type { Stage, Stages, Team } from './lay-timeline';
import type { Phase } from './model';
import { followBeside } from './follow-beside';
import { orderSwaths, type Round } from './order-swaths';
import type { OverLay } from './over-lay';
import { splitGroup } from './split-group';
import type { Swath } from './swath-model';
import { prepareWays } from './ways';

/** Phases that are driven before anything is staked; every other one waits for the count. */
export const BEFORE_COUNT: readonly Phase[] = ['erase', 'background'];

const isBefore = (swath: Swath): boolean => BEFORE_COUNT.includes(swath.phase);

/** Machines of one kind, the first one's figures deciding how the swaths lie. */
export interface Drivers {
  readonly wide: readonly Driver[];
  readonly narrow: readonly Driver[];
}

/** What the order of the passes minds besides the time that it takes. */
export interface OrderWishes {
  readonly overLay: OverLay;
  /** Passes along a guide string come first in their group. */
  readonly isGuided: (swath: Swath) => boolean;
  /** The other bands come after one beside them. */
  readonly beside: boolean;
}

interface Grass extends Pick<Round, 'overLay' | 'finished'> {
  readonly isGuided: OrderWishes['isGuided'];
  readonly beside: boolean;
  /** Swaths driven before, by whatever machine. */
  readonly laid: readonly Swath[];
}

/**
 * Drives everything. Once a graphic is set out all machines wait for the count, whether or not the
 * narrow tools then have anything to drive, and the wide ones afterwards keep to `around`, off the
 * graphic and out of the way of whoever works on it; without a graphic nobody waits.
 */
export function driveInOrder(
  { wide, narrow }: Drivers,
  swaths: readonly Swath[],
  around: DriveGround | null,
  wishes: OrderWishes,
): Stages {
  const of = (role: 'wide' | 'narrow', before: boolean) =>
    swaths.filter((s) => s.role === role && isBefore(s) === before);
  const homes = new Map([...wide, ...narrow].map((driver): [Driver, Pose] => [driver, driver.at]));
  const border = of('wide', false);
  const before = of('wide', true);
  const graphic = of('narrow', false);
  const after = {
    ...wishes,
    finished: new Set(around ? before.map((s) => s.patch) : []),
    laid: [],
  };
  const first = around ? before : [...before, ...border];
  const start = driveGroups(wide, first, homes, { ...wishes, finished: new Set(), laid: [] });
  const background = withWayHome(start, wide, homes, around ? 'before-count' : 'at-end');
  const hold = [...wide, ...narrow].map(({ vehicle, at }) => ({ machine: vehicle.machine, at }));
  if (around) {
    for (const driver of wide) driver.ways = prepareWays(driver.ground, around, driver.vehicle);
  }
  const wideAfter = around ? driveGroups(wide, border, homes, after) : [];
  const narrowAfter = driveGroups(narrow, graphic, homes, after);
  const home = (drivers: readonly Driver[], stages: readonly Stage[]): Stage[] =>
    withWayHome(stages, drivers, homes, 'at-end');
  const team = (drivers: readonly Driver[], stages: readonly Stage[]): Team => ({
    machines: drivers.map((d) => d.vehicle.machine),
    starts: drivers.map((d) => homes.get(d)!),
    stages,
  });
  return {
    background: team(wide, background),
    hold: around ? hold : null,
    after: [
      team(wide, around ? home(wide, wideAfter) : []),
      team(narrow, graphic.length > 0 ? home(narrow, narrowAfter) : []),
    ],
  };
}

type Homes = ReadonlyMap<Driver, Pose>;

/** What comes before the count first, then by group; alone, all of it is one tour. */
function driveGroups(
  drivers: readonly Driver[],
  swaths: readonly Swath[],
  homes: Homes,
  grass: Grass,
): Stage[] {
  const groups = groupsOf(swaths, grass.isGuided);
  const [alone, ...others] = drivers;
  if (!alone) return [];
  if (others.length === 0) {
    const stops = groups.flatMap((group, k) => prepareAll(alone, group, k));
    const goals = posesAt(alone, homes.get(alone)!);
    driveOrdered(alone, stops, goals, grass);
    return [[takeSteps(alone)]];
  }
  const finished = new Set(grass.finished);
  return groups.map((group, k) => {
    const laid = groups.slice(0, k).flat();
    const shares = shareOut(drivers, group, { ...grass, finished, laid });
    const isLast = k === groups.length - 1;
    drivers.forEach((driver, m) => {
      const goals = isLast ? posesAt(driver, homes.get(driver)!) : [];
      driveOrdered(driver, prepareAll(driver, shares[m]!, 0), goals, { ...grass, finished, laid });
    });
    const later = new Set(groups.slice(k + 1).flatMap((g) => g.map((s) => s.patch)));
    for (const { patch } of group) if (!later.has(patch)) finished.add(patch);
    return drivers.map(takeSteps);
  });
}

/** Swaths group by group, in the order in which they must be driven. */
function groupsOf(swaths: readonly Swath[], isGuided: OrderWishes['isGuided']): Swath[][] {
  const rank = (s: Swath) => [Number(!isBefore(s)), s.group, Number(!isGuided(s))];
  const ranked = swaths
    .filter((s) => s.line.length > 1)
    .map((swath) => ({ swath, rank: rank(swath) }))
    .sort((a, b) => a.rank.reduce((n, r, i) => n || r - b.rank[i]!, 0));
  const groups: Swath[][] = [];
  ranked.forEach(({ swath, rank: own }, i) => {
    const same = ranked[i - 1]?.rank.every((r, k) => r === own[k]) ?? false;
    if (same) groups[groups.length - 1]!.push(swath);
    else groups.push([swath]);
  });
  return groups;
}

const prepareAll = (driver: Driver, swaths: readonly Swath[], group: number): Drivable[] =>
  swaths.flatMap((swath) => prepareSwath(driver, swath, group) ?? []);

function driveOrdered(
  driver: Driver,
  stops: readonly Drivable[],
  goals: readonly Pose[],
  grass: Grass,
): void {
  const round = { start: driver.at, goals, ways: driver.ways, ...grass };
  const follow = grass.beside ? followBeside(stops, grass.laid) : undefined;
  for (const stop of orderSwaths(stops, round, follow)) driveSwath(driver, stop);
}

const takeSteps = (driver: Driver): Step[] => driver.steps.splice(0);

/** Each machine drives home at the end of the last stage, without waiting for the others. */
function withWayHome(
  stages: readonly Stage[],
  drivers: readonly Driver[],
  homes: Homes,
  when: 'before-count' | 'at-end',
): Stage[] {
  const ways = drivers.map((driver) => {
    driveOff(driver, homes.get(driver)!, when);
    return takeSteps(driver);
  });
  const last = stages[stages.length - 1] ?? drivers.map(() => []);
  return [...stages.slice(0, -1), last.map((steps, m) => [...steps, ...ways[m]!])];
}

/** Time between two passes taken for a first division; the real times then move it. Assumption. */
const ROUGH_TRANSIT: Seconds = 12;

function shareOut(drivers: readonly Driver[], group: readonly Swath[], grass: Grass): Swath[][] {
  const { cuttingFps, machine } = drivers[0]!.vehicle;
  const between = machine.turnSeconds + ROUGH_TRANSIT;
  const roughly = ({ line }: Swath): Seconds => polylineLength(line) / cuttingFps + between;
  return splitGroup(group, drivers.length, roughly, (m, share) => {
    const trial: Driver = { ...drivers[m]!, steps: [], passes: [], unreached: [], trimmed: [] };
    driveOrdered(trial, prepareAll(trial, share, 0), [], grass);
    return trial.steps.reduce((n, step) => n + step.seconds, 0);
  });
}
