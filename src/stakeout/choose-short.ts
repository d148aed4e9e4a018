/**
 * Which stakes are set with a short tape from two places near them instead of from two controls: as
 * many as the precision allows, since each saves two tape holders. Pins come first, whose end stakes
 * stand anyway and which nothing else hangs on; then the outline's stakes along the contours.
 */
import type { Point } from '../geometry/point';
import { pointDistance } from '../geometry/point';
import { semiMajor95 } from '../adjust/ellipse';
import { pointByChord, pointByOffset, type OffsetTools } from '../adjust/offset-point';
import {
  pointByTies,
  preciseCovariance,
  sharePoint,
  type PrecisePoint,
} from '../adjust/precise-point';
import type { PairPlan } from './assign-pairs';
import type { ControlPlan } from './control-plan';
import { DEEPEST_SHORT, LONGEST_BASE_FT } from './limits';
import { DEFAULT_MINUTES } from './minutes';
import type { StakeKind, StakeoutSpec } from './model';
import {
  footOn,
  footServes,
  isMiddle,
  mostRelative95In,
  offsetTools,
  relative95In,
} from './short-methods';
import { spacingAdd, spacingIndex, spacingNear } from './spacing';
import type { TapeEnd } from './ties';

/** One end of a short line: a control, or a stake by its index. */
export type ShortBase = TapeEnd | number;

export interface ShortRecipe {
  readonly a: ShortBase;
  readonly b: ShortBase;
}

interface Offered extends ShortRecipe {
  /** Inches; lower is better. */
  readonly rank: number;
}

/** A chord saves a reading: worth this much closeness, inches. */
const CHORD_WORTH_IN = 0.3;

export interface ShortTask {
  readonly places: readonly { readonly at: Point; readonly kind: StakeKind }[];
  readonly pairs: PairPlan;
  readonly controls: ControlPlan;
  readonly spec: StakeoutSpec;
  /** Ways that would serve each stake, the best first (`offerRecipes`). */
  readonly offered: readonly (readonly ShortRecipe[])[];
  /** Each stake as its pair would set it, worked out when asked for. */
  readonly tied: Map<number, PrecisePoint | null>;
  /** What each stake's 95 % semi-major axis may be, inches. */
  readonly limits: readonly number[];
  /** Stakes that were found to go unchecked when set this way. */
  readonly refused: ReadonlySet<number>;
}

/** Nearest places looked at for each stake, and ways kept. */
const MOST_NEAR = 14;
const MOST_OFFERED = 8;

/**
 * For each stake the two places that it is set from, or null when it is tied to controls. Along `tour`
 * no stake waits for one that comes later on it.
 */
export function chooseShort(task: ShortTask, tour: readonly number[] = []): Recipes {
  const tools = offsetTools(task.spec);
  const recipes: (ShortRecipe | null)[] = task.places.map(() => null);
  const choice: Choice = { task, tools, recipes, hung: task.places.map(() => []) };
  const coming = new Set<ShortBase>(tour);
  const order = [...task.places.keys()].sort(
    (i, j) => Number(task.places[j]!.kind === 'pin') - Number(task.places[i]!.kind === 'pin'),
  );
  for (const i of [...tour, ...order]) {
    coming.delete(i);
    if (recipes[i] || task.refused.has(i) || task.pairs.pairOf[i]! < 0) continue;
    task.offered[i]!.some((r) => !coming.has(r.a) && !coming.has(r.b) && take(choice, i, r));
  }
  return worthIt(task.spec, recipes) ? recipes : task.places.map(() => null);
}

/** For each stake its two places; null: tied to controls. */
export type Recipes = readonly (ShortRecipe | null)[];

/** Another round costs about what moving the tapes does. */
function worthIt(spec: StakeoutSpec, recipes: Recipes): boolean {
  const { moveTapes } = spec.minutes ?? DEFAULT_MINUTES;
  return savedMinutes(spec, recipes) > moveTapes;
}

/** Person-minutes that the short tape saves over ties, walking left out. */
export function savedMinutes(spec: StakeoutSpec, recipes: Recipes): number {
  const { ties, short } = spec.minutes ?? DEFAULT_MINUTES;
  return recipes.filter((r) => r !== null).length * (ties - short);
}

