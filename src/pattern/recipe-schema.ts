/** The shape of a recipe file. docs/recipe.schema.json is written from this. */
import * as v from 'valibot';
import {
  EDGE_SIDES,
  NAMED_PLACES,
  RECIPE_FORMAT,
  RECIPE_VERSION,
  type AreaRule,
  type NumberRule,
  type ParameterValue,
  type PatternSpec,
  type Recipe,
} from './model';

const FAR = 100_000;
const figure = (least: number, most: number) =>
  v.pipe(v.number(), v.minValue(least), v.maxValue(most));
const far = figure(-FAR, FAR);
const line = (most: number) =>
  v.pipe(
    v.string(),
    v.minLength(1),
    v.maxLength(most),
    v.regex(/^\P{Cc}*$/u, 'one line without control characters'),
  );
const ID = /^[a-z][a-z0-9-]{0,39}$/;
const id = v.pipe(v.string(), v.regex(ID, 'small letters, digits and hyphens, 40 at most'));
const reference = v.pipe(
  v.string(),
  v.regex(/^\$[a-z][a-z0-9-]{0,39}$/, 'a parameter such as "$bearing"'),
);

/** Sums and products may not be longer or lists larger than any pattern needs. */
const MOST_TERMS = 8;

export const numberSchema: v.GenericSchema<unknown, NumberRule> = v.union(
  [
    far,
    reference,
    v.strictObject({
      sum: v.pipe(v.array(v.lazy(() => numberSchema)), v.minLength(1), v.maxLength(MOST_TERMS)),
    }),
    v.strictObject({
      product: v.pipe(v.array(v.lazy(() => numberSchema)), v.minLength(1), v.maxLength(MOST_TERMS)),
    }),
    v.strictObject({
      choose: reference,
      among: v.record(
        id,
        v.lazy(() => numberSchema),
      ),
    }),
  ],
  'a number, "$parameter", {"sum": […]}, {"product": […]} or {"choose": "$choice", "among": {…}}',
);

const spot = v.strictObject({ x: numberSchema, y: numberSchema });
const placeName = v.pipe(
  v.string(),
  v.regex(
    new RegExp(`^(${NAMED_PLACES.join('|')}|\\$[a-z][a-z0-9-]{0,39})$`),
    `one of ${NAMED_PLACES.join(', ')}, or a parameter such as "$place"`,
  ),
);
const place = v.union([placeName, spot], 'a place, or {"x": …, "y": …}');
const width = v.union(
  [reference, v.strictObject({ passes: numberSchema }), v.strictObject({ feet: numberSchema })],
  'a width: {"passes": 3}, {"feet": 15} or "$parameter"',
);
const shift = { shiftFt: v.exactOptional(numberSchema) };
const start = { on: v.exactOptional(v.picklist(['edge', 'middle'])) };
const points = (least: number) => v.pipe(v.array(spot), v.minLength(least), v.maxLength(200));

const guides = v.variant('kind', [
  v.strictObject({
    kind: v.literal('parallel'),
    bearingDeg: numberSchema,
    through: place,
    ...shift,
    ...start,
  }),
  v.strictObject({ kind: v.literal('aimed'), from: place, at: place, ...shift, ...start }),
  v.strictObject({ kind: v.literal('rings'), centre: place, ...shift }),
  v.strictObject({
    kind: v.literal('rays'),
    centre: place,
    fromDeg: v.exactOptional(numberSchema),
    toDeg: v.exactOptional(numberSchema),
  }),
  v.strictObject({
    kind: v.literal('waves'),
    bearingDeg: numberSchema,
    through: place,
    lengthFt: numberSchema,
    heightFt: numberSchema,
    ...shift,
  }),
  v.strictObject({ kind: v.literal('spiral'), centre: place, turn: v.picklist(['cw', 'ccw']) }),
  v.strictObject({ kind: v.literal('edge'), of: v.picklist(EDGE_SIDES), ...shift }),
  v.strictObject({ kind: v.literal('line'), points: points(2), ...shift }),
]);

