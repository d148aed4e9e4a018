import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { defaultProject } from '../../src/project/default-project';
import { locateJsonError } from '../../src/project/locate-json-error';
import { readProject } from '../../src/project/read-project';
import { writeProject } from '../../src/project/write-project';

const GOOD = writeProject(defaultProject());

/** The saved text with one value put in (or, `undefined`, taken out) at a path of keys. */
function damaged(path: readonly (string | number)[], value: unknown): string {
  const document = JSON.parse(GOOD) as Record<string, unknown>;
  let at: Record<string, unknown> = document;
  for (const key of path.slice(0, -1)) at = at[key] as Record<string, unknown>;
  const last = path[path.length - 1]!;
  if (value === undefined) delete at[last];
  else at[last] = value;
  return JSON.stringify(document);
}

const codesAt = (text: string): string[] =>
  readProject(text, 'job.json').problems.map((p) => `${p.code} ${p.where}`);

const CASES: readonly (readonly [(string | number)[], unknown, string, string])[] = [
  [['version'], 3, 'version-unknown', 'version'],
  [['version'], '1', 'version-unknown', 'version'],
  [['version'], undefined, 'version-unknown', 'version'],
  [['name'], 5, 'value-type', 'name'],
  [['name'], 'two\nlines', 'value-form', 'name'],
  [['name'], 'x'.repeat(500), 'value-length', 'name'],
  [['club'], undefined, 'value-missing', 'club'],
  [['date'], '2027-02-29', 'value-form', 'date'],
  [['date'], '16 April', 'value-form', 'date'],
  [['units'], 'furlongs', 'value-choice', 'units'],
  [['paper'], 'a3', 'value-choice', 'paper'],
  [['crewAddress'], 'http://a.example/crew/', 'value-form', 'crewAddress'],
  [['crewAddress'], 'https://a.example/crew/#x', 'value-form', 'crewAddress'],
  [['crewAddress'], 'javascript:alert(1)', 'value-form', 'crewAddress'],
  [['field'], null, 'value-type', 'field'],
  [['field', 'trackWidthFt'], '15', 'value-type', 'field.trackWidthFt'],
  [['field', 'trackWidth'], 15, 'key-unknown', 'field.trackWidth'],
  [['field', 'fence'], {}, 'value-type', 'field.fence'],
  [['field', 'fence', 2, 'distanceFt'], null, 'value-type', 'field.fence[2].distanceFt'],
  [['field', 'fence', 1], 375, 'value-type', 'field.fence[1]'],
  [['field', 'book'], 'rounders', 'value-choice', 'field.book'],
  [['field', 'poles', 'left'], { distanceFt: 330 }, 'value-missing', 'field.poles.left.sigmaIn'],
  [['pattern', 'recipe'], 'plaid', 'value-type', 'pattern.recipe'],
  [['pattern', 'recipe', 'mowings'], [], 'value-length', 'pattern.recipe.mowings'],
  [['pattern', 'values', 'band'], { passes: 2.5 }, 'parameter-value', 'pattern.values.band'],
  [['pattern', 'values', 'bering'], 30, 'parameter-unknown', 'pattern.values.bering'],
  [['art'], { source: { kind: 'photo' }, placement: null }, 'value-choice', 'art.source.kind'],
  [['design', 'ground', 'kind'], 'loud', 'value-choice', 'design.ground.kind'],
  [['design', 'ground', 'marginFt'], -3, 'value-range', 'design.ground.marginFt'],
  [['design', 'edgeLaps'], 9, 'value-range', 'design.edgeLaps'],
  [['mowing', 'overrides'], { reel: { wings: 2 } }, 'key-unknown', 'mowing.overrides.reel.wings'],
  [['stakeout', 'toleranceIn'], 0, 'value-range', 'stakeout.toleranceIn'],
  [['stakeout', 'toleranceIn'], -3, 'value-range', 'stakeout.toleranceIn'],
  [['stakeout', 'tape', 'limitFt'], 0, 'value-range', 'stakeout.tape.limitFt'],
  [['stakeout', 'crew'], 1, 'value-choice', 'stakeout.crew'],
  [['labour', 'opens'], '6:30', 'value-form', 'labour.opens'],
  [['labour', 'opens'], '25:00', 'value-form', 'labour.opens'],
  [['labour', 'closes'], '05:00', 'value-form', 'labour'],
  [['labour', 'rates'], { set: { low: 3, likely: 2, high: 1 } }, 'value-form', 'labour.rates.set'],
  [['seats', 0, 'id'], '../etc', 'value-form', 'seats[0].id'],
  [['seats', 1, 'id'], 'behind-home', 'value-form', 'seats'],
  [['seats', 0, 'at'], [0, -60], 'value-missing', 'seats[0].at.x'],
  [['extra'], 1, 'key-unknown', 'extra'],
];

