/** A recipe laid on the demo's field and driven, with what must hold of it. */
import { readFileSync } from 'node:fs';
import { expect } from 'vitest';
import type { Recipe } from '../../src/pattern/model';
import { countPattern, type PatternCount } from './check-pattern';
import { demoRoute, type DemoRoute } from './demo-route';

/** The recipe of that id with its own values, by the named wide mower, no graphic. */
export function driveRecipe(id: string, wide: string): DemoRoute {
  const file = new URL(`../../patterns/${id}.json`, import.meta.url);
  const recipe = JSON.parse(readFileSync(file, 'utf8')) as Recipe;
  return demoRoute('lanterns-word', (p) => ({
    ...p,
    art: null,
    pattern: { recipe, values: {} },
    mowing: { ...p.mowing, wide },
  }));
}

/** Coverage, lay and order of a driven pattern; throws with the first figure that falls short. */
export function judgePattern(driven: DemoRoute, cell: number): PatternCount {
  const { cutWidthIn, overlapIn } = driven.machines.wide;
  const figures = { cutFt: cutWidthIn / 12, overlapFt: overlapIn / 12 };
  const count = countPattern(driven.design, driven.legs, cell, figures);
  expect(count.areaSqFt).toBeGreaterThan(60_000);
  expect(count.covered, 'covered').toBeGreaterThanOrEqual(0.995);
  count.layers.forEach((share, i) => {
    expect(share, `layer ${i + 1} in its own bearing`).toBeGreaterThanOrEqual(0.995);
  });
  expect(count.inOrder, 'cells with their layers in order').toBeGreaterThanOrEqual(0.995);
  expect(count.lastLay, 'last lay').toBeGreaterThanOrEqual(0.99);
  return count;
}
