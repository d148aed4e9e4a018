/** The demo emblem: as drawn, and mowable 75 ft wide with a 21-in tool. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { placeArtwork } from '../../src/art/place-artwork';
import { readSvg } from '../../src/art/svg-to-outline';
import {
  regionArea,
  regionBox,
  regionOffset,
  regionParts,
  regionSubtract,
  type Region,
} from '../../src/geometry/region';
import { coverageSum, overlapShare, pageOf, regionAsSvg, renderCoverage } from './support/raster';

const svg = readFileSync('demo-data/lantern-emblem.svg', 'utf8');
const drawn = readSvg(svg, 'lantern-emblem.svg');
if (!drawn.ok) throw new Error(JSON.stringify(drawn.problems));
const { region, frame } = drawn.value;

/** Half of 2.2 ft: a 21-in tool with room to steer. */
const HALF_TOOL_FT = 1.1;

function placed(): Region {
  const placement = { centre: { x: 0, y: 300 }, widthFt: 75, rotationDeg: 0 };
  const result = placeArtwork({ region }, placement);
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value;
}

describe('the lantern emblem', () => {
  it('is read without a single problem', () => expect(drawn.problems).toEqual([]));

  it('covers what a renderer paints, within 1 %', () => {
    const painted = renderCoverage(svg, 500, [], true);
    const ours = renderCoverage(regionAsSvg(region, frame, pageOf(svg)), 500);
    expect(Math.abs(coverageSum(ours) / coverageSum(painted) - 1)).toBeLessThan(0.01);
    expect(overlapShare(painted, ours)).toBeGreaterThan(0.99);
  });

  it('is a lantern in one piece, a flame and six rays, with four openings', () => {
    const parts = regionParts(region);
    expect(parts).toHaveLength(8);
    expect(parts.map((part) => part.length - 1).sort()).toEqual([0, 0, 0, 0, 0, 0, 0, 4]);
  });

  it('has no part thinner than 2.2 ft at 75 ft wide', () => {
    const art = placed();
    const opened = regionOffset(regionOffset(art, -HALF_TOOL_FT), HALF_TOOL_FT);
    expect(regionParts(opened)).toHaveLength(8);
    expect(regionArea(regionSubtract(art, opened)) / regionArea(art)).toBeLessThan(0.002);
  });

  it('has no gap narrower than 2.2 ft: grown by half of that, nothing closes', () => {
    const grown = regionOffset(placed(), HALF_TOOL_FT);
    expect(regionParts(grown)).toHaveLength(8);
    expect(grown).toHaveLength(12);
  });

  it('stands upright, 75 ft wide about its centre', () => {
    const box = regionBox(placed())!;
    expect(box.maxX - box.minX).toBeCloseTo(75, 4);
    expect((box.minY + box.maxY) / 2).toBeCloseTo(300, 4);
    const foot = placed()
      .flat()
      .filter((p) => p.y < box.minY + 0.1);
    expect(Math.max(...foot.map((p) => p.x))).toBeGreaterThan(20);
  });
});
