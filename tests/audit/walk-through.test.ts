import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { auditReadings } from '../../src/audit/audit-readings';
import { writeNew } from '../../src/cli/audit-file';
import { asSetCsv, auditFiles, outlineAsSetCsv } from '../../src/exchange/audit-files';
import { readReadings } from '../../src/exchange/readings-csv';
import { demoCrew } from '../support/demo-crew';
import { exampleReadings } from './support/example-readings';

const ROOT = resolve(import.meta.dirname, '../..');
const DOC = readFileSync(join(ROOT, 'docs/audit.md'), 'utf8');
const [, project, table] = /audit (demo-data\S+) (demo-data\S+) --out/.exec(DOC)!;
let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'audit-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('the walk-through of docs/audit.md', () => {
  const { stakes, fingerprint } = demoCrew('lantern-emblem.json');
  const text = readFileSync(join(ROOT, table!), 'utf8');
  const readings = readReadings(text, table!, { stakes, inputHash: fingerprint });

  it('has the readings of the plan as it is (write-example.ts writes them again)', () => {
    expect(existsSync(join(ROOT, project!))).toBe(true);
    expect(text).toBe(exampleReadings(stakes).text);
  });

  it('names the stake whose tape was let out a foot too far', () => {
    if (!readings.ok) throw new Error(JSON.stringify(readings.problems));
    const audit = auditReadings(stakes, [], readings.value);
    if (!audit.ok) throw new Error(JSON.stringify(audit.problems));
    const [suspect] = audit.value.suspects;
    expect(suspect).toMatchObject({
      strong: true,
      likeliest: { kind: 'tie', stake: exampleReadings(stakes).stake },
    });
    expect(Math.abs(suspect!.likeliest.tooLongIn! + 12)).toBeLessThan(4);

    const files = auditFiles(stakes, audit.value);
    const words = new Set(DOC.split(/\W+/));
    const keys = (value: unknown): string[] =>
      typeof value !== 'object' || value === null
        ? []
        : Object.entries(value).flatMap(([k, v]) =>
            Array.isArray(value) ? keys(v) : [k, ...keys(v)],
          );
    expect(keys(JSON.parse(files['audit.json']!)).filter((k) => !words.has(k))).toEqual([]);
  });

  it('lists every column that is written', () => {
    expect(DOC).toContain(`\`${asSetCsv(null).trim()}\``);
    expect(outlineAsSetCsv(null, null).trim()).toMatch(/,gap_in,step_in,changed,within$/);
  });

  it('writes over nothing, and writes none when one is in the way', () => {
    const out = join(folder, 'out');
    expect(writeNew(out, { 'a.csv': 'one', 'b.csv': 'two' })).toEqual([]);
    expect(readdirSync(out).sort()).toEqual(['a.csv', 'b.csv']);
    writeFileSync(join(out, 'a.csv'), 'kept');
    const problems = writeNew(out, { 'a.csv': 'new', 'c.csv': 'new' });
    expect(problems.map((p) => p.code)).toEqual(['file-in-the-way']);
    expect(readFileSync(join(out, 'a.csv'), 'utf8')).toBe('kept');
    expect(existsSync(join(out, 'c.csv'))).toBe(false);
  });
});
