import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../src/base/random';
import { planned, wordRegion } from './support/plans';
import { simulateCrews } from './support/simulate';

describe('the precision that is printed', () => {
  const { plan } = planned(wordRegion('Lanterns', 'pacifico'));
  const spread = simulateCrews(plan, 4000, seededRandom(20_260_415));

  it('sets stakes through control stakes, so that their errors count', () => {
    const throughSet = plan.stakes.filter(
      (s) => s.set.method === 'ties' && s.set.tie2.from.startsWith('K'),
    );
    expect(throughSet.length).toBeGreaterThan(20);
  });

  it('holds 95 % of simulated crews inside its ellipses, within 1.5 %', () => {
    const all = [...spread.values()];
    const inside = all.reduce((sum, s) => sum + s.inside, 0);
    const draws = all.reduce((sum, s) => sum + s.draws, 0);
    expect(Math.abs(inside / draws - 0.95)).toBeLessThan(0.015);
  });

  it('gives each semi-major axis within 6 % of the simulated one', () => {
    for (const s of plan.stakes) {
      expect(Math.abs(s.semiMajor95In / spread.get(s.id)!.semiMajor95In - 1)).toBeLessThan(0.06);
    }
  });

  it('gives each check limit as 3 sigma of the simulated difference, within 7 %', () => {
    for (const s of plan.stakes) {
      expect(Math.abs(s.check.limitIn / (3 * spread.get(s.id)!.checkSigmaIn) - 1)).toBeLessThan(
        0.07,
      );
    }
  });
});
