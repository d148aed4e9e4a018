/** The recipe's shape as JSON Schema (draft 2020-12), for editors and for checks outside the program. */
import { toJsonSchema } from '@valibot/to-json-schema';
import { areaSchema, numberSchema, recipeSchema } from '../../src/pattern/recipe-schema';

/** What JSON Schema cannot say (ids of their own each) is left to the program. */
export const recipeJsonSchema = (): object => ({
  $schema: 'https://json-schema.org/draft/2020-12/schema',
  title: 'A mowing pattern as data',
  ...toJsonSchema(recipeSchema, {
    target: 'draft-2020-12',
    errorMode: 'ignore',
    definitions: { number: numberSchema, area: areaSchema },
  }),
});
