import GeometryFactory from 'jsts/org/locationtech/jts/geom/GeometryFactory.js';
import Coordinate from 'jsts/org/locationtech/jts/geom/Coordinate.js';
import { describe, expect, test } from 'vitest';
import type { Design } from '../../src/design/model';
import type { Region } from '../../src/geometry/region';
import { compose, drumAndWindow, fieldWith, placeWord } from './grass';
import { paintRings, windowOf } from './raster';

const factory = new GeometryFactory();

/** The area of rings by the outside library, even-odd rings told apart by their turning sense. */
function outsideArea(region: Region): number {
  return region.reduce((sum, ring) => {
    const shell = [...ring, ring[0]!].map((p) => new Coordinate(p.x, p.y));
    const polygon = factory.createPolygon(shell) as { getArea(): number };
    let twice = 0;
    ring.forEach((a, i) => {
      const b = ring[(i + 1) % ring.length]!;
      twice += a.x * b.y - b.x * a.y;
    });
    return sum + Math.sign(twice) * polygon.getArea();
  }, 0);
}

/** Cells of the grass that no patch holds, and cells that two patches hold. */
function countCells(design: Design, grass: Region) {
  const w = windowOf(-245, 60, 245, 400, 0.5);
  const times = new Uint8Array(w.nx * w.ny);
  const ground = new Uint8Array(w.nx * w.ny);
  paintRings(w, grass, (cell) => (ground[cell] = 1));
  for (const p of design.patches) paintRings(w, p.region, (cell) => times[cell]!++);
  let [missed, twice, outside] = [0, 0, 0];
  times.forEach((n, cell) => {
    if (n === 0 && ground[cell]) missed++;
    if (n > 1) twice++;
    if (n > 0 && !ground[cell]) outside++;
  });
  return { missed, twice, outside };
}

const word = placeWord('Lanterns', 'pacifico', 150);
const cases: readonly [string, Parameters<typeof compose>[0]][] = [
  ['bands alone', {}],
  ['bands alone, slanted, one lap', { values: { bearing: 30 }, design: { edgeLaps: 1 } }],
  ['bands alone, no laps', { values: { bearing: 100 }, design: { edgeLaps: 0 } }],
  ['a word on quiet ground', { graphic: word }],
  [
    'a word on a box, slanted bands',
    {
      graphic: word,
      values: { bearing: 45 },
      design: { ground: { kind: 'quiet', shape: 'box', marginFt: 6 } },
    },
  ],
  [
    'a shape on an oval',
    {
      graphic: drumAndWindow(),
      design: { ground: { kind: 'quiet', shape: 'oval', marginFt: 10 }, graphicLay: 'away' },
    },
  ],
  [
    'a shape counter-changed',
    { graphic: drumAndWindow(), design: { ground: { kind: 'counter-change' } } },
  ],
  ['a shape near the track', { graphic: drumAndWindow({ x: 60, y: 320 }) }],
  ['a fence of straight panels', { field: { fenceShape: 'straight' }, design: { edgeLaps: 3 } }],
];

describe('patches partition the outfield grass', () => {
  test.each(cases)('%s', (_, over) => {
    const design = compose(over);
    const field = fieldWith(over?.field);
    const areas = design.patches.map((p) => outsideArea(p.region));
    design.patches.forEach((p, i) => expect(p.areaSqFt).toBeCloseTo(areas[i]!, 3));
    const sum = areas.reduce((a, b) => a + b, 0);
    expect(Math.abs(sum - outsideArea(field.outfieldGrass))).toBeLessThan(0.1);
    expect(countCells(design, field.outfieldGrass)).toEqual({ missed: 0, twice: 0, outside: 0 });
    expect(new Set(design.patches.map((p) => p.id)).size).toBe(design.patches.length);
    for (const p of design.patches) {
      for (const lay of p.lays) {
        if ('guides' in lay) expect(design.guides[lay.guides]?.length).toBeGreaterThan(0);
      }
    }
  });
});
