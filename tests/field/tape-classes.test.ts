import { describe, expect, it } from 'vitest';
import { classLimitMm, classScaleSigma } from '../../src/field/tape-classes';

describe('accuracy classes of tapes', () => {
  it('allow 1.1, 2.3 and 4.6 mm at 10 m', () => {
    // As tape makers print for classes I, II and III (Directive 2014/32/EU, annex X, MI-008).
    expect(classLimitMm('I', 10)).toBeCloseTo(1.1, 9);
    expect(classLimitMm('II', 10)).toBeCloseTo(2.3, 9);
    expect(classLimitMm('III', 10)).toBeCloseTo(4.6, 9);
  });

  it('allow an open-reel tape of class III 12.6 mm at 30 m and 40.6 mm at 100 m', () => {
    expect(classLimitMm('III', 30)).toBeCloseTo(12.6, 9);
    expect(classLimitMm('III', 100)).toBeCloseTo(40.6, 9);
  });

  it('round the length up to a whole metre: 41.0 mm at 330 ft', () => {
    // 330 ft = 100.584 m counts as 101 m, by hand.
    expect(classLimitMm('III', 330 * 0.3048)).toBeCloseTo(41, 9);
  });

  it('give a scale sigma of half the limit: about 1 : 4900 for class III at 330 ft', () => {
    // 41.0 mm over 100.584 m is about 1 : 2450, by hand.
    expect(1 / classScaleSigma('III', 330)).toBeCloseTo(2 * 2453.3, 0);
    expect(classScaleSigma('I', 200)).toBeLessThan(classScaleSigma('II', 200));
  });
});
