/**
 * Passes as they are looked at: one machine in one phase, in the order of work, the quiet ground
 * apart from the bands. Numbers and what comes next are the printed sheet's.
 */
import type { LengthSystem } from '../../base/quantity';
import type { Leg, Machine, Pass, Phase } from '../../mowing/model';
import type { Plan } from '../../plan/model';
import { groupPasses, type PassGroup } from '../../sheets/pass-groups';

export interface PassSet {
  readonly id: string;
  readonly machine: Machine;
  readonly phase: Phase;
  readonly name: string;
  readonly passes: readonly Pass[];
  readonly legs: readonly Leg[];
  readonly mowFt: number;
  readonly minutes: number;
  /** Comes after the signed count of stakes. */
  readonly afterHold: boolean;
  /** By pass number: what the driver does after it. */
  readonly then: ReadonlyMap<number, string>;
}

const PHASE_NAMES: Readonly<Record<Phase, string>> = {
  erase: 'Rub out the old',
  background: 'Bands',
  graphic: 'Graphic',
  edge: 'Graphic edge',
  border: 'Clean-up laps',
  carry: 'Carry',
};

const made = new WeakMap<Plan, readonly PassSet[]>();

/** Sets with passes, in the order of work. */
export function passSets(plan: Plan): readonly PassSet[] {
  const before = made.get(plan);
  if (before) return before;
  const sets = buildSets(plan, plan.project.units);
  made.set(plan, sets);
  return sets;
}

function buildSets(plan: Plan, units: LengthSystem): PassSet[] {
  const kinds = new Map(plan.design.patches.map((p) => [p.id, p.kind]));
  const isQuiet = (patch: string | null) => patch !== null && kinds.get(patch) === 'quiet';
  return groupPasses(plan.passes, units).flatMap((group) => {
    if (group.phase !== 'background') return [setFrom(group, PHASE_NAMES[group.phase], group.legs)];
    const quiet = quietLegs(group.legs, isQuiet);
    const isIn = (leg: Leg) => quiet.has(leg);
    return [
      setFrom(
        group,
        'Bands',
        group.legs.filter((l) => !isIn(l)),
      ),
      setFrom(group, 'Quiet ground', group.legs.filter(isIn)),
    ].filter((s) => s.passes.length > 0);
  });
}

/** Travel belongs to the pass it leads to. */
function quietLegs(legs: readonly Leg[], isQuiet: (patch: string | null) => boolean): Set<Leg> {
  const out = new Set<Leg>();
  let quiet = false;
  for (const leg of [...legs].reverse()) {
    if (leg.kind === 'mow') quiet = isQuiet(leg.patch);
    if (quiet) out.add(leg);
  }
  return out;
}

function setFrom(group: PassGroup, name: string, legs: readonly Leg[]): PassSet {
  const numbers = new Set(legs.filter((l) => l.kind === 'mow').map((l) => l.pass));
  const passes = group.passes.filter((p) => numbers.has(p.number));
  return {
    id: `${group.machine.id} ${name}`,
    machine: group.machine,
    phase: group.phase,
    name,
    passes,
    legs,
    mowFt: passes.reduce((n, p) => n + p.lengthFt, 0),
    minutes: legs.reduce((n, l) => n + l.seconds, 0) / 60,
    afterHold: group.afterHold,
    then: group.thenText,
  };
}

export function setOf(plan: Plan, id: string | null): PassSet | null {
  const sets = passSets(plan);
  return sets.find((s) => s.id === id) ?? sets[0] ?? null;
}
