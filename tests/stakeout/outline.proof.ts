import { describe, expect, it } from 'vitest';
import { FONT_CATALOGUE } from '../../src/art/fonts';
import { exactPieces, outlineFigures } from './support/outline-figures';
import { planned, SPEC, wordRegion } from './support/plans';

const WORDS = ['Lanterns', 'Fernmoor', 'Tallow', 'Wickets'];
const WIDTHS = [150, 165, 180];

/** Bold scripts have straight stems: no chain at any cost has fewer than 0.45 in one of them. */
const PIECES: Readonly<Record<string, number>> = {
  ...{ pacifico: 0.4, 'kaushan-script': 0.4, 'leckerli-one': 0.4 },
  ...{ 'oleo-script': 0.5, lobster: 0.45 },
};

const JOBS = FONT_CATALOGUE.flatMap(({ id, style }, i) =>
  [0, 1].map((k) => {
    const word = WORDS[(i + k) % WORDS.length]!;
    return [
      style === 'script' ? word : word.toUpperCase(),
      id,
      style,
      WIDTHS[(i + k) % 3]!,
    ] as const;
  }),
);

describe.each(JOBS)('%s in %s (%s), %d ft wide', (word, font, style, width) => {
  const graphic = wordRegion(word, font, width);
  const { plan } = planned(graphic);
  const figures = outlineFigures(plan, graphic, SPEC.toleranceIn);

  it('keeps the tolerance and the rounding of its readings, both ways', () => {
    expect(figures.gapIn).toBeLessThanOrEqual(SPEC.toleranceIn + 0.5);
  });

  // Block letters are straight: a string for a string.
  it('takes at most 0.40 of a Douglas–Peucker chain’s pieces in flowing script', () => {
    expect(figures.toDouglasPeucker).toBeLessThanOrEqual(PIECES[font] ?? 1);
  });

  it('takes at most 0.22 stakes and pins for a grid mark in script', () => {
    if (style === 'script') expect(figures.toGrid).toBeLessThanOrEqual(0.22);
  });

  it('swings 3 ft or more, keeps stakes 8 in apart, and never crosses', () => {
    expect(figures.shortestSwingFt).toBeGreaterThanOrEqual(3);
    expect(figures.closestIn).toBeGreaterThanOrEqual(8);
    expect(figures.crossings).toBe(0);
  });
});

describe('the number of pieces', () => {
  it('is within 2 % of an exhaustive search, where stakes do not crowd', () => {
    const graphic = wordRegion('Lanterns', 'pacifico', 180);
    const { plan } = planned(graphic);
    const taken = plan.contours.reduce((sum, c) => sum + c.pieces.length, 0);
    expect(taken).toBeLessThanOrEqual(1.02 * exactPieces(graphic, SPEC.toleranceIn, 30));
  });
});
