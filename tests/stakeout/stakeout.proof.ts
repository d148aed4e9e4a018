import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../src/base/random';
import { densify, drawOutline, farthest, setOut } from './support/crew';
import { planned, SPEC, wordRegion } from './support/plans';
import { simulateCrews } from './support/simulate';

const FONTS = ['pacifico', 'kaushan-script'] as const;

function drawnWord(seed: number): string {
  const random = seededRandom(seed);
  const letters = 'abcdefghijklmnopqrstuvwxyz';
  const pick = () => letters[random.integer(letters.length)]!;
  return pick().toUpperCase() + Array.from({ length: 4 + random.integer(4) }, pick).join('');
}

describe('forty drawn words in two scripts', () => {
  const words = Array.from({ length: 40 }, (_, i) => [drawnWord(i), FONTS[i % 2]!] as const);
  it.each(words)(
    '%s in %s is drawn within tolerance + 1/2 in from printed readings',
    (word, font) => {
      const { plan, graphic, problems } = planned(wordRegion(word, font, 140));
      expect(problems.map((p) => p.code).filter((c) => c !== 'stake-over-target')).toEqual([]);
      const drawn = drawOutline(plan, setOut(plan)).flat();
      const art = graphic.flatMap((ring) => densify(ring));
      const gap = Math.max(farthest(art, drawn), farthest(drawn, art)) * 12;
      expect(gap).toBeLessThanOrEqual(SPEC.toleranceIn + 0.5);
    },
  );
});

describe('20,000 simulated crews', () => {
  const { plan } = planned(wordRegion('Lanterns', 'pacifico'));
  const spread = simulateCrews(plan, 20_000, seededRandom(99));
  it('95 % ellipses hold 94 to 96 % of all stakes, and each semi-major is within 2 %', () => {
    const all = [...spread.values()];
    const share = all.reduce((n, s) => n + s.inside, 0) / all.reduce((n, s) => n + s.draws, 0);
    expect(share).toBeGreaterThan(0.94);
    expect(share).toBeLessThan(0.96);
    for (const s of plan.stakes) {
      expect(Math.abs(s.semiMajor95In / spread.get(s.id)!.semiMajor95In - 1)).toBeLessThan(0.02);
    }
  });
});
