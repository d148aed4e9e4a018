/** The recipes of the folder `patterns`. */
import { readdirSync } from 'node:fs';
import { join, resolve } from 'node:path';
import type { Problem } from '../base/result';
import { engine } from '../engine/api';
import type { Recipe } from '../pattern/model';
import { readText } from './read-input';

const PATTERNS = resolve(import.meta.dirname, '../../patterns');

/** Every recipe that can be read, by name of file, and what is wrong with the others. */
export function readRecipes(folder = PATTERNS): {
  readonly recipes: readonly Recipe[];
  readonly problems: readonly Problem[];
} {
  const recipes: Recipe[] = [];
  const problems: Problem[] = [];
  for (const file of readdirSync(folder)
    .filter((name) => name.endsWith('.json'))
    .sort()) {
    const text = readText(join(folder, file));
    const recipe = text.ok ? engine.readRecipe(text.value, file) : text;
    problems.push(...recipe.problems);
    if (recipe.ok) recipes.push(recipe.value);
  }
  return { recipes, problems };
}
