/** Every recipe and wide mower, driven and replayed on a raster of 0.2 ft. */
import { readdirSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { MACHINES } from '../../src/mowing/machine-catalogue';
import {
  farthestBeyondGrass,
  findBodyHits,
  findBreaks,
  forbiddenMask,
} from '../support/check-route';
import { driveRecipe, judgePattern } from '../support/drive-recipe';
import { cornersOf, gridOver } from '../support/raster';

const CELL = 0.2;
const recipes = readdirSync(new URL('../../patterns/', import.meta.url)).map((file) =>
  file.replace('.json', ''),
);
const mowers = MACHINES.filter((m) => m.role === 'wide').map((m) => m.id);

describe.each(mowers)('%s', (mower) => {
  test.each(recipes)('%s', (id) => {
    const driven = driveRecipe(id, mower);
    const count = judgePattern(driven, CELL);
    console.log(`${id} ${mower} ${JSON.stringify(count)}`);
    expect(driven.problems).toEqual([]);
    expect(findBreaks(driven.legs)).toEqual([]);
    const [low, high] = cornersOf(
      driven.design.surfaces.flatMap((s) => s.rings.flat()),
      6,
    );
    const grid = gridOver(low, high, CELL);
    const forbidden = forbiddenMask(grid, driven.design, []);
    expect(findBodyHits(grid, forbidden, driven.legs, driven.bodies)).toEqual([]);
    // 2 in, and a cell's diagonal for the raster.
    expect(farthestBeyondGrass(grid, driven.design, driven.legs)).toBeLessThan(
      2 / 12 + CELL * 1.415,
    );
  });
});
