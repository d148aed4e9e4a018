/** What must hold for the printed codes of any plan. */
import { expect, it } from 'vitest';
import { formatLimit } from '../../src/base/quantity';
import { crewCodes, decodeCrewList, MOST_CODE_LENGTH } from '../../src/exchange/crew-code';
import {
  limitIn,
  placeStake,
  readingOf,
  stepFt,
  type CrewJob,
  type CrewList,
} from '../../src/exchange/crew-data';

/** The list in a code; throws when it cannot be read. */
export function decoded(text: string): CrewList {
  const list = decodeCrewList(text);
  if (!list.ok) throw new Error(list.problems[0]?.code);
  return list.value;
}

/** Registers the checks inside a `describe`. */
export function checkCodes(job: CrewJob): void {
  const codes = crewCodes(job);
  const lists = codes.map((c) => decoded(c.text));

  it('hold no more than 600 characters each, one round per code', () => {
    for (const code of codes) expect(code.text.length).toBeLessThanOrEqual(MOST_CODE_LENGTH);
    expect(MOST_CODE_LENGTH).toBe(600);
    const rounds = new Set(codes.map((c) => c.round));
    expect([...rounds]).toEqual(job.stakes.rounds.map((r) => r.number));
    for (const code of codes) expect(code.parts === 1 || code.text.length > 300).toBe(true);
  });

  it('give every stake of the sheets in order, with the very readings that are printed', () => {
    const stakes = lists.flatMap((list) => list.stakes);
    expect(stakes.map((s) => s.id)).toEqual(job.stakes.stakes.map((s) => s.id));
    stakes.forEach((stake, i) => {
      const printed = job.stakes.stakes[i]!;
      const { set, check } = printed;
      expect(readingOf(stake.check.steps, job.system)).toEqual(check.reading);
      const limit = formatLimit(limitIn(stake.check.limit, job.system), job.system);
      expect(limit).toBe(formatLimit(check.limitIn, job.system));
      expect([stake.kind, stake.check.from]).toEqual([printed.kind, check.from]);
      if (set.method !== 'ties' && set.method !== 'line') return;
      expect(readingOf(stake.first, job.system)).toEqual(set.tie1.reading);
      expect([stake.from, stake.side]).toEqual([set.tie1.from, set.side]);
      if (set.method !== 'ties') return;
      expect(readingOf(stake.second, job.system)).toEqual(set.tie2.reading);
      expect(stake.to).toBe(set.tie2.from);
    });
  });

  it('let the phone draw each stake where the plan has it, within a few steps', () => {
    for (const list of lists) {
      const known = new Map(list.points.map((p) => [p.id, { x: p.x, y: p.y }]));
      for (const stake of list.stakes) {
        const at = placeStake(stake, known)!;
        const want = job.stakes.stakes.find((s) => s.id === stake.id)!.at;
        const ft = stepFt(list.system);
        // A reading is rounded to half a step, a control in x and y too: 1.2 steps at most together.
        // Two such circles that cross at 30° or more meet within 1.2 / sin 15° steps.
        expect(Math.hypot(at.x * ft - want.x, at.y * ft - want.y)).toBeLessThan(5 * ft);
        known.set(stake.id, at);
      }
    }
  });

  it('are refused when any one character is changed, left out or added', () => {
    const { text } = codes[codes.length - 1]!;
    for (let i = 0; i < text.length; i++) {
      const other = text[i] === 'A' ? 'B' : 'A';
      for (const bad of [other, '', `${text[i]}${other}`]) {
        const result = decodeCrewList(text.slice(0, i) + bad + text.slice(i + 1));
        expect(result.ok).toBe(false);
      }
    }
  });
}
