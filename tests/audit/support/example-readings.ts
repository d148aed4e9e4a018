/** The readings of an invented crew that sets a plan out and lets one tape out a foot too far. */
import { formatFeetInches } from '../../../src/base/quantity';
import type { StakePlan } from '../../../src/stakeout/model';
import { fieldCrew } from './field-crew';

const SEED = 3;
/** Stakes with a second control in reach get a second reading: every third one here. */
const EVERY = 3;

/** A readings file, and the stake whose first tie slipped. */
export function exampleReadings(plan: StakePlan): {
  readonly stake: string;
  readonly text: string;
} {
  const tied = plan.stakes.filter((s) => s.kind !== 'control' && s.set.method === 'ties');
  const outline = tied.filter((s) => s.kind === 'outline');
  const wrong = outline[Math.floor(outline.length / 2)]!;
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
  const lines = [
    'stake,from,reading,note',
    ...plan.stakes.map((s) => row(s.id, s.check.from, 'check')),
    ...tied
      .filter((s, i) => i % EVERY === 0 || s === wrong)
      .map((s) => row(s.id, spare(s.id), 'second check')),
  ];
  return { stake: wrong.id, text: `${lines.join('\n')}\n` };
}
