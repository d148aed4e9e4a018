/** The slips' proof of one demo: caught against theory, named by the audit, written up. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { engine } from '../../src/engine/api';
import type { Plan } from '../../src/plan/model';
import { catchSlips, type CatchTally, type Catcher } from './catch-slips';
import { KIND_WORDS, SLIP_KINDS } from './draw-slips';
import { nameSlips, type Auditor, type NameTally, type Said } from './name-slips';
import { percent, type Table } from './proof-doc';

/** Reads a table of readings and judges it, as the command does. */
export const auditorOf =
  (plan: Plan): Auditor =>
  (text) => {
    const read = engine.readReadings(text, 'readings.csv', plan);
    if (!read.ok) return null;
    const audit = engine.auditReadings(plan, read.value);
    return audit.ok ? audit.value : null;
  };

const ROOT = resolve(import.meta.dirname, '../..');

/** The same through the command line. */
export function auditByCommand(demo: string, readings: string): Said {
  const folder = mkdtempSync(join(tmpdir(), 'readings-'));
  const file = join(folder, 'readings.csv');
  writeFileSync(file, readings);
  const args = ['src/cli/swathscribe.mjs', 'audit', `demo-data/${demo}.json`, file, '--json'];
  try {
    return JSON.parse(run(args)) as Said;
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** Exit 1 says that something is suspected: its output counts all the same. */
function run(args: readonly string[]): string {
  try {
    return execFileSync(process.execPath, args, { cwd: ROOT, encoding: 'utf8' });
  } catch (error) {
    return (error as { readonly stdout: string }).stdout;
  }
}

export interface SlipTally {
  readonly caught: CatchTally;
  readonly named: NameTally;
}

export const tallySlips = (
  catcher: Catcher,
  audit: Auditor,
  draws: number,
  audited: number,
): SlipTally[] =>
  SLIP_KINDS.map((kind) => ({
    caught: catchSlips(catcher, kind, draws),
    named: nameSlips(catcher.field, audit, kind, audited),
  }));

export const slipTable = (tallies: readonly SlipTally[]): Table => ({
  head: [
    'slip',
    'drawn',
    'caught at once',
    'by theory',
    'then or later',
    'beyond the checks',
    'cannot be set',
    'audited',
    'stake named',
    'reading named',
    'stake, asked',
    'reading, asked',
    'wrong stake, asked',
    'more readings',
  ],
  rows: tallies.map(({ caught, named }) => [
    KIND_WORDS[caught.kind],
    caught.draws,
    percent(caught.caught),
    percent(caught.theory),
    percent(caught.caughtEver),
    percent(1 - caught.caughtEver),
    percent(caught.cannotBeSet),
    named.draws,
    percent(named.checks.stake),
    percent(named.checks.reading),
    percent(named.asked.stake),
    percent(named.asked.reading),
    percent(named.asked.misled),
    named.more.toFixed(2),
  ]),
});
