/** The recipes that come with the program, and what a recipe may not be. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020';
import { describe, expect, test } from 'vitest';
import { composeDesign } from '../../src/design/compose-design';
import { regionArea } from '../../src/geometry/region';
import type { Recipe } from '../../src/pattern/model';
import { readRecipe } from '../../src/project/read-recipe';
import { composeInput, must } from '../design/grass';
import { recipeJsonSchema } from './recipe-json-schema';

const ROOT = join(import.meta.dirname, '../..');
const texts = new Map(
  readdirSync(join(ROOT, 'patterns')).map((file) => [
    file,
    readFileSync(join(ROOT, 'patterns', file), 'utf8'),
  ]),
);
const recipes = [...texts].map(([file, text]) => must(readRecipe(text, file)));
const recipeOf = (id: string) => recipes.find((r) => r.id === id)!;

describe('the recipes that come with the program', () => {
  test('are named by their file, and there are those that the trade knows', () => {
    expect([...texts.keys()]).toEqual(recipes.map((r) => `${r.id}.json`));
    // Names of the trade: "Back to basics: mow patterns 101" and like pages, common practice for the rest.
    const known = [
      ...['straight', 'diagonal-right', 'diagonal-left', 'checkerboard', 'checkerboard-diagonal'],
      ...['diamond', 'plaid', 'arcs-home', 'arcs-second', 'bullseye', 'sunburst', 'wave', 'spiral'],
      ...['chevron', 'herringbone', 'basket', 'one-way', 'day-pair', 'border-rings'],
    ];
    for (const id of known) expect(recipeOf(id), id).toBeDefined();
    expect(new Set(recipes.map((r) => r.name)).size).toBe(recipes.length);
  });

  test('hold to the published schema, as a general validator reads it', () => {
    const written = JSON.parse(
      readFileSync(join(ROOT, 'docs/recipe.schema.json'), 'utf8'),
    ) as object;
    expect(written).toEqual(JSON.parse(JSON.stringify(recipeJsonSchema())));
    const validate = new Ajv2020({ strict: false }).compile(written);
    for (const [file, text] of texts) {
      expect(validate(JSON.parse(text)), `${file} ${JSON.stringify(validate.errors)}`).toBe(true);
    }
    const wrong = { ...recipeOf('straight'), mowings: [{ widths: [], lays: ['up'] }] };
    expect(validate(wrong)).toBe(false);
  });

  test.each(recipes.map((r): [string, Recipe] => [r.id, r]))(
    '%s fills the grass inside the laps, on two fields and with three mowers',
    (_, recipe) => {
      for (const over of [
        {},
        { wide: 'five-gang-reel' },
        { wide: 'rotary-rider-roller-60', field: SMALL, design: { edgeLaps: 1 } },
      ] as const) {
        const input = { ...composeInput({ recipe, ...over }), pattern: { recipe, values: {} } };
        const result = composeDesign(input);
        expect(result.problems.map((p) => p.what)).toEqual([]);
        const design = must(result);
        const laid = design.patches.reduce((n, p) => n + p.areaSqFt, 0);
        expect(laid / regionArea(input.field.outfieldGrass)).toBeCloseTo(1, 4);
        const layers = Math.max(...design.patches.map((p) => p.lays.length));
        expect(layers).toBe(recipe.mowings.some((m) => m.crosses) ? 2 : 1);
      }
    },
  );
});

/** A field of the high schools' recommended size, straight panels: NFHS, 300 and 350 ft at least. */
const SMALL = {
  fence: [-45, -15, 0, 15, 45].map((bearingDeg, i) => ({
    bearingDeg,
    distanceFt: [300, 340, 350, 340, 300][i]!,
  })),
  fenceShape: 'straight',
  trackWidthFt: 10,
} as const;

const STRAIGHT = JSON.parse(texts.get('straight.json')!) as Record<string, unknown>;
const withMowing = (mowing: object) => JSON.stringify({ ...STRAIGHT, mowings: [mowing] });
const bands = { widths: ['$band'], lays: ['out', 'back'] };
const parallel = { kind: 'parallel', bearingDeg: 0, through: 'home' };

describe('a recipe file that will not do is told where and why', () => {
  test.each([
    ['{', 'json-broken', 'own.json: line 1, column 2'],
    ['{"format":"poem"}', 'not-a-recipe', 'own.json'],
    ['[]', 'not-a-recipe', 'own.json'],
    [JSON.stringify({ ...STRAIGHT, version: 9 }), 'value-choice', 'own.json: version'],
    [JSON.stringify({ ...STRAIGHT, mowings: [] }), 'value-length', 'own.json: mowings'],
    [JSON.stringify({ ...STRAIGHT, colour: 'red' }), 'key-unknown', 'own.json: colour'],
    [withMowing({ guides: parallel, widths: ['$band'] }), 'value-missing', 'mowings[0].lays'],
    [
      withMowing({ ...bands, guides: { kind: 'zigzag' } }),
      'value-choice',
      'mowings[0].guides.kind',
    ],
    [
      withMowing({ ...bands, guides: { ...parallel, through: 'the bullpen' } }),
      'value-form',
      'mowings[0].guides.through',
    ],
    [
      withMowing({ ...bands, guides: parallel, lays: ['up'] }),
      'value-choice',
      'mowings[0].lays[0]',
    ],
    [
      withMowing({ ...bands, guides: { ...parallel, bearingDeg: { sum: [] } } }),
      'value-length',
      'mowings[0].guides.bearingDeg.sum',
    ],
    [
      `{"format":"swathscribe-recipe","x":${'['.repeat(60)}${']'.repeat(60)}}`,
      'nesting-too-deep',
      'own.json',
    ],
    ['{"format":"swathscribe-recipe","__proto__":{}}', 'key-forbidden', '__proto__'],
  ])('%#', (text, code, where) => {
    const read = readRecipe(text, 'own.json');
    expect(read.ok).toBe(false);
    const found = read.problems.find((p) => p.code === code);
    expect(found?.where, JSON.stringify(read.problems)).toContain(where);
    expect(found!.fix.length).toBeGreaterThan(4);
  });
});

