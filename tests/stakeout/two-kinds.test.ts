import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../src/base/random';
import { planned, SPEC, wordRegion } from './support/plans';
import { simulateCrews } from './support/simulate';

/** A long steel tape for one holder, a short fibreglass one of poor scale for the other. */
const spec = {
  ...SPEC,
  tape: { ...SPEC.tape, limitFt: 150, scaleSigma: 1 / 1500 },
  secondTape: {
    material: 'steel' as const,
    readingSigmaIn: 0.25,
    proportional: 1 / 5000,
    scaleSigma: 1 / 10_000,
    limitFt: 300,
  },
};

describe('two kinds of tape', () => {
  const { plan } = planned(wordRegion('Go', 'lobster', 40), spec);
  const spread = simulateCrews(plan, 4000, seededRandom(20_261_125));
  const limit = { 1: 150, 2: 300 } as const;

  it('says in each round which is held at which control, and keeps to its length', () => {
    const roundOf = new Map(plan.rounds.map((r) => [r.number, r]));
    for (const { set, check, round } of plan.stakes) {
      expect(check.tape).toBe(2);
      expect(check.reading.ft).toBeLessThanOrEqual(300);
      if (set.method !== 'ties') continue;
      const { from, tapes } = roundOf.get(round)!;
      for (const tie of [set.tie1, set.tie2]) {
        expect(tie.tape).toBe(tapes![from!.indexOf(tie.from)]);
        expect(tie.reading.ft).toBeLessThanOrEqual(limit[tie.tape!]);
      }
      expect(set.tie1.tape).not.toBe(set.tie2.tape);
    }
    const longest = plan.stakes.map(({ set }) =>
      set.method === 'ties' ? Math.max(set.tie1.reading.ft, set.tie2.reading.ft) : 0,
    );
    expect(Math.max(...longest)).toBeGreaterThan(150);
  });

  it('gives ellipses and check limits that simulated crews confirm, scales shared by all pulls', () => {
    const all = [...spread.values()];
    const share = all.reduce((n, s) => n + s.inside, 0) / all.reduce((n, s) => n + s.draws, 0);
    expect(Math.abs(share - 0.95)).toBeLessThan(0.015);
    for (const s of plan.stakes) {
      const simulated = spread.get(s.id)!;
      expect(Math.abs(s.semiMajor95In / simulated.semiMajor95In - 1)).toBeLessThan(0.06);
      expect(Math.abs(s.check.limitIn / (3 * simulated.checkSigmaIn) - 1)).toBeLessThan(0.07);
    }
  });
});
