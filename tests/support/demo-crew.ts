/** What the phone page is made from: of the hand-made plan, and of the demos (stakes only). */
import { buildField } from '../../src/field/build-field';
import type { CrewJob } from '../../src/exchange/crew-data';
import { crewJobOf } from '../../src/exchange/crew-page';
import { placeGraphic } from '../../src/plan/make-plan';
import { planStakes } from '../../src/stakeout/plan-stakes';
import type { LengthSystem } from '../../src/base/quantity';
import { assetsOf, readDemo } from '../contract/plan-of';
import { planFixture } from '../sheets/plan-fixture';

/** Eight letters set out by hand: some seventy stakes, made at once. */
export function fixtureCrew(units: LengthSystem = 'feet-inches'): CrewJob {
  const job = crewJobOf(planFixture({ units }));
  if (!job) throw new Error('the fixture has stakes');
  return job;
}

const made = new Map<string, CrewJob>();

export const DEMOS = ['lanterns-word.json', 'lantern-emblem.json'] as const;

export function demoCrew(
  file: (typeof DEMOS)[number],
  system: LengthSystem = 'feet-inches',
): CrewJob {
  const before = made.get(`${file} ${system}`);
  if (before) return before;
  const project = readDemo(file);
  const field = buildField(project.field, system);
  const graphic = placeGraphic(project, assetsOf(project));
  if (!field.ok || !graphic.ok) throw new Error(`${file} has no ground or graphic`);
  const spec = { ...project.stakeout, system };
  const stakes = planStakes({ field: field.value, graphic: graphic.value, spec });
  if (!stakes.ok) throw new Error(`${file} has no stakes`);
  const job = { name: project.name, fingerprint: '0123456789abcdef', system, stakes: stakes.value };
  made.set(`${file} ${system}`, job);
  return job;
}
