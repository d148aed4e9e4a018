/** What the phone says of a stake and of a check, worked out by hand. */
import { describe, expect, it } from 'vitest';
import { judgeCheck, pullsOf, sideSentence } from '../../src/crew/words';
import type { CrewStake } from '../../src/exchange/crew-data';

const stake: CrewStake = {
  id: '62',
  kind: 'outline',
  method: 'ties',
  from: 'K1',
  to: 'K3',
  first: 4 * (94 * 12 + 11) + 1,
  second: 4 * (76 * 12 + 6) + 2,
  side: 'R',
  // 3' 5 1/2", good within 2 1/2"
  check: { from: '61', steps: 4 * 41 + 2, limit: 10 },
};

describe('a stake in words', () => {
  it('shows the printed readings and the side', () => {
    expect(pullsOf(stake, 'feet-inches').map((p) => p.reading)).toEqual([
      '94′\u00a011\u00a01/4″',
      '76′\u00a06\u00a01/2″',
    ]);
    expect(sideSentence(stake)).toBe('Right of the line K1 to K3');
  });

  it('tells what is square to a string from what is pulled', () => {
    const offset: CrewStake = { ...stake, method: 'offset', first: 480, second: 30, side: 'L' };
    expect(pullsOf(offset, 'feet-inches')).toEqual([
      { at: 'K1', label: 'K1 → K3', reading: '10′\u00a00″' },
      { at: null, label: 'square left', reading: '0′\u00a07\u00a01/2″' },
    ]);
    const chord: CrewStake = { ...offset, method: 'chord', first: 0 };
    expect(pullsOf(chord, 'feet-inches')).toHaveLength(1);
    expect(sideSentence(chord)).toBe('Square off the middle of K1 to K3, to the left');
  });

  it('reads metric steps as the tape shows them', () => {
    expect(pullsOf({ ...stake, first: 7759 }, 'metric')[0]!.reading).toBe('38.795\u00a0m');
  });
});

describe('a check', () => {
  const inches = (n: number) => judgeCheck(stake.check, n / 12, 'feet-inches');
  it('is good up to the printed limit and no further', () => {
    expect(inches(42)).toMatchObject({ good: true, text: '1/2″ off, within 2\u00a01/2″' });
    expect(inches(44).good).toBe(true);
    expect(inches(39).good).toBe(true);
    expect(inches(44.25).good).toBe(false);
    expect(inches(38.75).good).toBe(false);
  });

  it('says how far off it is, in plain words and aloud', () => {
    expect(inches(48)).toMatchObject({
      text: '6\u00a01/2″ off, more than 2\u00a01/2″: pull it and set it again',
      said: 'Off by 7 inches. Pull it and set it again.',
    });
    expect(inches(41.5 + 38).text).toMatch(/^3′\u00a02″ off/);
    expect(inches(41.5 + 38).said).toMatch(/^Off by 3 feet 2 inches\./);
  });

  it('never says that twelve inches are left over', () => {
    expect(inches(41.5 + 23.8).said).toMatch(/^Off by 2 feet 0 inches/);
  });
});
