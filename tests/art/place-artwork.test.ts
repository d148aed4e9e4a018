import { describe, expect, it } from 'vitest';
import type { Artwork } from '../../src/art/model';
import { artworkBox, placeArtwork, placedSize } from '../../src/art/place-artwork';
import { regionArea, regionBox } from '../../src/geometry/region';

/** 400 by 100 with its corner at (7, −20): area 40 000. */
const BAR: Artwork = Object.freeze({
  region: Object.freeze([
    Object.freeze([
      Object.freeze({ x: 7, y: -20 }),
      Object.freeze({ x: 407, y: -20 }),
      Object.freeze({ x: 407, y: 80 }),
      Object.freeze({ x: 7, y: 80 }),
    ]),
  ]),
});
const CENTRE = { x: -12, y: 290 };
const place = (widthFt: number, rotationDeg = 0, centre = CENTRE) =>
  placeArtwork(BAR, { centre, widthFt, rotationDeg });

describe('placing art', () => {
  it('scales to the width and centres the box', () => {
    const result = place(150);
    if (!result.ok) throw new Error('refused');
    expect(regionBox(result.value)).toEqual({ minX: -87, maxX: 63, minY: 271.25, maxY: 308.75 });
    expect(regionArea(result.value)).toBeCloseTo(150 * 37.5, 6);
    expect(placedSize(BAR, 150)).toEqual({ widthFt: 150, heightFt: 37.5 });
    expect(artworkBox(BAR)).toEqual({ minX: 7, minY: -20, maxX: 407, maxY: 80 });
  });

  it('turns counter-clockwise seen from above', () => {
    const result = place(100, 30);
    if (!result.ok) throw new Error('refused');
    const top = result.value.flat().reduce((a, b) => (b.y > a.y ? b : a));
    // The upper right corner (50, 12.5) turned by 30 degrees.
    expect(top.x).toBeCloseTo(-12 + 50 * Math.cos(Math.PI / 6) - 12.5 * 0.5, 5);
    expect(top.y).toBeCloseTo(290 + 50 * 0.5 + 12.5 * Math.cos(Math.PI / 6), 5);
  });

  it.each([0, -5, NaN, Infinity, -Infinity, 0.5, 601, 1e9])('refuses %d ft wide', (width) => {
    const result = place(width);
    expect(result.ok).toBe(false);
    expect(result.problems[0]).toMatchObject({ code: 'art-size', where: 'art.placement.widthFt' });
  });

  it('refuses art that gets too tall', () => {
    const tall = { region: [BAR.region[0]!.map((p) => ({ x: p.y, y: p.x }))] };
    const result = placeArtwork(tall, { centre: CENTRE, widthFt: 200, rotationDeg: 0 });
    expect(result.problems[0]!.what).toContain('800 ft tall');
  });

  it('names every fault of the place at once', () => {
    const result = place(-1, NaN, { x: NaN, y: 0 });
    expect(result.problems.map((p) => p.where)).toEqual([
      'art.placement.widthFt',
      'art.placement.rotationDeg',
      'art.placement.centre',
    ]);
  });
});
