import { execFile } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { problemLine } from '../../src/base/result';
import { readInput } from '../../src/cli/read-input';
import { engine } from '../../src/engine/api';
import { packetOf, planOf, wordProject } from '../contract/plan-of';

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

/** The emblem demo as text, with some of its keys changed. */
function projectWith(changes: Readonly<Record<string, unknown>>): string {
  const project = JSON.parse(readFileSync(DEMO, 'utf8')) as object;
  return JSON.stringify({ ...project, ...changes });
}

const PLACE = { centre: { x: 0, y: 265 }, widthFt: 150, rotationDeg: 0 };
const WORD = { kind: 'text', text: 'Lanterns', font: 'pacifico' };
const artWith = (source: object, placement: object = {}): string =>
  projectWith({ art: { source, placement: { ...PLACE, ...placement } } });

/** The lines that `check` prints, without the price of a new process. */
function problemsOf(text: string): string[] {
  const path = join(folder, 'job.json');
  writeFileSync(path, text);
  const input = readInput(path);
  const plan = input.ok ? engine.makePlan(input.value.project, input.value.assets) : input;
  expect(plan.ok).toBe(false);
  return plan.problems.map(problemLine);
}

describe('the command line', () => {
  it('plans a small job into every file of the contract, twice to the same bytes', async () => {
    const job = wordProject('Go', 'graduate', 50);
    writeFileSync(join(folder, 'small.json'), engine.writeProject(job));
    const first = await run('plan', 'small.json', '--out', 'first', '--json');
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
      'inventory.csv',
      'route.json',
      'design.json',
      'hours.json',
      'summary.json',
      'plan.svg',
      'plan.dxf',
      'crew.html',
    ]) {
      expect(names).toContain(name);
    }
    expect(names.some((name) => /^view-.*\.png$/.test(name))).toBe(true);
    const plan = planOf(job);
    const again = { ...engine.makeFiles(plan), 'packet.pdf': await packetOf(plan) };
    for (const [name, content] of Object.entries(again)) {
      const first = readFileSync(join(folder, 'first', name));
      expect(first.equals(Buffer.from(content)), name).toBe(true);
    }
  });

  it('exits 2 with a hint for a wrong call', async () => {
    for (const args of [['plan', DEMO], ['mow'], []]) {
      const result = await run(...args);
      expect(result.code, args.join(' ')).toBe(2);
    }
    const help = await run('plan', '--help');
    expect(help.code).toBe(0);
    expect(help.out).toContain('--out');
  });

  it.each<[string, string, RegExp]>([
    ['broken JSON', '{ "format": ', /^json-broken: job\.json: line 1, column \d+: .+; .+$/m],
    ['an unknown version', projectWith({ version: 99 }), /version/],
    [
      'a font that is not bundled',
      artWith({ ...WORD, font: 'nowhere' }),
      /^font-missing: .*nowhere/m,
    ],
    [
      'a drawing that is not there',
      artWith({ kind: 'svg', file: 'no.svg' }),
      /^file-missing: no\.svg: /m,
    ],
    [
      'a drawing outside the folder',
      artWith({ kind: 'svg', file: '../secret.svg' }),
      /^(file-outside|art-file|project-\S+): .*art\.source\.file/m,
    ],
    ['art larger than the grass', artWith(WORD, { widthFt: 590 }), /^art-\S+: /m],
    ['art over the skin', artWith(WORD, { centre: { x: 0, y: 120 } }), /^art-\S+: /m],
    [
      'a drawing with nothing to draw',
      artWith({ kind: 'svg', file: 'a.svg', svg: '<svg xmlns="http://www.w3.org/2000/svg"/>' }),
      /^svg-empty: /m,
    ],
    ['a width of zero', artWith(WORD, { widthFt: 0 }), /width/],
  ])('names what is wrong with %s', (_, text, expected) => {
    const lines = problemsOf(text);
    expect(lines.join('\n')).toMatch(expected);
    for (const line of lines) expect(line).toMatch(/^[a-z0-9-]+: .+: .+; .+$/);
  });

  it('prints one line per problem to the error stream and exits 1', async () => {
    writeFileSync(join(folder, 'broken.json'), '{ "format": ');
    const result = await run('check', 'broken.json');
    expect(result).toMatchObject({ code: 1, out: '' });
    expect(result.err).toMatch(/^json-broken: broken\.json: line 1, column \d+: .+; .+\n$/);
  });

  it('says that a file is missing, and leaves nothing behind', async () => {
    const result = await run('plan', 'nowhere.json', '--out', 'never');
    expect(result.code).toBe(1);
    expect(result.err).toMatch(/^file-missing: nowhere\.json: /);
    expect(readdirSync(folder)).not.toContain('never');
  });
});
