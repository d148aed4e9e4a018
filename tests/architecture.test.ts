import { execFileSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';

const ROOT = resolve(import.meta.dirname, '..');
const SRC = join(ROOT, 'src');

/** Top to bottom: a folder may import only from itself and from folders above it. */
const LAYERS = [
  'base',
  'geometry',
  'tour',
  'adjust',
  'field',
  'art',
  'pattern',
  'design',
  'mowing',
  'guide',
  'stakeout',
  'audit',
  'view',
  'labour',
  'project',
  'plan',
  'exchange',
  'sheets',
  'engine',
  'crew',
  'worker',
  'cli',
  'app',
] as const;
const SHELLS = new Set<string>(['crew', 'worker', 'cli', 'app']);

function filesBelow(folder: string): string[] {
  return readdirSync(folder).flatMap((name) => {
    const path = join(folder, name);
    if (statSync(path).isDirectory()) return filesBelow(path);
    return /\.(ts|svelte|mjs)$/.test(name) ? [path] : [];
  });
}

/** Every module named by an import, type import, re-export or dynamic import. */
function importsOf(path: string): string[] {
  const text = readFileSync(path, 'utf8');
  const pattern =
    /(?:import|export)\s+(?:type\s+)?(?:[^'"();]*?\sfrom\s+)?['"]([^'"]+)['"]|import\(\s*['"]([^'"]+)['"]\s*\)|new URL\(\s*['"]([^'"]+)['"]\s*,\s*import\.meta\.url/g;
  return [...text.matchAll(pattern)].map((m) => (m[1] ?? m[2] ?? m[3])!);
}

const layerOf = (path: string): string => relative(SRC, path).split('/')[0]!;

describe('architecture', () => {
  const files = filesBelow(SRC);

  it('has exactly the folders of the layer list', () => {
    const folders = readdirSync(SRC).filter((name) => statSync(join(SRC, name)).isDirectory());
    expect(folders.sort()).toEqual([...LAYERS].sort());
  });

  it('finds the imports it is meant to judge', () => {
    const counted = files.reduce((n, path) => n + importsOf(path).length, 0);
    expect(counted).toBeGreaterThan(files.length);
  });

  it('imports one way only', () => {
    const wrong: string[] = [];
    for (const path of files) {
      const from = LAYERS.indexOf(layerOf(path) as (typeof LAYERS)[number]);
      for (const target of importsOf(path).filter((t) => t.startsWith('.'))) {
        const at = resolve(dirname(path), target);
        if (!at.startsWith(SRC)) continue;
        const to = LAYERS.indexOf(layerOf(at) as (typeof LAYERS)[number]);
        const sideways = SHELLS.has(LAYERS[to]!) && to !== from;
        const shellUse =
          LAYERS[to] === 'crew' || (LAYERS[from] === 'app' && LAYERS[to] === 'worker');
        if (to > from || (sideways && !shellUse)) {
          wrong.push(`${relative(SRC, path)} imports ${target}`);
        }
      }
    }
    expect(wrong).toEqual([]);
  });

  it('keeps Node and the browser out of the engine', () => {
    const wrong = files
      .filter((path) => !SHELLS.has(layerOf(path)))
      .flatMap((path) =>
        importsOf(path)
          .filter((t) => t.startsWith('node:') || t.startsWith('svelte'))
          .map((t) => `${relative(SRC, path)} imports ${t}`),
      );
    expect(wrong).toEqual([]);
  });

  it('uses no clock and no unseeded random numbers in the engine', () => {
    const wrong = files
      .filter((path) => !SHELLS.has(layerOf(path)))
      .filter((path) =>
        /Math\.random|Date\.now|new Date\(\)|performance\.now/.test(readFileSync(path, 'utf8')),
      )
      .map((path) => relative(SRC, path));
    expect(wrong).toEqual([]);
  });

  it('refuses to compile an engine file that reaches for Node or the page', () => {
    const config = join(ROOT, 'tests/fixtures/impure/tsconfig.json');
    let output = '';
    try {
      execFileSync('npx', ['tsc', '-p', config], { cwd: ROOT, encoding: 'utf8' });
    } catch (error) {
      output = (error as { stdout: string }).stdout;
    }
    expect(output).toMatch(/impure\.ts\(\d+,\d+\): error TS\d+: Cannot find name 'process'/);
    expect(output).toMatch(/impure\.ts\(\d+,\d+\): error TS\d+: Cannot find name 'document'/);
    expect(output).toMatch(/impure\.ts\(\d+,\d+\): error TS\d+: Cannot find name 'setTimeout'/);
    expect(output.match(/error TS/g)).toHaveLength(3);
  });

  it('describes every folder in the contributors’ guide', () => {
    const guide = readFileSync(join(ROOT, 'DEVELOPERS.md'), 'utf8');
    const missing = LAYERS.filter((layer) => !new RegExp(`^ +${layer}/ +\\S`, 'm').test(guide));
    expect(missing).toEqual([]);
  });

  it('keeps only agreed names at the top level', () => {
    const allowed =
      /^(README\.md|DEVELOPERS\.md|LICENSE|THIRD-PARTY\.md|package(-lock)?\.json|tsconfig\.json|(vite|vitest|svelte|eslint|knip)\.config\.(ts|js)|\.prettier(rc\.json|ignore)|\.gitignore|\.ci|src|tests|patterns|demo-data|docs)$/;
    const tracked = execFileSync('git', ['ls-files'], { cwd: ROOT, encoding: 'utf8' });
    const top = [
      ...new Set(
        tracked
          .split('\n')
          .filter(Boolean)
          .map((p) => p.split('/')[0]!),
      ),
    ];
    expect(top.filter((name) => !allowed.test(name))).toEqual([]);
    expect(existsSync(join(ROOT, 'LICENSE'))).toBe(true);
  });
});
