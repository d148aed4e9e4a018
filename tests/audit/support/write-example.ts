/**
 * Writes demo-data/lantern-emblem-readings.csv again after the emblem's plan has changed:
 * `npx tsx tests/audit/support/write-example.ts`.
 */
import { writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { demoCrew } from '../../support/demo-crew';
import { exampleReadings } from './example-readings';

const FILE = join(
  resolve(import.meta.dirname, '../../..'),
  'demo-data/lantern-emblem-readings.csv',
);
writeFileSync(FILE, exampleReadings(demoCrew('lantern-emblem.json').stakes).text);
