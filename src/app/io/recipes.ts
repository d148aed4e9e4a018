/** The recipes to choose from: those that come with the app, and those a person has put in. */
import type { Recipe } from '../../pattern/model';
import { keep, kept } from './storage';

const texts = import.meta.glob<string>('../../../patterns/*.json', {
  query: '?raw',
  import: 'default',
});

const OWN = 'recipes';

export interface RecipeText {
  readonly file: string;
  readonly text: string;
}

/** Those that come with the app, by name of file. */
export async function suppliedRecipes(): Promise<RecipeText[]> {
  const files = Object.entries(texts).sort(([a], [b]) => (a < b ? -1 : 1));
  return Promise.all(
    files.map(async ([path, read]) => ({
      file: path.slice(path.lastIndexOf('/') + 1),
      text: await read(),
    })),
  );
}

/** Those kept in this browser. */
export const ownRecipes = async (): Promise<RecipeText[]> => (await kept<RecipeText[]>(OWN)) ?? [];

/** Keeps a recipe file in this browser; one with the same name of file gives way. */
export async function keepRecipe(recipe: RecipeText): Promise<void> {
  const others = (await ownRecipes()).filter((r) => r.file !== recipe.file);
  await keep(OWN, [...others, recipe]);
}

/** Takes it out again. */
export async function dropRecipe(file: string): Promise<void> {
  await keep(
    OWN,
    (await ownRecipes()).filter((r) => r.file !== file),
  );
}

/** A recipe as a file to be changed and put in again. */
export const recipeText = (recipe: Recipe): string => `${JSON.stringify(recipe, null, 2)}\n`;