export const areaSchema: v.GenericSchema<unknown, AreaRule> = v.variant('kind', [
  v.strictObject({ kind: v.literal('surface'), is: line(40) }),
  v.strictObject({
    kind: v.literal('half'),
    side: v.picklist(['left', 'right']),
    bearingDeg: numberSchema,
    through: place,
  }),
  v.strictObject({
    kind: v.literal('strip'),
    bearingDeg: numberSchema,
    through: place,
    widthFt: numberSchema,
  }),
  v.strictObject({
    kind: v.literal('ring'),
    centre: place,
    fromFt: v.exactOptional(numberSchema),
    toFt: v.exactOptional(numberSchema),
  }),
  v.strictObject({
    kind: v.literal('sector'),
    centre: place,
    fromDeg: numberSchema,
    toDeg: numberSchema,
  }),
  v.strictObject({ kind: v.literal('drawn'), points: points(3) }),
  v.strictObject({
    kind: v.literal('blocks'),
    bearingDeg: numberSchema,
    through: place,
    acrossFt: numberSchema,
    alongFt: v.exactOptional(numberSchema),
    pick: v.picklist(['even', 'odd']),
  }),
  v.strictObject({ kind: v.literal('edge'), of: v.picklist(EDGE_SIDES), widthFt: numberSchema }),
  v.strictObject({ kind: v.literal('both'), of: areas() }),
  v.strictObject({ kind: v.literal('any'), of: areas() }),
  v.strictObject({ kind: v.literal('not'), of: v.lazy(() => areaSchema) }),
]);

function areas() {
  return v.pipe(v.array(v.lazy(() => areaSchema)), v.minLength(1), v.maxLength(MOST_TERMS));
}

const widthValue = v.union(
  [v.strictObject({ passes: figure(1, 60) }), v.strictObject({ feet: figure(0.1, 1000) })],
  'a width: {"passes": 3} or {"feet": 15}',
);
const placeValue = v.union(
  [v.picklist(NAMED_PLACES), v.strictObject({ x: far, y: far })],
  `one of ${NAMED_PLACES.join(', ')}, or {"x": …, "y": …}`,
);

const words = { id, name: line(60), help: v.exactOptional(line(200)) };
const ranged = { value: far, least: far, most: far };
const parameter = v.variant('kind', [
  v.strictObject({ ...words, kind: v.literal('bearing'), value: figure(-360, 360) }),
  v.strictObject({ ...words, kind: v.literal('count'), ...ranged }),
  v.strictObject({ ...words, kind: v.literal('length'), ...ranged }),
  v.strictObject({ ...words, kind: v.literal('factor'), ...ranged }),
  v.strictObject({ ...words, kind: v.literal('width'), value: widthValue }),
  v.strictObject({ ...words, kind: v.literal('place'), value: placeValue }),
  v.strictObject({
    ...words,
    kind: v.literal('choice'),
    value: id,
    options: v.pipe(
      v.array(v.strictObject({ value: id, name: line(60) })),
      v.minLength(2),
      v.maxLength(12),
    ),
  }),
]);

const mowing = v.strictObject({
  guides,
  widths: v.pipe(v.array(width), v.minLength(1), v.maxLength(12)),
  lays: v.pipe(v.array(v.picklist(['out', 'back'])), v.minLength(1), v.maxLength(24)),
  over: v.exactOptional(areaSchema),
  crosses: v.exactOptional(v.boolean()),
});

/** Unknown keys are refused. */
export const recipeSchema = v.strictObject({
  format: v.literal(RECIPE_FORMAT),
  version: v.literal(RECIPE_VERSION),
  id,
  name: line(60),
  about: line(400),
  parameters: v.pipe(
    v.array(parameter),
    v.maxLength(24),
    v.check(
      (list) => new Set(list.map((p) => p.id)).size === list.length,
      'parameters with an id of their own each',
    ),
  ),
  mowings: v.pipe(v.array(mowing), v.minLength(1), v.maxLength(12)),
}) satisfies v.GenericSchema<unknown, Recipe>;

const parameterValue: v.GenericSchema<unknown, ParameterValue> = v.union(
  [far, id, widthValue, placeValue],
  'a number, a choice, a width or a place',
);

/** A recipe with its values, as a project holds it. */
export const patternSchema = v.strictObject({
  recipe: recipeSchema,
  values: v.record(id, parameterValue),
}) satisfies v.GenericSchema<unknown, PatternSpec>;
