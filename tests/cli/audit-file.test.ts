import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { auditFile } from '../../src/cli/audit-file';
import { readPacketLines } from '../contract/packet-reading';
import { readPdfLines } from '../sheets/read-pdf';
import { parseCsv } from '../support/stranger';

const ROOT = resolve(import.meta.dirname, '../..');
const JOB = join(ROOT, 'demo-data/lantern-emblem.json');
const READINGS = join(ROOT, 'demo-data/lantern-emblem-readings.csv');
let folder: string;

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'audit-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('readings audited from the command line', () => {
  it('leave the outline as set on sheets that say what the table says', async () => {
    const out = join(folder, 'as-set');
    const first = await auditFile(JOB, READINGS, out);
    expect(first.problems).toEqual([]);
    const table = parseCsv(readFileSync(join(out, 'outline-as-set.csv'), 'utf8'));
    const pages = await readPdfLines(new Uint8Array(readFileSync(join(out, 'outline-as-set.pdf'))));
    const { outline } = readPacketLines(pages.flat());
    // The sheets go by parts, the table by contours.
    expect(
      outline.map((row) => [row.from, row.to, row.radius, row.offset].join(' ')).sort(),
    ).toEqual(
      table
        .map((row) =>
          [row['from_stake'], row['to_stake'], row['radius_text'], row['offset_text']].join(' '),
        )
        .sort(),
    );
    const words = pages.flat().join('\n');
    expect(words).toContain('Outline as set, stakes');
    const move = parseCsv(readFileSync(join(out, 'as-set.csv'), 'utf8'))
      .filter((row) => row['move'] === 'yes')
      .map((row) => row['stake']!);
    expect(move.length).toBeGreaterThan(0);
    for (const stake of move)
      expect(words).toMatch(new RegExp(`^${stake} stands .* of its place`, 'm'));
  });
});
