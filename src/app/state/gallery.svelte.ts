/** The patterns to choose from, each drawn on the field in hand. */
import { SvelteMap } from 'svelte/reactivity';
import type { Problem } from '../../base/result';
import type { Recipe } from '../../pattern/model';
import type { PatternPreview } from '../../plan/preview-pattern';
import type { Project } from '../../project/model';
import { STRAIGHT } from '../../project/straight-recipe';
import {
  dropRecipe,
  keepRecipe,
  ownRecipes,
  suppliedRecipes,
  type RecipeText,
} from '../io/recipes';
import { session } from './session.svelte';
import { view } from './view.svelte';

export interface Entry {
  readonly recipe: Recipe;
  /** File of a recipe that a person put in; null for one that comes with the app. */
  readonly own: string | null;
}

export type Drawn = { readonly preview: PatternPreview } | { readonly problem: Problem };

class Gallery {
  entries = $state.raw<readonly Entry[]>([]);
  /** By recipe id; absent while it is being drawn. */
  readonly drawn = new SvelteMap<string, Drawn>();
  private ground = '';
  private run = 0;

  /** Shows the gallery and draws what is not drawn yet. */
  async show(): Promise<void> {
    view.galleryOpen = true;
    if (this.entries.length === 0) await this.load();
    await this.draw();
  }

  hide(): void {
    view.galleryOpen = false;
    this.run++;
  }

  /** Reads a recipe file; when it is one, keeps it, lists it and returns it. */
  async add(file: RecipeText): Promise<Recipe | null> {
    const read = await session.engine.ask('recipe', { text: file.text, where: file.file });
    if (!read.ok) {
      session.refuse(...read.problems);
      return null;
    }
    await keepRecipe(file);
    this.drawn.delete(read.value.id);
    await this.load();
    return read.value;
  }

  async remove(entry: Entry): Promise<void> {
    if (entry.own === null) return;
    await dropRecipe(entry.own);
    this.drawn.delete(entry.recipe.id);
    await this.load();
    await this.draw();
  }

  private async load(): Promise<void> {
    const supplied = await this.read(await suppliedRecipes(), false);
    const own = await this.read(await ownRecipes(), true);
    const ids = new Set(own.map((e) => e.recipe.id));
    const others = supplied.filter((e) => !ids.has(e.recipe.id));
    this.entries = [...own, ...others.sort((a, b) => rankOf(a) - rankOf(b))];
  }

  private async read(texts: readonly RecipeText[], own: boolean): Promise<Entry[]> {
    const read = await Promise.all(
      texts.map(async ({ file, text }) => ({
        file,
        result: await session.engine.ask('recipe', { text, where: file }),
      })),
    );
    const broken = read.flatMap(({ result }) => (result.ok ? [] : result.problems));
    if (broken.length > 0) session.refuse(...broken);
    return read.flatMap(({ file, result }) =>
      result.ok ? [{ recipe: result.value, own: own ? file : null }] : [],
    );
  }

  /** One after another, so that a change of the job in between is not kept waiting for all of them. */
  private async draw(): Promise<void> {
    const run = ++this.run;
    const project = session.project;
    if (!project) return;
    const ground = groundOf(project);
    if (ground !== this.ground) this.drawn.clear();
    this.ground = ground;
    for (const { recipe } of this.entries) {
      if (run !== this.run) return;
      if (this.drawn.has(recipe.id)) continue;
      const pattern = { recipe, values: {} };
      const result = await session.engine.ask('preview', {
        project: project,
        pattern,
      });
      const [first] = result.problems;
      if (result.ok) this.drawn.set(recipe.id, { preview: result.value });
      else if (first) this.drawn.set(recipe.id, { problem: first });
    }
  }
}

/** Simple ones first: the straight one, then by mowings. */
const rankOf = ({ recipe }: Entry): number =>
  recipe.id === STRAIGHT.id ? 0 : recipe.mowings.length;

/** What a preview depends on besides its recipe. */
const groundOf = ({ field, mowing, design }: Project): string =>
  JSON.stringify([field, mowing.wide, mowing.overrides, design.edgeLaps]);

export const gallery = new Gallery();
