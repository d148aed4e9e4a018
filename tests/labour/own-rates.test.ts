/** The crew's own pace from times, against sums by hand. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { LEAST_TIMES, ownRates, type TimedWork } from '../../src/labour/own-rates';

const stakes = (...seconds: number[]): TimedWork[] =>
  seconds.map((s) => ({ task: 'set-stakes', seconds: s }));
const rateOf = (times: readonly TimedWork[]) => ownRates(times)[0]!.rate;

describe('own rates', () => {
  it('take nothing from fewer than ten times', () => {
    const nine = stakes(...Array.from({ length: LEAST_TIMES - 1 }, () => 60));
    expect(ownRates(nine)).toEqual([{ task: 'set-stakes', used: 9, leftOut: 0, rate: null }]);
    expect(rateOf([...nine, ...stakes(60)])).toEqual({ low: 1, likely: 1, high: 1 });
  });

  it('leave out what was ticked afterwards', () => {
    const times = stakes(...Array.from({ length: 12 }, () => 90), 2, 0, 7.9);
    expect(ownRates(times)[0]).toMatchObject({ used: 12, leftOut: 3, rate: { likely: 1.5 } });
  });

  it('keep tasks apart', () => {
    const pins = stakes(...Array.from({ length: 10 }, () => 120)).map((t) => ({
      ...t,
      task: 'set-pins' as const,
    }));
    const both = ownRates([...stakes(...Array.from({ length: 10 }, () => 60)), ...pins]);
    expect(both.map((r) => [r.task, r.rate?.likely])).toEqual([
      ['set-stakes', 1],
      ['set-pins', 2],
    ]);
  });

  it('plan as many stakes at what they took, as PERT counts the three figures', () => {
    // PERT mean (a + 4m + b) / 6: Malcolm et al. 1959, Operations Research 7. Two hundredths of a
    // minute for the rounding of three figures.
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 40, max: 160 }), { minLength: 20, maxLength: 120 }),
        (seconds) => {
          const rate = rateOf(stakes(...seconds))!;
          const mean = seconds.reduce((sum, s) => sum + s / 60, 0) / seconds.length;
          const pert = (rate.low + 4 * rate.likely + rate.high) / 6;
          const clamped = rate.likely === rate.low || rate.likely === rate.high;
          expect(rate.low <= rate.likely && rate.likely <= rate.high).toBe(true);
          if (!clamped) expect(Math.abs(pert - mean)).toBeLessThan(0.02);
        },
      ),
      { seed: 5 },
    );
  });

  it('put one time in ten below low and one above high', () => {
    // 11 times 1, 2 … 11 min: the 10 % and 90 % points are the second and the tenth.
    const rate = rateOf(stakes(...Array.from({ length: 11 }, (_, i) => 60 * (i + 1))));
    expect(rate).toEqual({ low: 2, likely: 6, high: 10 });
  });
});
