/** The recipe that a new job starts with, and that bands of older files become. */
import { parse } from 'valibot';
import straight from '../../patterns/straight.json';
import type { Recipe } from '../pattern/model';
import { recipeSchema } from '../pattern/recipe-schema';

export const STRAIGHT: Recipe = parse(recipeSchema, straight);
