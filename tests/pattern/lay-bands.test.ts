import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { layBands } from '../../src/pattern/lay-bands';

const spec = (over: Partial<Parameters<typeof layBands>[0]> = {}) => ({
  kind: 'bands' as const,
  bearingDeg: 0,
  passesPerBand: 3,
  offsetFt: 0,
  ...over,
});

describe('bands', () => {
  test('are k swaths wide, alternate, and leave neither gap nor overlap', () => {
    fc.assert(
      fc.property(
        fc.record({
          passes: fc.integer({ min: 1, max: 8 }),
          swath: fc.double({ min: 1, max: 9, noNaN: true }),
          origin: fc.double({ min: -200, max: 200, noNaN: true }),
          offset: fc.double({ min: -50, max: 50, noNaN: true }),
          bearing: fc.double({ min: -720, max: 720, noNaN: true }),
          from: fc.double({ min: -300, max: 0, noNaN: true }),
          width: fc.double({ min: 1, max: 500, noNaN: true }),
        }),
        ({ passes, swath, origin, offset, bearing, from, width }) => {
          const bands = layBands(
            spec({ bearingDeg: bearing, passesPerBand: passes, offsetFt: offset }),
            swath,
            origin,
            from,
            from + width,
          );
          expect(bands[0]!.fromX).toBeLessThanOrEqual(from + 1e-9);
          expect(bands[bands.length - 1]!.toX).toBeGreaterThanOrEqual(from + width - 1e-9);
          bands.forEach((band, i) => {
            expect(band.toX - band.fromX).toBeCloseTo(passes * swath, 9);
            const before = bands[i - 1];
            if (!before) return;
            expect(band.fromX).toBeCloseTo(before.toX, 9);
            const turn = Math.abs(band.bearingDeg - before.bearingDeg);
            expect(turn).toBeCloseTo(180, 6);
          });
        },
      ),
      { seed: 24, numRuns: 200 },
    );
  });

  test('an edge stands on second base, moved by the offset, and the band to its right has the bearing', () => {
    const bands = layBands(spec({ bearingDeg: 30, offsetFt: 2 }), 5, 17, -100, 100);
    const band = bands.find((b) => b.index === 0)!;
    expect(band.fromX).toBe(19);
    expect(band.bearingDeg).toBe(30);
    expect(bands.find((b) => b.index === -1)!.bearingDeg).toBe(210);
    expect(bands.find((b) => b.index === -2)!.bearingDeg).toBe(30);
  });
});
