import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { passMiddles, spanBands, wayOf } from '../../src/pattern/span-bands';

const widths = fc.array(
  fc.record({
    ft: fc.double({ min: 1, max: 60, noNaN: true }),
    passes: fc.integer({ min: 1, max: 8 }),
  }),
  { minLength: 1, maxLength: 4 },
);

describe('bands', () => {
  test('repeat their widths and leave neither gap nor overlap', () => {
    fc.assert(
      fc.property(
        fc.record({
          widths,
          start: fc.double({ min: -250, max: 250, noNaN: true }),
          low: fc.double({ min: -300, max: 0, noNaN: true }),
          reach: fc.double({ min: 1, max: 500, noNaN: true }),
        }),
        ({ widths: list, start, low, reach }) => {
          const bands = spanBands(list, start, low, low + reach);
          expect(bands[0]!.from).toBeLessThanOrEqual(low + 1e-9);
          expect(bands.at(-1)!.to).toBeGreaterThanOrEqual(low + reach - 1e-9);
          bands.forEach((band, i) => {
            const own = list[((band.index % list.length) + list.length) % list.length]!;
            expect(band.to - band.from).toBeCloseTo(own.ft, 9);
            expect(band.passes).toBe(own.passes);
            if (i > 0) expect(band.from).toBeCloseTo(bands[i - 1]!.to, 9);
            if (band.index === 0) expect(band.from).toBeCloseTo(start, 9);
          });
        },
      ),
      { seed: 24, numRuns: 200 },
    );
  });

  test('alternate by any repeating list, to both sides of the start', () => {
    expect([-3, -2, -1, 0, 1, 2].map((i) => wayOf(['out', 'back'], i))).toEqual([
      ...['back', 'out', 'back', 'out', 'back', 'out'],
    ]);
    const three = ['out', 'out', 'back'] as const;
    expect([-1, 0, 1, 2, 3].map((i) => wayOf(three, i))).toEqual([
      ...['back', 'out', 'out', 'back', 'out'],
    ]);
  });

  test('are mown flush with both edges, no two passes farther apart than a swath', () => {
    for (const [width, passes] of [
      [15, 4],
      [14.75, 3],
      [4.9, 1],
      [33, 7],
    ] as const) {
      const swath = 4.917;
      const middles = passMiddles({ from: 10, to: 10 + width, passes }, swath);
      expect(middles).toHaveLength(passes);
      if (passes === 1) continue;
      expect(middles[0]! - swath / 2).toBeCloseTo(10, 9);
      expect(middles.at(-1)! + swath / 2).toBeCloseTo(10 + width, 9);
      middles.slice(1).forEach((x, i) => expect(x - middles[i]!).toBeLessThan(swath + 0.01));
    }
  });
});
