/** Field efficiency: what the plan reaches with a machine, beside what handbooks find in open fields. */
import { problem, type Problem } from '../base/result';
import { sourced, type Sourced } from '../base/sourced';
import { driveFt, driveSeconds } from './leg-sums';
import { cutFt, swathFt } from './machines';
import type { EfficiencyRange, FieldEfficiency, Leg, Machine } from './model';
import { reachedEfficiency } from './mowing-time';

/**
 * Usual field efficiencies of mowers on farm fields, shares of 1. None for turf reels were found:
 * they are held against the handbook's mowers at large.
 */
const HANDBOOK: Readonly<Record<'reel' | 'rotary', Sourced<EfficiencyRange>>> = {
  reel: sourced(
    { low: 0.75, high: 0.85 },
    'share',
    'from memory: ASAE D497.7, Table 3, mower',
    'long runs on farm fields; none published for turf reels was found',
  ),
  rotary: sourced(
    { low: 0.75, high: 0.9 },
    'share',
    'from memory: ASAE D497.7, Table 3, rotary mower',
    'long runs on farm fields',
  ),
};

/** The handbook's range for a machine of this kind; null for rollers and brooms, which none gives. */
export const handbookEfficiency = (machine: Machine): Sourced<EfficiencyRange> | null =>
  machine.cutter === 'none' ? null : HANDBOOK[machine.cutter];

/**
 * Field efficiency of `machine` over its legs on the grass: the way from and to the gate and the
 * count left out. It is the share of its time that mows, times the share of its cut that is new.
 */
export function fieldEfficiency(machine: Machine, legs: readonly Leg[]): FieldEfficiency {
  const own = legs.filter(
    (leg) => leg.machine === machine.id && leg.kind !== 'hold' && leg.phase !== 'carry',
  );
  const seconds = driveSeconds(own);
  const share = (kind: Leg['kind']): number =>
    seconds > 0 ? driveSeconds(own.filter((leg) => leg.kind === kind)) / seconds : 0;
  const area = driveFt(own, 'mow') * swathFt(machine);
  return {
    machine: machine.id,
    reached: reachedEfficiency(area, seconds, cutFt(machine), machine.cuttingMph),
    mowing: share('mow'),
    turning: share('turn'),
    empty: share('run'),
    handbook: handbookEfficiency(machine),
  };
}

const percent = (share: number): string => `${Math.round(share * 100)} %`;

/** Whether the plan does better than handbooks find in open fields. */
export const isAboveHandbook = ({ reached, handbook }: FieldEfficiency): boolean =>
  handbook !== null && reached > handbook.value.high;

/** Warning `efficiency-above-handbook`: better than open fields, so that some figure is too good. */
export function efficiencyProblems(machine: Machine, efficiency: FieldEfficiency): Problem[] {
  const { reached, handbook } = efficiency;
  if (!handbook || !isAboveHandbook(efficiency)) return [];
  const { low, high } = handbook.value;
  return [
    problem(
      'efficiency-above-handbook',
      `mowing.${machine.role}`,
      `${machine.name} gets ${percent(reached)} out of its width and speed, more than the ${percent(low)} to ${percent(high)} that handbooks give for open fields`,
      'time a few turns and a pass, and type in the seconds lost at a turn and the paces',
      'warning',
    ),
  ];
}
