import { describe, expect, it } from 'vitest';
import { FONT_CATALOGUE } from '../../src/art/fonts';
import type { Region } from '../../src/geometry/region';
import { planStakes } from '../../src/stakeout/plan-stakes';
import { expectWholePlan, nastyArt, nearTouching } from './support/nasty-art';
import { outlineFigures } from './support/outline-figures';
import { defaultField, emblemRegion, planned, SPEC, wordRegion } from './support/plans';

const plan = (graphic: Region) => planStakes({ field: defaultField(), graphic, spec: SPEC });

describe('nasty art', () => {
  it.each(Array.from({ length: 60 }, (_, i) => 100 + i))(
    'never breaks the plan (draw %i)',
    (seed) => {
      expectWholePlan(plan(nastyArt(seed)));
    },
  );
});

const GAPS = [0, 0.02, 0.05, 0.1, 0.2, 0.35, 0.5];

describe('contours that touch or nearly do', () => {
  it.each(Array.from({ length: 42 }, (_, i) => [i, GAPS[i % GAPS.length]!] as const))(
    'draw %i, %f ft apart: neither crosses nor strays',
    (seed, gap) => {
      const graphic = nearTouching(seed, gap);
      const { plan: made, problems } = planned(graphic);
      expect(problems.map((p) => p.code)).toEqual([]);
      const figures = outlineFigures(made, graphic, SPEC.toleranceIn);
      expect(figures.crossings).toBe(0);
      expect(figures.gapIn).toBeLessThanOrEqual(SPEC.toleranceIn + 0.5);
    },
  );

  it.each([0.7, 0.85, 1, 1.2, 1.4])('the emblem of arcs at %f of its size', (scale) => {
    const graphic = emblemRegion(0, 265, scale);
    const { plan: made, problems } = planned(graphic);
    expect(problems.map((p) => p.code).filter((c) => c !== 'stake-over-target')).toEqual([]);
    expect(outlineFigures(made, graphic, SPEC.toleranceIn).crossings).toBe(0);
  });
});

const WORDS = ['Lanterns', 'Gophers', 'Ball', 'Mbwqy', 'Opossum', 'Quilt', 'Fern'];

describe('words at a range of sizes', () => {
  const jobs = FONT_CATALOGUE.flatMap(({ id }, i) =>
    [70, 100, 140, 190].map((width, k) => [WORDS[(4 * i + k) % WORDS.length]!, id, width] as const),
  );
  it.each(jobs)('%s in %s, %d ft wide: neither crosses nor strays', (word, font, width) => {
    const { problems } = planned(wordRegion(word, font, width));
    const codes = problems.map((p) => p.code);
    expect(codes).not.toContain('outline-crosses');
    expect(codes).not.toContain('outline-off');
  });
});
