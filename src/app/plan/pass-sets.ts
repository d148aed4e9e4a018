/** Passes as they are handed out: one machine in one phase of the work, in driving order. */
import type { Leg, Machine, Pass, PassPlan, Phase } from '../../mowing/model';

export interface PassSet {
  readonly id: string;
  readonly machine: Machine;
  readonly phase: Phase;
  readonly passes: number;
  readonly mowFt: number;
  readonly seconds: number;
  readonly name: string;
}

const PHASE_NAMES: Readonly<Record<Phase, string>> = {
  erase: 'erase',
  background: 'bands',
  graphic: 'graphic',
  edge: 'graphic edge',
  border: 'clean-up laps',
  carry: 'carry',
};

export const phaseName = (phase: Phase): string => PHASE_NAMES[phase];

/** Sets with passes, in the order of work. */
export function passSets(plan: PassPlan): readonly PassSet[] {
  return plan.totals.flatMap((t) => {
    const machine = plan.machines.find((m) => m.id === t.machine);
    if (!machine || t.passes === 0) return [];
    return [
      {
        id: `${t.machine} ${t.phase}`,
        machine,
        phase: t.phase,
        passes: t.passes,
        mowFt: t.mowFt,
        seconds: t.seconds,
        name: `${machine.role === 'wide' ? 'Wide' : 'Narrow'}, ${PHASE_NAMES[t.phase]}`,
      },
    ];
  });
}

export function setOf(plan: PassPlan, id: string | null): PassSet | null {
  const sets = passSets(plan);
  return sets.find((s) => s.id === id) ?? sets[0] ?? null;
}

export function passesOfSet(plan: PassPlan, set: PassSet | null): readonly Pass[] {
  if (!set) return [];
  return plan.passes.filter((p) => p.machine === set.machine.id && p.phase === set.phase);
}

export function legsOfSet(plan: PassPlan, set: PassSet | null): readonly Leg[] {
  if (!set) return [];
  return plan.legs.filter((l) => l.machine === set.machine.id && l.phase === set.phase);
}
