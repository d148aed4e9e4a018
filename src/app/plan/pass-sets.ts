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
  return groupPasses(plan.passes, units).flatMap((group) => {
    if (group.phase !== 'background') return [setFrom(group, PHASE_NAMES[group.phase], group.legs)];
    const isQuiet = (pass: Pass) => kinds.get(pass.patch) === 'quiet';
    const quiet = legsOf(group.legs, new Set(group.passes.filter(isQuiet).map((p) => p.number)));
    return [
      setFrom(
        group,
        'Bands',
        group.legs.filter((l) => !quiet.has(l)),
      ),
      setFrom(
        group,
        'Quiet ground',
        group.legs.filter((l) => quiet.has(l)),
      ),
    ].filter((s) => s.passes.length > 0);
  });
}

/** The legs of the numbered passes; travel belongs to the pass it leads to. */
function legsOf(legs: readonly Leg[], numbers: ReadonlySet<number>): Set<Leg> {
  const out = new Set<Leg>();
  let isTheirs = false;
  for (const leg of [...legs].reverse()) {
    if (leg.kind === 'mow') isTheirs = leg.pass !== null && numbers.has(leg.pass);
    if (isTheirs) out.add(leg);
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
