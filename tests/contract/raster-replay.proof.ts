import { describe, expect, it } from 'vitest';
import { findOrderBreaches } from '../support/check-order';
import {
  countPatches,
  farthestBeyondGrass,
  findBodyHits,
  findBreaks,
  forbiddenMask,
  type PatchCount,
} from '../support/check-route';
import { demoRoute } from '../support/demo-route';
import { cornersOf, gridOver, type DesignPatch } from '../support/raster';
import type { Project } from '../../src/project/model';

const CELL = 0.1;
const laid = (bearingDeg: number, edgeLaps: number) => (project: Project) => ({
  ...project,
  pattern: { ...project.pattern, values: { ...project.pattern.values, bearing: bearingDeg } },
  design: { ...project.design, edgeLaps },
});

/** Both demos as they are, and the word over other bearings and numbers of laps. */
const CASES: readonly (readonly [string, string, (p: Project) => Project])[] = [
  ['the word', 'lanterns-word', (p) => p],
  ['the emblem', 'lantern-emblem', (p) => p],
  ['the word, bands to centre', 'lanterns-word', laid(0, 2)],
  ['the word, bands across', 'lanterns-word', laid(90, 3)],
];

type Key = Exclude<keyof PatchCount, 'id' | 'kind'>;
const sum = (counts: readonly PatchCount[], key: Key) => counts.reduce((n, c) => n + c[key], 0);
const share = (counts: readonly PatchCount[], part: Key, of: Key) =>
  sum(counts, of) === 0 ? 1 : sum(counts, part) / sum(counts, of);

describe.each(CASES)('%s, whole, at 0.1 ft', (_, name, change) => {
  const demo = demoRoute(name, change);
  const { wide, narrow } = demo.machines;
  const widths = (patch: DesignPatch) => {
    const m = patch.tool === 'wide' ? wide : narrow;
    return { cutFt: m.cutWidthIn / 12, overlapFt: m.overlapIn / 12 };
  };

  it('is covered and laid', () => {
    const points = demo.design.patches.flatMap((p) => p.rings.flat());
    const [low, high] = cornersOf(points, 2);
    const counts = countPatches(demo.design, demo.legs, { low, high }, CELL, widths);
    const wideOnes = new Set(demo.design.patches.filter((p) => p.tool === 'wide').map((p) => p.id));
    for (const c of counts.filter((one) => wideOnes.has(one.id))) {
      expect(share([c], 'openCovered', 'openCells'), c.id).toBeGreaterThanOrEqual(0.995);
    }
    expect(share(counts, 'innerLaid', 'innerCells')).toBeGreaterThanOrEqual(0.98);
    expect(share(counts, 'laid', 'cells')).toBeGreaterThanOrEqual(0.95);
    const graphic = counts.filter((c) => !wideOnes.has(c.id));
    expect(share(graphic, 'covered', 'cells')).toBeGreaterThanOrEqual(0.95);
  });

  it('keeps bodies off skin, fence and wall, and reels over grass', () => {
    const [low, high] = cornersOf(
      demo.design.surfaces.flatMap((s) => s.rings.flat()),
      6,
    );
    const grid = gridOver(low, high, CELL);
    const forbidden = forbiddenMask(grid, demo.design, []);
    expect(findBodyHits(grid, forbidden, demo.legs, demo.bodies)).toEqual([]);
    expect(farthestBeyondGrass(grid, demo.design, demo.legs)).toBeLessThan(2 / 12 + CELL * 1.415);
  });

  it('joins, keeps one clock and the order of work', () => {
    expect(findBreaks(demo.legs)).toEqual([]);
    const powered = [wide, narrow].filter((m) => m.powered).map((m) => m.id);
    const graphic = demo.design.graphics.flatMap((g) => g.rings.flat());
    expect(findOrderBreaches(demo.legs, powered, graphic, 10)).toEqual([]);
    expect(demo.problems.filter((p) => p.startsWith('pass-'))).toEqual([]);
  });
});
