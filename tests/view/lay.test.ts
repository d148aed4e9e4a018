import { describe, expect, it } from 'vitest';
import { pointDistance, vectorLength } from '../../src/geometry/point';
import { apparentBrightness } from '../../src/view/light';
import { burnedInLay, layAfterPass, layStrength } from '../../src/view/lay';
import { layAtPatch, mapLays } from '../../src/view/lay-map';
import { box, plainDesign, ringDesign } from './fixtures';

const EAST = { x: 1, y: 0 };
const NORTH = { x: 0, y: 1 };
const REST = { x: 0, y: 0 };

describe('the lean of the grass', () => {
  it('settles as 1 − (1 − w)^n over repeated passes', () => {
    let lay = REST;
    for (let n = 1; n <= 12; n++) {
      lay = layAfterPass(lay, NORTH, 0.65);
      expect(lay.y).toBeCloseTo(1 - 0.35 ** n, 12);
      expect(layStrength(n, 0, 0.65)).toBeCloseTo(lay.y, 12);
    }
  });

  // By hand: 1 − 2·0.35^n = 0.30, 0.755, 0.914, 0.970; practice: two to three cuts to burn in.
  it('reverses an old pattern in a few passes', () => {
    const strengths = [1, 2, 3, 4].map((n) => layStrength(n, -1, 0.65));
    [0.3, 0.755, 0.91425, 0.9699875].forEach((s, i) => expect(strengths[i]).toBeCloseTo(s, 9));
  });

  it('burned in, one direction leans fully; two remember their order', () => {
    expect(burnedInLay([NORTH])).toEqual(NORTH);
    const w = 0.65;
    const northLast = burnedInLay([EAST, NORTH], w);
    // Fixed point by hand: [(1 − w)·d1 + d2] ÷ (2 − w).
    expect(pointDistance(northLast, { x: (1 - w) / (2 - w), y: 1 / (2 - w) })).toBeLessThan(1e-12);
    let lay = REST;
    for (let k = 0; k < 60; k++) lay = layAfterPass(layAfterPass(lay, EAST, w), NORTH, w);
    expect(pointDistance(lay, northLast)).toBeLessThan(1e-12);
    expect(northLast.y).toBeGreaterThan(northLast.x);
  });

  it('gives a checkerboard four tones at least 0.04 apart', () => {
    const d = (sense: number, diagonal: number) => ({
      x: sense * Math.SQRT1_2 * diagonal,
      y: sense * Math.SQRT1_2,
    });
    const eye = { at: { x: 0, y: -100_000 }, heightFt: 30 };
    const tones = [1, -1]
      .flatMap((a) => [1, -1].map((b) => burnedInLay([d(a, 1), d(b, -1)], 0.65)))
      .map((lay) => apparentBrightness(lay, { x: 0, y: 270 }, eye))
      .sort((a, b) => a - b);
    const steps = tones.slice(1).map((tone, i) => tone - tones[i]!);
    expect(Math.min(...steps)).toBeGreaterThanOrEqual(0.04);
  });
});

describe('the lay at a place', () => {
  it('is the bearing of the patch there, null off the grass', () => {
    const lays = mapLays(plainDesign(box(-30, 250, 30, 280)));
    expect(lays.at({ x: 45, y: 200 })).toEqual({ x: 0, y: 1 });
    expect(lays.at({ x: 55, y: 200 })!.y).toBe(-1);
    expect(lays.at({ x: 1, y: 260 })!.y).toBe(-1);
    expect(lays.at({ x: 0, y: 90 })).toBeNull();
  });

  it('follows the tangent of a guide, in its sense', () => {
    for (const sense of ['forward', 'backward'] as const) {
      const design = ringDesign(sense);
      const lays = mapLays(design);
      const sign = sense === 'forward' ? 1 : -1;
      for (let deg = 1; deg < 360; deg += 7) {
        const a = (deg * Math.PI) / 180;
        const lay = lays.at({ x: 33 * Math.cos(a), y: 250 + 33 * Math.sin(a) })!;
        const tangent = { x: -sign * Math.sin(a), y: sign * Math.cos(a) };
        expect(vectorLength(lay)).toBeCloseTo(1, 9);
        expect(pointDistance(lay, tangent)).toBeLessThan(0.05);
      }
      expect(vectorLength(layAtPatch(design, design.patches[0]!))).toBeCloseTo(1, 9);
    }
  });
});
