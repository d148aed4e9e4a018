import { describe, expect, it } from 'vitest';
import { formatFeetInches } from '../../src/base/quantity';
import { BASEBALL_90 } from '../../src/field/rulebook/baseball-90';
import { pointDistance } from '../../src/geometry/point';
import { pathLength } from '../../src/geometry/arc';
import { circleFence, fieldWith, surfaceOf } from './fixtures';

describe('the rule book', () => {
  const { bases, pitcherPlate, moundCentre, skinArcCentre } = fieldWith();

  it('sets four 90-ft sides and 127 ft 3 3/8 in to second (Official Baseball Rules 2.01)', () => {
    const corners = [bases.home, bases.first, bases.second, bases.third];
    corners.forEach((corner, i) => {
      expect(pointDistance(corner, corners[(i + 1) % 4]!)).toBeCloseTo(90, 9);
    });
    const second = pointDistance(bases.home, bases.second);
    expect(formatFeetInches(second, 8)).toBe(`127' 3 3/8"`);
    expect(formatFeetInches(BASEBALL_90.homeToSecondFt.value, 8)).toBe(`127' 3 3/8"`);
    // Derived from the exact square: the rule's figure is 0.00203 ft long.
    expect(BASEBALL_90.homeToSecondFt.value - second).toBeCloseTo(0.00203, 5);
    expect(pointDistance(bases.first, bases.third)).toBeCloseTo(second, 9);
  });

  it('sets plate and mound 60 ft 6 in and 59 ft out (NCAA Rule 1-8, 18 in between them)', () => {
    expect(pitcherPlate).toEqual({ x: 0, y: 60.5 });
    expect(moundCentre).toEqual({ x: 0, y: 59 });
    expect(skinArcCentre).toEqual(pitcherPlate);
    // Derived by coordinates from the rule-book figures.
    expect(pointDistance(bases.first, pitcherPlate)).toBeCloseTo(
      Math.sqrt(4050 + (45 * Math.SQRT2 - 60.5) ** 2),
      9,
    );
    expect(pointDistance(bases.first, moundCentre)).toBeCloseTo(63.8085, 4);
    expect(pointDistance(bases.second, moundCentre)).toBeCloseTo(68.2792, 4);
  });

  it.each([
    ['plate-front', 127.6026, 155.5],
    ['plate-rear', 127.7769, 156],
  ] as const)('draws the 95-ft arc from the %s', (skinArcFrom, onFoulLine, onCentreLine) => {
    // Derived by hand: the arc's meeting with the foul lines and with the centre line.
    const grass = surfaceOf(fieldWith({ skinArcFrom }), 'outfield-grass');
    const arc = grass.boundary[0]!.find((s) => s.kind === 'arc' && Math.abs(s.radius - 95) < 1e-9);
    if (arc?.kind !== 'arc') throw new Error('the skin arc is not an arc');
    const start = {
      x: arc.centre.x + 95 * Math.cos(arc.startAngle),
      y: arc.centre.y + 95 * Math.sin(arc.startAngle),
    };
    expect(Math.hypot(start.x, start.y)).toBeCloseTo(onFoulLine, 4);
    expect(arc.centre.y + 95).toBeCloseTo(onCentreLine, 9);
  });

  it.each([
    // Poles, centre; fair outfield and outfield grass inside a 15-ft track, sq ft: by numerical
    // integration of the rule-book figures, fence as the circle through poles and centre.
    [330, 400, 94495.7, 85484.5],
    [320, 400, 92590.2, 83552.0],
    [300, 350, 70351.2, 62496.7],
  ])('has the derived areas of a %d/%d park', (pole, centre, outfield, grass) => {
    const field = fieldWith({ fence: circleFence(pole, centre) });
    const inside = surfaceOf(field, 'outfield-grass').areaSqFt;
    const track = surfaceOf(field, 'warning-track').areaSqFt;
    expect(Math.abs(inside - grass)).toBeLessThanOrEqual(0.1);
    expect(Math.abs(inside + track - outfield)).toBeLessThanOrEqual(0.1);
  });

  it('keeps round things round: mound, home circle, cut-outs and skin are true arcs', () => {
    const field = fieldWith();
    const radii = (kind: 'mound' | 'home-circle' | 'infield-grass' | 'skin') =>
      new Set(
        surfaceOf(field, kind)
          .boundary.flat()
          .filter((s) => s.kind === 'arc')
          .map((s) => Number(s.radius.toFixed(9))),
      );
    expect(radii('mound')).toEqual(new Set([9]));
    expect(radii('home-circle')).toEqual(new Set([13]));
    expect(radii('infield-grass')).toEqual(new Set([13, 9]));
    expect(radii('skin')).toEqual(new Set([95, 13]));
    expect(pathLength(surfaceOf(field, 'mound').boundary[0]!)).toBeCloseTo(18 * Math.PI, 9);
    expect(surfaceOf(field, 'home-circle').areaSqFt).toBeCloseTo(169 * Math.PI, 9);
  });

  it('names a source for every figure', () => {
    for (const figure of Object.values(BASEBALL_90))
      expect(figure.source.length).toBeGreaterThan(5);
  });
});
