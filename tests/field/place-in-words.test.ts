import { describe, expect, it } from 'vitest';
import { overhangInWords, placeInWords } from '../../src/field/place-in-words';
import { rectangle } from '../../src/geometry/region';

const box = (minX: number, minY: number, maxX: number, maxY: number) =>
  rectangle({ minX, minY, maxX, maxY });

describe('places in words', () => {
  it('are paced from home and from the line through second base', () => {
    // 3-4-5 triangles: the distance from home is known without a square root.
    expect(placeInWords({ x: 30, y: 40 })).toBe(
      '50 ft from home, 30 ft right of the line through second base',
    );
    expect(placeInWords({ x: -120, y: 160 })).toBe(
      '200 ft from home, 120 ft left of the line through second base',
    );
    expect(placeInWords({ x: 0.4, y: 212 })).toBe(
      '212 ft from home, on the line through second base',
    );
  });
});

describe('what sticks out, in words', () => {
  it('is the deepest part, not the box round all of them', () => {
    const parts = [...box(-200, 100, -198, 140), ...box(25, 28, 35, 52)];
    expect(overhangInWords(parts, 'over the skin')).toBe(
      'up to 10 ft over the skin at 50 ft from home, 30 ft right of the line through second base',
    );
  });

  it('is never rounded down, and in inches below a foot', () => {
    expect(overhangInWords(box(0, 200, 40, 203.01), 'off')).toMatch(/^up to 4 ft off at /);
    expect(overhangInWords(box(0, 200, 40, 200.51), 'off')).toMatch(/^up to 7 in off at /);
  });

  it('is nothing for nothing', () => expect(overhangInWords([], 'off')).toBeNull());
});
