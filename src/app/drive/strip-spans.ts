/** What stands along the line of the visit: each machine's sets of passes, the count, the ticks. */
import type { Seconds } from '../../base/units';
import type { Phase } from '../../mowing/model';
import type { Plan } from '../../plan/model';
import { passSets, type PassSet } from '../plan/pass-sets';
import { alongOf } from './drive-axis';
import type { Drive, Driven } from './drive-of';

/** From and to are shares of the line, 0 to 1. */
export interface Span {
  readonly name: string;
  /** For a stretch that has no room for the name. */
  readonly short: string;
  readonly from: number;
  readonly to: number;
}

/** Stretches of one set of passes without another between, by start. */
export function spansOf(plan: Plan, drive: Drive, { legs }: Driven): Span[] {
  const setOfLeg = new Map(passSets(plan).flatMap((set) => set.legs.map((leg) => [leg, set])));
  const runs: { set: PassSet; fromS: Seconds; toS: Seconds }[] = [];
  for (const leg of legs) {
    const set = setOfLeg.get(leg);
    const last = runs[runs.length - 1];
    if (!set) continue;
    if (last?.set === set) last.toS = leg.startS + leg.seconds;
    else runs.push({ set, fromS: leg.startS, toS: leg.startS + leg.seconds });
  }
  return runs.map(({ set, fromS, toS }) => ({
    name: set.name,
    short: SHORT[set.phase] ?? set.name.split(' ')[0]!,
    from: shareAt(drive, fromS),
    to: shareAt(drive, toS),
  }));
}

const SHORT: Readonly<Partial<Record<Phase, string>>> = { edge: 'Edge', border: 'Laps' };

/** Place of a moment along the line, 0 to 1. */
export const shareAt = (drive: Drive, clockS: Seconds): number =>
  alongOf(drive.axis, clockS) / drive.axis.length;

/** Every ten minutes of driving, as a share of the line. */
export function ticksOf(drive: Drive): number[] {
  const { endS, hold } = drive.axis;
  const ticks: number[] = [];
  for (let t = 0; t <= endS; t += TICK_S) {
    if (!hold || t <= hold.fromS || t >= hold.toS) ticks.push(shareAt(drive, t));
  }
  return ticks;
}

const TICK_S = 600;
