/** Every drawing feature against a general-purpose SVG renderer: painted area, and overlap. */
import { readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readSvg } from '../../src/art/svg-to-outline';
import { affineDeterminant } from '../../src/geometry/affine';
import { regionArea } from '../../src/geometry/region';
import { svgFixture } from './support/assets';
import { coverageSum, overlapShare, pageOf, regionAsSvg, renderCoverage } from './support/raster';

const WIDTH_PX = 400;
const names = readdirSync('tests/fixtures/svg')
  .filter((file) => file.endsWith('.svg'))
  .map((file) => file.replace('.svg', ''));

describe('drawings read as a renderer paints them', () => {
  it('has a fixture for every feature', () => expect(names.length).toBeGreaterThanOrEqual(31));

  it.each(names)('%s', (name) => {
    const svg = svgFixture(name);
    const read = readSvg(svg, `${name}.svg`);
    if (!read.ok) throw new Error(JSON.stringify(read.problems));
    const { region, frame } = read.value;
    const painted = renderCoverage(svg, WIDTH_PX);
    const ours = renderCoverage(regionAsSvg(region, frame, pageOf(svg)), WIDTH_PX);
    const areaPx = (regionArea(region) / Math.abs(affineDeterminant(frame))) * painted.scale ** 2;
    expect(Math.abs(areaPx / coverageSum(painted) - 1)).toBeLessThan(0.005);
    expect(overlapShare(painted, ours)).toBeGreaterThan(0.993);
  });
});
