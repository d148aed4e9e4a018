/** Writes docs/recipe.schema.json from the recipe's shape; `recipes.test.ts` holds the two together. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { recipeJsonSchema } from './recipe-json-schema';

writeFileSync(
  join(import.meta.dirname, '../../docs/recipe.schema.json'),
  `${JSON.stringify(recipeJsonSchema(), null, 2)}\n`,
);
