import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../src/base/random';
import { findOrderBreaches } from '../support/check-order';
import {
  countPatches,
  farthestBeyondGrass,
  findBodyHits,
  findBreaks,
  forbiddenMask,
  type PatchCount,
  type Window,
} from '../support/check-route';
import { demoRoute } from '../support/demo-route';
import { gridOver, type DesignPatch, type Pair } from '../support/raster';

const demo = demoRoute('lanterns-word');
const { wide, narrow } = demo.machines;
const widths = (patch: DesignPatch) => {
  const m = patch.tool === 'wide' ? wide : narrow;
  return { cutFt: m.cutWidthIn / 12, overlapFt: m.overlapIn / 12 };
};

/** Places where something can go wrong, and two drawn by a seed. Sides of 24 ft. */
const random = seededRandom(90);
const PLACES: readonly Pair[] = [
  [-93, 96],
  [93, 98],
  [0, 157],
  [-219, 218],
  [0, 384],
  [-62, 255],
  [20, 262],
  [160 * random.uniform() - 80, 170 + 150 * random.uniform()],
  [160 * random.uniform() - 80, 170 + 150 * random.uniform()],
];
const windowAt = ([x, y]: Pair): Window => ({ low: [x - 12, y - 12], high: [x + 12, y + 12] });

const sum = (counts: readonly PatchCount[], key: Exclude<keyof PatchCount, 'id' | 'kind'>) =>
  counts.reduce((n, c) => n + c[key], 0);

describe('the route, replayed on a raster of 0.1 ft', () => {
  const counts = PLACES.flatMap((at) =>
    countPatches(demo.design, demo.legs, windowAt(at), 0.1, widths),
  );

  it('covers background and border', () => {
    const ground = counts.filter((c) => c.kind !== 'graphic' && !c.id.startsWith('graphic'));
    expect(sum(ground, 'openCells')).toBeGreaterThan(100_000);
    expect(sum(ground, 'openCovered') / sum(ground, 'openCells')).toBeGreaterThan(0.995);
  });

  it('lays the grass as wanted away from patch edges', () => {
    expect(sum(counts, 'innerLaid') / sum(counts, 'innerCells')).toBeGreaterThan(0.98);
    expect(sum(counts, 'laid') / sum(counts, 'cells')).toBeGreaterThan(0.9);
  });

  it('covers the graphic', () => {
    const graphic = counts.filter((c) => c.kind === 'graphic' || c.id.startsWith('graphic'));
    expect(sum(graphic, 'covered') / sum(graphic, 'cells')).toBeGreaterThan(0.95);
    expect(demo.plan.graphicCovered).toBeGreaterThan(0.95);
    expect(demo.plan.laidOutside).toBeLessThanOrEqual(0.01);
  });

  it('keeps every body on drivable ground and the reels over grass', () => {
    for (const at of PLACES) {
      const { low, high } = windowAt(at);
      const grid = gridOver([low[0] - 8, low[1] - 8], [high[0] + 8, high[1] + 8], 0.1);
      const forbidden = forbiddenMask(grid, demo.design, []);
      expect(findBodyHits(grid, forbidden, demo.legs, demo.bodies)).toEqual([]);
      // 2 in, and a cell's diagonal for the raster.
      expect(farthestBeyondGrass(grid, demo.design, demo.legs)).toBeLessThan(2 / 12 + 0.1415);
    }
  });

  it('sees a body on the skin when a leg is moved there', () => {
    const grid = gridOver([-40, 120], [40, 170], 0.1);
    const points: Pair[] = [
      [0, 160],
      [0, 150],
    ];
    const astray = { ...demo.legs.find((leg) => leg.kind === 'mow')!, points };
    const forbidden = forbiddenMask(grid, demo.design, []);
    expect(findBodyHits(grid, forbidden, [astray], demo.bodies)).toHaveLength(1);
  });
});

describe('the legs', () => {
  it('join, follow one clock, count passes and run on in heading', () => {
    expect(demo.problems).toEqual([]);
    expect(findBreaks(demo.legs)).toEqual([]);
    expect(new Set(demo.legs.map((leg) => leg.seq)).size).toBe(demo.legs.length);
    const stretched = demo.legs.map((leg) => ({ ...leg, start_s: leg.start_s * 1.01 }));
    expect(findBreaks(stretched).length).toBeGreaterThan(0);
  });

  it('gives every leg with reels up no patch, and every mow leg its pass', () => {
    for (const leg of demo.legs) {
      expect(leg.reels === 'down').toBe(leg.kind === 'mow');
      expect(leg.pass === null).toBe(leg.kind !== 'mow');
      expect(leg.patch === null).toBe(leg.kind !== 'mow');
    }
    const patches = new Set(demo.design.patches.map((p) => p.id));
    for (const leg of demo.legs) if (leg.patch !== null) expect(patches).toContain(leg.patch);
  });

  it('keep the order of work', () => {
    const powered = [wide, narrow].filter((m) => m.powered).map((m) => m.id);
    const graphic = demo.design.graphics.flatMap((g) => g.rings.flat());
    expect(findOrderBreaches(demo.legs, powered, graphic, 10)).toEqual([]);
    const early = demo.legs.map((leg) =>
      leg.kind === 'hold' ? { ...leg, start_s: leg.start_s + 4000 } : leg,
    );
    expect(findOrderBreaches(early, powered, graphic, 10).length).toBeGreaterThan(0);
    const uncounted = demo.legs.filter((leg) => leg.kind !== 'hold');
    expect(findOrderBreaches(uncounted, powered, graphic, 10)).toEqual(['there is no count']);
  });
});
