import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { auditFile } from '../../src/cli/audit-file';
import { asSetCsv, outlineAsSetCsv } from '../../src/exchange/audit-files';

const ROOT = resolve(import.meta.dirname, '../..');
const DOC = readFileSync(join(ROOT, 'docs/audit.md'), 'utf8');
let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'audit-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('the walk-through of docs/audit.md', () => {
  const [, project, readings] = /audit (demo-data\S+) (demo-data\S+) --out/.exec(DOC)!;
  const run = (out: string) =>
    auditFile(join(ROOT, project!), join(ROOT, readings!), join(folder, out));

  it('names the stake whose tape was let out a foot too far, and writes over nothing', () => {
    const result = run('as-set');
    if (!result.ok) throw new Error(JSON.stringify(result.problems));
    const [suspect] = result.value.audit.suspects;
    expect(suspect).toMatchObject({ strong: true, likeliest: { kind: 'tie' } });
    expect(Math.abs(suspect!.likeliest.tooLongIn! + 12)).toBeLessThan(4);
    expect(readdirSync(join(folder, 'as-set')).sort()).toEqual([
      'as-set.csv',
      'audit.json',
      'outline-as-set.csv',
    ]);
    const before = readFileSync(join(folder, 'as-set/as-set.csv'), 'utf8');
    expect(before.trimEnd().split('\r\n')).toHaveLength(1 + result.value.audit.stakes.length);
    const again = run('as-set');
    expect(again.problems.map((p) => p.code)).toEqual(Array(3).fill('file-in-the-way'));
    expect(readFileSync(join(folder, 'as-set/as-set.csv'), 'utf8')).toBe(before);
  });

  it('lists every column and key that is written', () => {
    expect(DOC).toContain(`\`${asSetCsv(null).trim()}\``);
    expect(outlineAsSetCsv(null, null).trim().endsWith(',gap_in,step_in,changed,within')).toBe(
      true,
    );
    const words = new Set(DOC.split(/\W+/));
    const keys = (value: unknown): string[] =>
      typeof value !== 'object' || value === null
        ? []
        : Object.entries(value).flatMap(([k, v]) =>
            Array.isArray(value) ? keys(v) : [k, ...keys(v)],
          );
    const json = JSON.parse(readFileSync(join(folder, 'as-set/audit.json'), 'utf8')) as unknown;
    expect(keys(json).filter((k) => !words.has(k))).toEqual([]);
  });
});
