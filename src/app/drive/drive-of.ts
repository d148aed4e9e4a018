/** A plan's drive, made once: its clock, its lay, each machine's legs, and when each pass is mown. */
import type { Seconds } from '../../base/units';
import type { Leg, Machine, Pass } from '../../mowing/model';
import type { Plan } from '../../plan/model';
import { passSets, type PassSet } from '../plan/pass-sets';
import { driveAxis, type DriveAxis } from './drive-axis';
import { layStrips, type LayStrip } from './lay-strips';
import { patternTones } from './pattern-tone';
import { machineNow, type MachineNow } from './machine-now';

export interface Driven {
  readonly machine: Machine;
  /** By start. */
  readonly legs: readonly Leg[];
}

/** When a pass is mown, from its first leg's start to its last one's end. */
export interface PassTime {
  readonly machine: string;
  readonly number: number;
  readonly set: PassSet;
  readonly pass: Pass;
  readonly fromS: Seconds;
  readonly toS: Seconds;
}

export interface Drive {
  readonly axis: DriveAxis;
  readonly strips: readonly LayStrip[];
  readonly driven: readonly Driven[];
  /** By start. */
  readonly passes: readonly PassTime[];
}

const made = new WeakMap<Plan, Drive>();

export function driveOf(plan: Plan): Drive {
  const before = made.get(plan);
  if (before) return before;
  const { legs, machines } = plan.passes;
  const drive: Drive = {
    axis: driveAxis(legs),
    strips: layStrips(legs, patternTones(plan.design)),
    driven: machines.map((machine) => ({
      machine,
      legs: legs.filter((l) => l.machine === machine.id).sort((a, b) => a.startS - b.startS),
    })),
    passes: passSets(plan)
      .flatMap(passTimes)
      .sort((a, b) => a.fromS - b.fromS),
  };
  made.set(plan, drive);
  return drive;
}

function passTimes(set: PassSet): PassTime[] {
  const spans = new Map<number, { fromS: Seconds; toS: Seconds }>();
  for (const leg of set.legs) {
    if (leg.kind !== 'mow' || leg.pass === null) continue;
    const span = spans.get(leg.pass) ?? { fromS: leg.startS, toS: leg.startS };
    span.toS = Math.max(span.toS, leg.startS + leg.seconds);
    spans.set(leg.pass, span);
  }
  return set.passes.flatMap((pass) => {
    const span = spans.get(pass.number);
    return span ? [{ machine: pass.machine, number: pass.number, set, pass, ...span }] : [];
  });
}

/** Every machine at `clockS`, the wide one first. */
export const machinesNow = (drive: Drive, clockS: Seconds): MachineNow[] =>
  drive.driven.flatMap(({ machine, legs }) => machineNow(machine, legs, clockS) ?? []);

/** The machine to look at: the one in hand while it drives, else whichever drives, a graphic first. */
export function followed(now: readonly MachineNow[], inHand: string | null): MachineNow | null {
  const driving = now.filter((m) => ['pass', 'turning', 'empty'].includes(m.doing));
  const wanted = driving.find((m) => m.machine.id === inHand);
  return wanted ?? driving.find((m) => m.machine.role === 'narrow') ?? driving[0] ?? null;
}

/** The pass of `machine` (of any, when null) that starts next after `clockS`, or last before it. */
export function passBeside(
  drive: Drive,
  machine: string | null,
  clockS: Seconds,
  by: 1 | -1,
): PassTime | null {
  const own = drive.passes.filter((p) => machine === null || p.machine === machine);
  const beside =
    by > 0
      ? own.find((p) => p.fromS > clockS + AT_START)
      : [...own].reverse().find((p) => p.fromS < clockS - AT_START);
  return beside ?? null;
}

/** A clock this near to a pass's start stands at it, seconds. */
const AT_START = 0.01;