describe('a damaged project', () => {
  it.each(CASES)('%j = %j gives %s at %s', (path, value, code, where) => {
    const found = codesAt(damaged(path, value));
    expect(found).toContain(`${code} job.json: ${where}`);
  });

  it('has everything that is wrong with it named at once', () => {
    const document = JSON.parse(damaged(['units'], 'furlongs')) as Record<string, unknown>;
    const text = JSON.stringify({ ...document, paper: 1, club: null, seats: 'all' });
    expect(codesAt(text)).toEqual([
      'value-type job.json: club',
      'value-choice job.json: units',
      'value-choice job.json: paper',
      'value-type job.json: seats',
    ]);
  });

  it('is said in words, with what to do', () => {
    const [p] = readProject(damaged(['stakeout', 'toleranceIn'], 0), 'job.json').problems;
    expect(p!.what).toBe('0 makes no sense here');
    expect(p!.fix).toBe('give a figure of 0.25 or more');
    const [q] = readProject(damaged(['units'], 'yards'), 'job.json').problems;
    expect(q!.what).toBe('"yards" is not a choice here');
    expect(q!.fix).toBe('use "feet-inches" or "metric"');
  });
});

describe('what is no project', () => {
  it.each([
    ['', 'json-empty job.json'],
    ['  \n', 'json-empty job.json'],
    ['null', 'not-a-project job.json'],
    ['[]', 'not-a-project job.json'],
    ['{}', 'not-a-project job.json'],
    ['{"format":"something-else","version":1}', 'not-a-project job.json'],
  ])('%j is refused', (text, wanted) => {
    expect(codesAt(text)).toEqual([wanted]);
  });

  it('refuses an overlong text before reading it', () => {
    expect(codesAt(' '.repeat(64 * 1024 * 1024 + 1))).toEqual(['file-too-large job.json']);
  });

  it('refuses nesting that would break a reader', () => {
    const deep = (n: number) =>
      `{"format":"swathscribe-project","version":1,"x":${'['.repeat(n)}${']'.repeat(n)}}`;
    expect(codesAt(deep(100))[0]).toMatch(/^nesting-too-deep job\.json: x\[0\]/);
    expect(() => readProject(deep(200_000), 'job.json')).not.toThrow();
    expect(readProject(deep(200_000), 'job.json').ok).toBe(false);
  });

  it.each(['__proto__', 'constructor', 'toString', 'hasOwnProperty'])(
    'refuses the key %s anywhere, and nothing else in the program changes',
    (key) => {
      const inside = GOOD.replace(
        '"overrides": {}',
        `"overrides": { "${key}": { "powered": true } }`,
      );
      expect(codesAt(inside)).toContain(`key-forbidden job.json: mowing.overrides.${key}`);
      const top = GOOD.replace('{', `{ "${key}": { "polluted": true },`);
      expect(codesAt(top)).toContain(`key-forbidden job.json: ${key}`);
      expect(({} as Record<string, unknown>)['polluted']).toBeUndefined();
      expect(({} as Record<string, unknown>)['powered']).toBeUndefined();
    },
  );
});

describe('broken JSON', () => {
  it.each([
    ['{\n  "format": "swathscribe-project"\n  "version": 1\n}', 3, 3],
    ['{\n  "format": "swathscribe-project",\n}', 3, 1],
    ['{\n  "format": swathscribe\n}', 2, 13],
    ['{ "a": 1 } {', 1, 12],
    ['{ "a": "x', 1, 8],
    ['{ "a": "x\ny" }', 1, 10],
    ['{ "a": "\\q" }', 1, 9],
    ['[1, 2', 1, 6],
    ['{ "a" 1 }', 1, 7],
    ['{ a: 1 }', 1, 3],
    ['{ "a": 01 }', 1, 9],
    ['{\r\n"a": .5 }', 2, 6],
    ['{ "a": NaN }', 1, 8],
  ])('%j breaks at line %d, column %d', (text, line, column) => {
    expect(() => JSON.parse(text) as unknown).toThrow();
    const [found] = readProject(text, 'job.json').problems;
    expect(found!.code).toBe('json-broken');
    expect(found!.where).toBe(`job.json: line ${line}, column ${column}`);
  });

  it('is what the platform calls broken too, for every damaged file', () => {
    fc.assert(
      fc.property(
        fc.nat({ max: GOOD.length - 1 }),
        fc.nat({ max: 3 }),
        fc.constantFrom('', '"', '{', '}', ',', ':', '\\', '0', '-', 'e', '\u0000', '[', ' '),
        (at, cut, put) => {
          const text = GOOD.slice(0, at) + put + GOOD.slice(at + cut);
          let whole = true;
          try {
            JSON.parse(text);
          } catch {
            whole = false;
          }
          expect(locateJsonError(text) === null).toBe(whole);
          expect(readProject(text, 'job.json').problems.every((p) => p.fix !== '')).toBe(true);
        },
      ),
      { seed: 11, numRuns: 250 },
    );
  });

  it('is told from whole JSON for any value at all', () => {
    fc.assert(
      fc.property(fc.jsonValue(), fc.nat({ max: 4 }), (value, indent) => {
        expect(locateJsonError(JSON.stringify(value, null, indent))).toBeNull();
      }),
      { seed: 12, numRuns: 120 },
    );
  });

  it('never throws, whatever the text', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.json()), (text) => {
        expect(readProject(text, 'x').ok).toBe(false);
      }),
      { seed: 13, numRuns: 250 },
    );
  });
});
