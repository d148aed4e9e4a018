/**
 * Where art may not lie, on the default field: skin within 95 ft of the plate's front edge 60.5 ft out
 * (NCAA Rule 1-2), fence 400 ft out in centre field, track 15 ft wide inside it.
 */
import { describe, expect, it } from 'vitest';
import { checkOnGrass } from '../../src/art/check-on-grass';
import { buildField } from '../../src/field/build-field';
import { defaultFieldSpec } from '../../src/field/default-field';
import type { FieldSpec } from '../../src/field/model';
import { rectangle, type Region } from '../../src/geometry/region';

const SKIN_TOP = 60.5 + 95;
const TRACK_EDGE = 400 - 15;

const box = (x: number, y: number, w: number, h: number): Region =>
  rectangle({ minX: x, minY: y, maxX: x + w, maxY: y + h });

function problems(graphic: Region, over: Partial<FieldSpec> = {}) {
  const field = buildField({ ...defaultFieldSpec(), ...over }, 'feet-inches');
  if (!field.ok) throw new Error('the field was refused');
  return checkOnGrass(field.value, graphic);
}
const codes = (...given: Parameters<typeof problems>) => problems(...given).map((p) => p.code);
const feetSaid = (what: string): number => Number(/up to (\d+) ft/.exec(what)![1]);

describe('art on the grass', () => {
  it('is not a problem, up to its edge', () => {
    expect(codes(box(-40, 240, 80, 40))).toEqual([]);
    expect(codes(box(-1, SKIN_TOP + 0.05, 2, 60))).toEqual([]);
  });
});

describe('art off the grass is told over what, where, how far and which way to move', () => {
  it('over the skin', () => {
    const [p, ...more] = problems(box(-5, SKIN_TOP - 12, 10, 60));
    expect(more).toEqual([]);
    expect(p).toMatchObject({ code: 'art-over-skin', where: 'art.placement', severity: 'error' });
    expect(feetSaid(p!.what)).toBe(10); // the short side of 10 by 12 ft
    expect(p!.what).toMatch(/over the skin at 1(49|50) ft from home, on the line through second/);
    expect(p!.what).toContain('(20 % of it)'); // 12 of 60 ft, less the arc's 0.1 ft at the corners
    expect(p!.fix).toBe('move it 12 ft out toward centre field, or make it smaller');
  });

  it('by the shortest whole foot that clears the edge', () => {
    for (const low of [SKIN_TOP - 0.4, SKIN_TOP - 7.3, SKIN_TOP - 31]) {
      const [p] = problems(box(-30, low, 60, 50));
      const move = Number(/^move it (\d+) ft out/.exec(p!.fix)![1]);
      expect(codes(box(-30, low + move, 60, 50))).toEqual([]);
      expect(codes(box(-30, low + move - 1, 60, 50))).toEqual(['art-over-skin']);
    }
  });

  it('over the infield grass, which counts with the skin', () =>
    expect(codes(box(-5, 80, 10, 10))).toEqual(['art-over-skin']));

  it('over the warning track', () => {
    const [p, ...more] = problems(box(-20, TRACK_EDGE - 15, 40, 20));
    expect(more).toEqual([]);
    expect(p!.code).toBe('art-over-track');
    // The box's top corners are 20 ft aside; the grass edge falls less than 2 ft in that.
    expect(p!.fix).toMatch(/^move it [567] ft in toward second base, /);
  });

  it('over the track and beyond the fence, with one move for both', () => {
    const both = problems(box(-20, TRACK_EDGE - 15, 40, 60));
    expect(both.map((p) => p.code)).toEqual(['art-over-track', 'art-off-grass']);
    for (const p of both) expect(p.fix).toMatch(/^move it 4[5-7] ft in toward second base, /);
  });

  it('at both ends, with no move promised', () => {
    const both = problems(box(-5, SKIN_TOP - 5, 10, TRACK_EDGE - SKIN_TOP - 1));
    expect(both.map((p) => p.code)).toEqual(['art-over-skin']);
    const long = problems(box(-235, 200, 440, 30));
    for (const p of long) expect(p.fix).toMatch(/^make it smaller, or move and turn it/);
    expect(long.length).toBeGreaterThan(0);
  });

  it('over foul grass', () => {
    const [p, ...more] = problems(box(-180, 150, 20, 40));
    expect(more).toEqual([]);
    expect(p!.code).toBe('art-off-grass');
    expect(p!.what).toMatch(/left of the line through second base/);
  });

  it('over a keep-out, by its name', () => {
    const keepOuts = [{ id: 'k1', name: 'valve box', centre: { x: 10, y: 260 }, radiusFt: 3 }];
    const [p, ...more] = problems(box(-40, 240, 80, 40), { keepOuts });
    expect(more).toEqual([]);
    expect(p!.code).toBe('art-over-keep-out');
    expect(p!.what).toContain('up to 6 ft over the keep-out "valve box"');
    // Its circle reaches from y 257 to 263, x 7 to 13; the box is left of x 40, above y 240.
    expect(p!.fix).toBe('move it 23 ft out toward centre field, or make it smaller');
  });

  it('wholly outside', () => {
    const [p] = problems(box(900, 900, 40, 40));
    expect(p!.what).toBe('the graphic lies wholly off the outfield grass');
  });
});

describe('art larger than the grass', () => {
  it.each([
    ['in area', box(-400, -100, 800, 800)],
    ['across', box(-290, 240, 580, 40)],
    ['in depth', box(-5, 60, 10, 340)],
  ])('%s is told so, with both sizes', (_, graphic) => {
    const [p, ...more] = problems(graphic);
    expect(more).toEqual([]);
    expect(p!.code).toBe('art-larger-than-grass');
    expect(p!.what).toMatch(/\d+ ft across.*\d+ ft across/);
  });
});
