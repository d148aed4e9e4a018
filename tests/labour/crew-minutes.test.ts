import { describe, expect, it } from 'vitest';
import { crewMinutes } from '../../src/labour/crew-minutes';
import { DEFAULT_MINUTES, type CrewMinutes } from '../../src/stakeout/minutes';
import { SPEC } from './fixtures';

const fixed = (value: number) => ({ low: value, likely: value, high: value });

describe('person-minutes of a step', () => {
  it('are the planner’s own figures with the catalogue’s rates, three at the tapes and a pair', () => {
    const minutes = crewMinutes({ ...SPEC, people: 3 }, 3);
    for (const [step, value] of Object.entries(DEFAULT_MINUTES)) {
      expect(minutes[step as keyof CrewMinutes], step).toBeCloseTo(Number(value), 9);
    }
  });

  // By hand: 2 min × 3 people + 0.5 min + 0.3 min × 2; a foot in 6 s × 2.
  it('follow the crew’s own rates', () => {
    const rates = {
      'set-stakes': fixed(2),
      prepare: fixed(0.5),
      pull: fixed(0.3),
      'pull-strings': fixed(6),
    };
    const minutes = crewMinutes({ ...SPEC, people: 3, rates }, 3);
    expect(minutes.ties).toBeCloseTo(7.1, 9);
    expect(minutes.stringPerFt).toBeCloseTo(0.2, 9);
  });

  it('grow less than the tape crew: three do more in an hour than two', () => {
    const two = crewMinutes({ ...SPEC, people: 2 }, 2);
    const three = crewMinutes({ ...SPEC, people: 3 }, 3);
    // 1.4 × 1.35 × 2 beside 1.4 × 3, by hand.
    expect(three.ties - two.ties).toBeCloseTo(4.2 - 3.78, 9);
  });

  it('take a crew too small to set out as the fewest that can', () => {
    expect(crewMinutes({ ...SPEC, people: 0 }, 3)).toEqual(crewMinutes({ ...SPEC, people: 2 }, 3));
  });
});
