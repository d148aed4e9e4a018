import { execFile } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

const ROOT = resolve(import.meta.dirname, '../..');
const DEMO = join(ROOT, 'demo-data/lantern-emblem.json');
let folder: string;

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'swathscribe-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

interface Run {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

function run(...args: string[]): Promise<Run> {
  return new Promise((done) => {
    const program = join(ROOT, 'src/cli/swathscribe.mjs');
    execFile(process.execPath, [program, ...args], { cwd: folder }, (error, out, err) =>
      done({ code: error ? Number(error.code) : 0, out, err }),
    );
  });
}

function projectWith(change: (project: Record<string, never>) => void): string {
  const project = JSON.parse(readFileSync(DEMO, 'utf8')) as Record<string, never>;
  change(project);
  return JSON.stringify(project);
}

async function check(text: string, name = 'job.json'): Promise<Run> {
  writeFileSync(join(folder, name), text);
  return run('check', name);
}

describe('the command line', () => {
  it('plans a demo into every file of the contract, twice to the same bytes', async () => {
    const first = await run('plan', DEMO, '--out', 'first', '--json');
    expect(first.code).toBe(0);
    const summary = JSON.parse(first.out) as { ok: boolean; stakes: number };
    expect(summary.ok).toBe(true);
    const names = readdirSync(join(folder, 'first'));
    for (const name of [
      'packet.pdf',
      'controls.csv',
      'stakes.csv',
      'outline.csv',
      'guides.csv',
      'route.json',
      'design.json',
      'hours.json',
      'summary.json',
      'plan.svg',
      'plan.dxf',
    ]) {
      expect(names).toContain(name);
    }
    expect(names.some((name) => /^view-.*\.png$/.test(name))).toBe(true);
    expect((await run('plan', DEMO, '--out', 'second')).code).toBe(0);
    for (const name of names) {
      const a = readFileSync(join(folder, 'first', name));
      expect(a.equals(readFileSync(join(folder, 'second', name))), name).toBe(true);
    }
  });

  it('exits 2 with a hint for a wrong call', async () => {
    for (const args of [['plan', DEMO], ['mow'], ['plan'], ['check', DEMO, '--fast'], []]) {
      const result = await run(...args);
      expect(result.code, args.join(' ')).toBe(2);
    }
    const help = await run('plan', '--help');
    expect(help.code).toBe(0);
    expect(help.out).toContain('--out');
  });

  it.each<[string, string | (() => string), RegExp]>([
    ['broken JSON', '{ "format": ', /^project-\S+: job\.json\S*.*: .+; .+$/m],
    ['an unknown version', () => projectWith((p) => Object.assign(p, { version: 99 })), /version/],
    [
      'a font that is not bundled',
      () =>
        projectWith((p) =>
          Object.assign(p['art'], { source: { kind: 'text', text: 'Hello', font: 'nowhere' } }),
        ),
      /^font-missing: .*nowhere/m,
    ],
    [
      'a drawing that is not there',
      () =>
        projectWith((p) => Object.assign(p['art'], { source: { kind: 'svg', file: 'no.svg' } })),
      /^file-missing: no\.svg: /m,
    ],
    [
      'a drawing outside the folder',
      () =>
        projectWith((p) =>
          Object.assign(p['art'], { source: { kind: 'svg', file: '../secret.svg' } }),
        ),
      /^file-outside: /m,
    ],
    [
      'art larger than the grass',
      () =>
        projectWith((p) =>
          Object.assign(p['art'], {
            source: { kind: 'text', text: 'Lanterns', font: 'pacifico' },
            placement: { centre: { x: 0, y: 265 }, widthFt: 590, rotationDeg: 0 },
          }),
        ),
      /^art-off-grass: /m,
    ],
    [
      'art over the skin',
      () =>
        projectWith((p) =>
          Object.assign(p['art'], {
            source: { kind: 'text', text: 'Lanterns', font: 'pacifico' },
            placement: { centre: { x: 0, y: 120 }, widthFt: 150, rotationDeg: 0 },
          }),
        ),
      /^art-off-grass: /m,
    ],
    [
      'a drawing with nothing to draw',
      () =>
        projectWith((p) =>
          Object.assign(p['art'], {
            source: {
              kind: 'svg',
              file: 'empty.svg',
              svg: '<svg xmlns="http://www.w3.org/2000/svg"/>',
            },
          }),
        ),
      /^svg-empty: /m,
    ],
    [
      'a width of zero',
      () => projectWith((p) => Object.assign(p['art']['placement'] as object, { widthFt: 0 })),
      /widthFt|width/,
    ],
  ])('names what is wrong with %s', async (_, text, line) => {
    const result = await check(typeof text === 'string' ? text : text());
    expect(result.code).toBe(1);
    expect(result.err).toMatch(line);
    for (const printed of result.err.trim().split('\n')) {
      expect(printed).toMatch(/^[a-z0-9-]+: .+: .+; .+$/);
    }
  });

  it('says that a file is missing, and leaves nothing behind', async () => {
    const result = await run('plan', 'nowhere.json', '--out', 'never');
    expect(result.code).toBe(1);
    expect(result.err).toMatch(/^file-missing: nowhere\.json: /);
    expect(readdirSync(folder)).not.toContain('never');
  });
});
