import { describe, expect, it } from 'vitest';
import { pointDistance } from '../../src/geometry/point';
import { polylineLength } from '../../src/geometry/polyline';
import { regionContains, regionPerimeter } from '../../src/geometry/region';
import { judgeLook } from '../../src/view/judge-look';
import { indexRegion } from '../../src/geometry/region-index';
import { BEHIND_HOME, box, counterDesign, disc, plainDesign, quietDesign, seat } from './fixtures';

const WORD = box(-30, 250, 30, 280);

describe('what a seat can read of the outline', () => {
  it('finds half of a planted one-lay rectangle on alternating bands', () => {
    // By hand: of 60 + 60 ft across six bands half shows; of the two 30-ft ends, one shows.
    const look = judgeLook(plainDesign(WORD), BEHIND_HOME);
    expect(look.outlineFt).toBeCloseTo(180, 6);
    expect(look.share).toBeCloseTo(0.5, 6);
    expect(look.longestBelowFt).toBeCloseTo(30, 6);
    for (const p of look.longestBelow) expect(p.x).toBeCloseTo(30, 6);
  });

  it('finds about half of a planted disc', () => {
    const look = judgeLook(plainDesign(disc(3, 280, 48)), BEHIND_HOME);
    expect(look.share).toBeGreaterThan(0.42);
    expect(look.share).toBeLessThan(0.58);
  });

  it('reads all of it on quiet ground, from home and from centre field', () => {
    for (const from of [BEHIND_HOME, seat(0, 600, 30)]) {
      const look = judgeLook(quietDesign(disc(0, 280, 30)), from);
      expect(look.share).toBe(1);
      expect(look.longestBelow).toEqual([]);
      expect(look.longestBelowFt).toBe(0);
    }
  });

  it('reads nothing where the lay is square to the line of sight', () => {
    const look = judgeLook(quietDesign(WORD), seat(4000, 265, 30));
    expect(look.share).toBe(0);
    expect(look.longestBelowFt).toBeCloseTo(180, 6);
  });

  it('loses counter-change exactly where the outline runs along a band edge', () => {
    // By hand: the reversed end band matches its neighbour along both 30-ft ends.
    const look = judgeLook(counterDesign(WORD, -3, 3), BEHIND_HOME);
    expect(look.share).toBeCloseTo(120 / 180, 6);
  });

  it('looks closer at thin art, and gives no contrast where there is no grass', () => {
    const thin = judgeLook(quietDesign(box(-30, 260, 30, 260.3)), BEHIND_HOME);
    expect(thin.share).toBeGreaterThan(0.99);
    const off = judgeLook(quietDesign(box(-30, 500, 30, 530)), BEHIND_HOME);
    expect(off.share).toBe(0);
  });

  it('cuts the outline into pieces that add up, hole included', () => {
    const graphic = [...disc(0, 280, 40), ...disc(0, 280, 20).map((ring) => [...ring].reverse())];
    const look = judgeLook(plainDesign(graphic), BEHIND_HOME);
    const sum = (clear: boolean): number =>
      look.pieces
        .filter((piece) => piece.clear === clear)
        .reduce((n, piece) => n + polylineLength(piece.line), 0);
    expect(look.outlineFt).toBeCloseTo(regionPerimeter(graphic), 6);
    expect(sum(true) + sum(false)).toBeCloseTo(look.outlineFt, 6);
    expect(sum(true) / look.outlineFt).toBeCloseTo(look.share, 9);
    for (const { line } of look.pieces) {
      line.slice(1).forEach((p, i) => expect(pointDistance(p, line[i]!)).toBeLessThanOrEqual(0.5));
    }
  });

  it('has no outline without a graphic', () => {
    const look = judgeLook(plainDesign([]), BEHIND_HOME);
    expect([look.share, look.outlineFt, look.pieces.length]).toEqual([1, 0, 0]);
  });
});

describe('a region prepared for point tests', () => {
  it('answers as the plain even-odd test does', () => {
    const region = [...disc(0, 0, 30, 37), ...disc(4, 3, 11, 23)];
    const index = indexRegion(region);
    for (let i = 0; i < 3000; i++) {
      const p = { x: ((i * 37.77) % 80) - 40, y: ((i * 13.31) % 80) - 40 };
      expect(index.contains(p)).toBe(regionContains(region, p));
    }
    expect(indexRegion([]).contains({ x: 0, y: 0 })).toBe(false);
  });
});
