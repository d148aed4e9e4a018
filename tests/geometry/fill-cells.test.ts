import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../src/base/random';
import { fillCells } from '../../src/geometry/fill-cells';
import { regionContains, type Region } from '../../src/geometry/region';

describe('cells inside a region', () => {
  it('are those whose centre an independent test finds inside, holes and overhang included', () => {
    const random = seededRandom(31);
    const star = (n: number, size: number) =>
      Array.from({ length: n }, (_, i) => {
        const r = size * (0.4 + 0.6 * random.uniform());
        return { x: r * Math.cos((i / n) * 2 * Math.PI), y: r * Math.sin((i / n) * 2 * Math.PI) };
      });
    const region: Region = [star(23, 20), star(11, 7)];
    // Smaller than the star to the left and below, larger to the right and above.
    const grid = { minX: -13.2, minY: -11.7, cell: 0.7, columns: 50, rows: 48 };
    const filled = fillCells(region, grid);
    let inside = 0;
    for (let i = 0; i < filled.length; i++) {
      const at = {
        x: grid.minX + ((i % grid.columns) + 0.5) * grid.cell,
        y: grid.minY + (Math.floor(i / grid.columns) + 0.5) * grid.cell,
      };
      const wanted = regionContains(region, at);
      expect(filled[i] === 1, `${at.x} ${at.y}`).toBe(wanted);
      if (wanted) inside++;
    }
    expect(inside).toBeGreaterThan(300);
  });

  it('are none for an empty region', () => {
    const grid = { minX: 0, minY: 0, cell: 1, columns: 3, rows: 2 };
    expect([...fillCells([], grid)]).toEqual([0, 0, 0, 0, 0, 0]);
  });
});
