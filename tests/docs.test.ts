import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { inventoryCsv } from '../src/exchange/inventory-csv';
import { designJson, hoursJson, routeJson, summaryJson } from '../src/exchange/json-files';
import { edgesCsv, guidesCsv } from '../src/exchange/guide-files';
import { controlsCsv, outlineCsv, stakesCsv } from '../src/exchange/stake-files';
import { planOf, readDemo } from './contract/plan-of';

const ROOT = resolve(import.meta.dirname, '..');
const read = (name: string): string => readFileSync(join(ROOT, name), 'utf8');
const guides = [
  'README.md',
  'DEVELOPERS.md',
  ...readdirSync(join(ROOT, 'docs'), { recursive: true })
    .map((name) => join('docs', String(name)))
    .filter((name) => name.endsWith('.md')),
];

/** Keyed by seats, machines and things of the project, not by words of the format. */
const KEYED_BY_ID = ['legible_by_seat', 'efficiency', 'field_efficiency', 'inventory'];

function keysOf(value: unknown): Set<string> {
  if (typeof value !== 'object' || value === null) return new Set();
  if (Array.isArray(value)) return new Set(value.flatMap((item) => [...keysOf(item)]));
  return new Set(
    Object.entries(value).flatMap(([key, inner]) =>
      KEYED_BY_ID.includes(key)
        ? [key, ...Object.values(inner as object).flatMap((own) => [...keysOf(own)])]
        : [key, ...keysOf(inner)],
    ),
  );
}

/** Every word that stands in code marks. */
const codeWords = (text: string): Set<string> =>
  new Set([...text.matchAll(/`([^`]+)`/g)].flatMap(([, code]) => code!.split(/\W+/)));

describe('the documents', () => {
  it('open with the job and the two commands', () => {
    const readme = read('README.md');
    const [, first] = readme.split('\n\n');
    expect(first).toMatch(/field manager/);
    expect(readme).toContain('npm ci && npm start');
    expect(readme).toContain('npm ci && npm test');
    expect(read('.ci/run')).toContain('npm ci\nnpm test\n');
  });

  it('name only scripts that exist', () => {
    const { scripts } = JSON.parse(read('package.json')) as { scripts: Record<string, string> };
    for (const name of guides) {
      for (const [, script] of read(name).matchAll(/npm run (?:-s )?([a-z][a-z:-]*)/g)) {
        expect(Object.keys(scripts), `${name}: npm run ${script}`).toContain(script);
      }
    }
  });

  it('link only to files that are there', () => {
    for (const name of guides) {
      for (const [, target] of read(name).matchAll(/\]\(([^)#\s]+)(?:#[^)]*)?\)/g)) {
        if (/^[a-z]+:/.test(target!)) continue;
        expect(existsSync(join(ROOT, dirname(name), target!)), `${name}: ${target}`).toBe(true);
      }
    }
  });

  it('name only source files that are there', () => {
    for (const name of guides) {
      for (const [, path] of read(name).matchAll(/`((?:src|tests|demo-data)\/[\w./-]+\.\w+)`/g)) {
        if (path!.includes('NAME')) continue;
        expect(existsSync(join(ROOT, path!)), `${name}: ${path}`).toBe(true);
      }
    }
  });

  it('give the columns that are written', () => {
    const docs = read('docs/files.md');
    for (const csv of [
      controlsCsv([]),
      stakesCsv(null),
      outlineCsv(null),
      guidesCsv([], 0),
      edgesCsv([]),
      inventoryCsv(null),
    ]) {
      expect(docs).toContain(`\`${csv.trim()}\``);
    }
  });

  it('name every key that is written', () => {
    const named = codeWords(read('docs/files.md'));
    const plan = planOf(readDemo('lantern-emblem.json'));
    for (const write of [routeJson, designJson, hoursJson, summaryJson]) {
      const keys = keysOf(JSON.parse(write(plan)));
      expect(keys.size).toBeGreaterThan(5);
      expect([...keys].filter((key) => !named.has(key))).toEqual([]);
    }
  });
});