describe('a recipe that cannot be laid is told where and why', () => {
  const code = (mowing: object) => {
    const recipe = must(readRecipe(withMowing({ ...bands, ...mowing }), 'own.json'));
    const result = composeDesign({ ...composeInput({ recipe }), pattern: { recipe, values: {} } });
    const [first] = result.problems;
    return first ? `${result.ok ? 'done ' : ''}${first.code} ${first.where}` : 'fine';
  };

  test.each([
    [
      { guides: { ...parallel, bearingDeg: '$berring' } },
      'rule-reference pattern.mowings[0].guides.bearingDeg',
    ],
    [
      { guides: { ...parallel, through: '$bearing' } },
      'rule-reference pattern.mowings[0].guides.through',
    ],
    [{ guides: parallel, widths: ['$bearing'] }, 'rule-reference pattern.mowings[0].widths[0]'],
    [{ guides: parallel, widths: [{ feet: 3 }] }, 'band-narrow pattern.mowings[0].widths[0]'],
    [{ guides: parallel, widths: [{ passes: 1.5 }] }, 'band-passes pattern.mowings[0].widths[0]'],
    [
      { guides: { kind: 'aimed', from: 'home', at: 'home' } },
      'guides-nowhere pattern.mowings[0].guides',
    ],
    [
      { guides: { kind: 'rays', centre: 'home', fromDeg: 40, toDeg: 40 } },
      'guides-nowhere pattern.mowings[0].guides',
    ],
    [
      { guides: { kind: 'waves', bearingDeg: 0, through: 'home', lengthFt: 40, heightFt: 20 } },
      'wave-shape pattern.mowings[0].guides',
    ],
    [
      {
        guides: {
          kind: 'line',
          points: [
            { x: 0, y: 150 },
            { x: 0, y: 250 },
            { x: 120, y: 200 },
          ],
        },
      },
      'line-steep pattern.mowings[0].guides.points[1]',
    ],
    [
      { guides: parallel, over: { kind: 'strip', bearingDeg: 0, through: 'home', widthFt: 1 } },
      'area-empty pattern.mowings[0].over.widthFt',
    ],
    [
      { guides: parallel, over: { kind: 'surface', is: 'infield-grass' } },
      'surface-unmown pattern.mowings[0].over.is',
    ],
    [
      { guides: parallel, over: { kind: 'ring', centre: 'home', toFt: 60 } },
      'done mowing-empty pattern.mowings[0]',
    ],
    [
      { guides: parallel, over: { kind: 'half', side: 'left', bearingDeg: 0, through: 'home' } },
      'done pattern-gap pattern.mowings',
    ],
    [
      { guides: { kind: 'rings', centre: 'outfield-middle' } },
      'done bend-tight pattern.mowings[0].guides',
    ],
  ])('%#', (mowing, expected) => {
    expect(code(mowing)).toBe(expected);
  });

  test('every mask takes its share of the grass', () => {
    const share = (over: object) => {
      const recipe = must(readRecipe(withMowing({ ...bands, guides: parallel, over }), 'own.json'));
      const input = { ...composeInput({ recipe }), pattern: { recipe, values: {} } };
      const design = must(composeDesign(input));
      const ground = design.patches.filter((p) => p.kind === 'background');
      return ground.reduce((n, p) => n + p.areaSqFt, 0);
    };
    const all = share({ kind: 'surface', is: 'outfield-grass' });
    const half = { kind: 'half', side: 'left', bearingDeg: 0, through: 'home' };
    // The field is its own mirror image about the centre line.
    expect(share(half) / all).toBeCloseTo(0.5, 3);
    expect(share({ kind: 'not', of: half }) / all).toBeCloseTo(0.5, 3);
    const sector = { kind: 'sector', centre: 'home', fromDeg: -45, toDeg: 0 };
    expect(share(sector) / all).toBeCloseTo(0.5, 3);
    expect(share({ kind: 'both', of: [half, sector] }) / all).toBeCloseTo(0.5, 3);
    expect(share({ kind: 'any', of: [half, { kind: 'not', of: half }] })).toBeCloseTo(all, 0);
    // A disc of 60 ft radius and a square of 80 ft lie wholly on the outfield's middle.
    const disc = { kind: 'ring', centre: 'outfield-middle', toFt: 60 };
    expect(share(disc)).toBeCloseTo(Math.PI * 3600, -1);
    const corners = [-40, 40, 40, -40].map((x, i) => ({ x, y: i < 2 ? 220 : 300 }));
    expect(share({ kind: 'drawn', points: corners })).toBeCloseTo(6400, 0);
    const even = { kind: 'blocks', bearingDeg: 0, through: 'home', acrossFt: 20, alongFt: 30 };
    const both = ['even', 'odd'].map((pick) => share({ ...even, pick }));
    expect(both[0]! + both[1]!).toBeCloseTo(all, 0);
    expect(both[0]! / all).toBeCloseTo(0.5, 1);
  });
});
