/**
 * Writes demo-data/lantern-emblem-readings.csv again after the emblem's plan has changed:
 * `npx tsx tests/audit/support/write-example.ts`. An invented crew sets the emblem out and lets one
 * tape out a foot too far.
 */
import { writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { formatFeetInches } from '../../../src/base/quantity';
import { readInput } from '../../../src/cli/read-input';
import { engine } from '../../../src/engine/api';
import type { StakePlan } from '../../../src/stakeout/model';
import { fieldCrew } from './field-crew';

const FOLDER = resolve(import.meta.dirname, '../../../demo-data');
const SEED = 3;
/** Stakes with a second control in reach get a second reading: every third one here. */
const EVERY = 3;

function lines(plan: StakePlan): string[] {
  const tied = plan.stakes.filter((s) => s.kind !== 'control' && s.set.method === 'ties');
  const wrong = tied[Math.floor(tied.length / 2)]!;
  const crew = fieldCrew(plan, SEED, [{ kind: 'tie', stake: wrong.id, tie: 1, inches: 12 }]);
  const row = (stake: string, from: string, note: string) => {
    const { ft } = crew.read(stake, from);
    return `${stake},${from},${formatFeetInches(ft)},${note}`;
  };
  const spare = (id: string) => {
    const stake = plan.stakes.find((s) => s.id === id)!;
    const used = JSON.stringify([stake.set, stake.check.from]);
    return plan.controls.find((c) => !used.includes(`"${c.id}"`) && c.kind === 'fixed')!.id;
  };
  return [
    'stake,from,reading,note',
    ...plan.stakes.map((s) => row(s.id, s.check.from, 'check')),
    ...tied
      .filter((s, i) => i % EVERY === 0 || s === wrong)
      .map((s) => row(s.id, spare(s.id), 'second check')),
  ];
}

const input = readInput(join(FOLDER, 'lantern-emblem.json'));
const plan = input.ok ? engine.makePlan(input.value.project, input.value.assets) : input;
if (!plan.ok || !plan.value.stakes) throw new Error('the emblem has no stakes');
writeFileSync(
  join(FOLDER, 'lantern-emblem-readings.csv'),
  `${lines(plan.value.stakes).join('\n')}\n`,
);