/** Every pair of near places that would serve, the closest-setting first. */
export function offerRecipes({
  places,
  controls,
  spec,
}: Pick<ShortTask, 'places' | 'controls' | 'spec'>): ShortRecipe[][] {
  const tools = offsetTools(spec);
  const index = spacingIndex<ShortBase>(LONGEST_BASE_FT);
  places.forEach((p, i) => spacingAdd(index, p.at, i));
  for (const end of controls.ends) spacingAdd(index, end.point.at, end);
  const most = mostRelative95In(spec);
  return places.map(({ at }, i) => {
    const near = spacingNear(index, at)
      .filter((s) => s.tag !== i)
      .sort((s, t) => pointDistance(s.at, at) - pointDistance(t.at, at))
      .slice(0, MOST_NEAR);
    return near
      .flatMap((b, j) =>
        near.slice(0, j).flatMap((a): Offered[] => {
          const foot = footOn(a.at, b.at, at);
          if (!footServes(foot)) return [];
          const relativeIn = relative95In(foot, tools);
          const rank = relativeIn - (isMiddle(foot) ? CHORD_WORTH_IN : 0);
          return relativeIn <= most ? [{ a: a.tag, b: b.tag, rank }] : [];
        }),
      )
      .sort((r, s) => r.rank - s.rank)
      .slice(0, MOST_OFFERED);
  });
}

/** The choice so far: it only ever grows, and every stake in it stays within the target. */
interface Choice {
  readonly task: ShortTask;
  readonly tools: OffsetTools;
  readonly recipes: (ShortRecipe | null)[];
  /** Short stakes that hang on each stake. */
  readonly hung: number[][];
}

/** Sets stake `i` that way if it and all that hangs on it stay within depth and target. */
function take(choice: Choice, i: number, recipe: ShortRecipe): boolean {
  const bases = [recipe.a, recipe.b].filter((b) => typeof b === 'number');
  if (bases.some((b) => standsOn(choice, b, i) || choice.task.pairs.pairOf[b]! < 0)) return false;
  choice.recipes[i] = recipe;
  if (!holds(choice, i)) {
    choice.recipes[i] = null;
    return false;
  }
  for (const b of bases) choice.hung[b]!.push(i);
  return true;
}

function standsOn(choice: Choice, base: ShortBase, i: number): boolean {
  if (typeof base !== 'number') return false;
  if (base === i) return true;
  const recipe = choice.recipes[base];
  return recipe ? standsOn(choice, recipe.a, i) || standsOn(choice, recipe.b, i) : false;
}

/** How many short settings lie between a stake and the controls. */
function depthOf(choice: Choice, base: ShortBase): number {
  const recipe = typeof base === 'number' ? choice.recipes[base] : null;
  return recipe ? 1 + Math.max(depthOf(choice, recipe.a), depthOf(choice, recipe.b)) : 0;
}

function holds(choice: Choice, i: number): boolean {
  return (
    depthOf(choice, i) <= DEEPEST_SHORT &&
    jointSemiMajorIn(choice, i) <= choice.task.limits[i]! &&
    choice.hung[i]!.every((j) => holds(choice, j))
  );
}

/** Points built so far, with the next free number for a cause that is shared from here on. */
interface Built {
  readonly points: Map<number, PrecisePoint>;
  nextCause: number;
}

/** Joint: what the two ends share, they share here too. */
function jointSemiMajorIn(choice: Choice, i: number): number {
  const built: Built = { points: new Map(), nextCause: choice.task.controls.causes };
  const point = buildPoint(choice, i, built);
  return point ? semiMajor95(preciseCovariance(point)) : Infinity;
}

function buildPoint(choice: Choice, base: ShortBase, built: Built): PrecisePoint | null {
  if (typeof base !== 'number') return base.point;
  const before = built.points.get(base);
  if (before) return before;
  const set = settingOf(choice, base, built);
  if (!set) return null;
  const point = sharePoint(set, built.nextCause);
  built.nextCause += set.own.length;
  built.points.set(base, point);
  return point;
}

function settingOf(choice: Choice, i: number, built: Built): PrecisePoint | null {
  const { at } = choice.task.places[i]!;
  const recipe = choice.recipes[i];
  if (!recipe) return tiedPoint(choice.task, i);
  const a = buildPoint(choice, recipe.a, built);
  const b = buildPoint(choice, recipe.b, built);
  if (!a || !b) return null;
  const foot = footOn(a.at, b.at, at);
  return isMiddle(foot)
    ? pointByChord(a, b, foot.offset, choice.tools)
    : pointByOffset(a, b, foot.along, foot.offset, choice.tools);
}

function tiedPoint({ places, pairs, tied }: ShortTask, i: number): PrecisePoint | null {
  const before = tied.get(i);
  if (before !== undefined) return before;
  const { a, b, tapes } = pairs.pairs[pairs.pairOf[i]!]!;
  const point = pointByTies(a.point, b.point, places[i]!.at, tapes[0], tapes[1]);
  tied.set(i, point);
  return point;
}
