import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { controlsCsv, guidesCsv, outlineCsv, stakesCsv } from '../src/exchange/stake-files';

const ROOT = resolve(import.meta.dirname, '..');
const read = (name: string): string => readFileSync(join(ROOT, name), 'utf8');
const guides = [
  'README.md',
  'DEVELOPERS.md',
  ...readdirSync(join(ROOT, 'docs'), { recursive: true })
    .map((name) => join('docs', String(name)))
    .filter((name) => name.endsWith('.md')),
];

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
    for (const csv of [controlsCsv([]), stakesCsv(null), outlineCsv(null), guidesCsv()]) {
      expect(docs).toContain(`\`${csv.trim()}\``);
    }
  });
});
