/** From the text of a recipe file to a recipe. */
import { safeParse } from 'valibot';
import { fail, problem, succeed, type Problem, type Result } from '../base/result';
import { RECIPE_FORMAT, RECIPE_VERSION, type Recipe } from '../pattern/model';
import { recipeSchema } from '../pattern/recipe-schema';
import { describeIssue } from './describe-issue';
import { findUnsafe } from './find-unsafe';
import { parseJson } from './parse-json';

/** Characters; the longest that comes with the program has a few thousand. */
const LARGEST = 256 * 1024;

/**
 * A recipe from its text; `where` names the file in problems. Problems: `json-broken` with line and
 * column, `file-too-large`, `not-a-recipe`, and those of a project's shape (`value-…`, `key-…`).
 */
export function readRecipe(text: string, where: string): Result<Recipe> {
  if (text.length > LARGEST) return fail(tooLarge(where));
  const parsed = parseJson(text.startsWith('\uFEFF') ? text.slice(1) : text, where);
  if (!parsed.ok) return parsed;
  if (!isRecipe(parsed.value)) return fail(notARecipe(where));
  const unsafe = findUnsafe(parsed.value, where);
  if (unsafe.length > 0) return fail(...unsafe);
  const read = safeParse(recipeSchema, parsed.value);
  if (read.success) return succeed(read.output);
  return fail(...read.issues.map((issue) => describeIssue(issue, where)));
}

/** Whether plain data says that it is a recipe. */
const isRecipe = (value: unknown): boolean =>
  typeof value === 'object' &&
  value !== null &&
  'format' in value &&
  value.format === RECIPE_FORMAT;

const tooLarge = (where: string): Problem =>
  problem('file-too-large', where, 'the file is larger than any recipe', 'open a recipe file');

const notARecipe = (where: string): Problem =>
  problem(
    'not-a-recipe',
    where,
    `the file is not a recipe: "format" is not "${RECIPE_FORMAT}"`,
    `begin it with "format": "${RECIPE_FORMAT}" and "version": ${RECIPE_VERSION}, as docs/recipes.md shows`,
  );
