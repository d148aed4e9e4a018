/** The built phone page, kept between runs for as long as nothing that it is made of has changed. */
import { createHash } from 'node:crypto';
import { mkdirSync, readdirSync, readFileSync, renameSync, statSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import type { CrewPageFiles } from './build-crew-page';

const ROOT = resolve(import.meta.dirname, '../../..');
/** Folders that the page's script may import from, and what fixes the version of the bundler. */
const MADE_OF = ['src/crew', 'src/exchange', 'src/base', 'src/geometry', 'package-lock.json'];
const FOLDER = join(ROOT, 'node_modules/.cache/swathscribe');

/** Built when it is not there yet; a cache that cannot be written only costs time. */
export async function keptCrewPage(): Promise<CrewPageFiles> {
  const path = join(FOLDER, `crew-page-${hashOf(MADE_OF)}.json`);
  const kept = readKept(path);
  if (kept) return kept;
  const { buildCrewPage } = await import('./build-crew-page');
  const files = await buildCrewPage();
  keep(path, files);
  return files;
}

function readKept(path: string): CrewPageFiles | null {
  try {
    return JSON.parse(readFileSync(path, 'utf8')) as CrewPageFiles;
  } catch {
    return null;
  }
}

/** Whole or not at all: two runs at once never read half a file. */
function keep(path: string, files: CrewPageFiles): void {
  try {
    mkdirSync(FOLDER, { recursive: true });
    const draft = `${path}.${process.pid}`;
    writeFileSync(draft, JSON.stringify(files));
    renameSync(draft, path);
  } catch {
    // A read-only installation builds the page at every run.
  }
}

function hashOf(parts: readonly string[]): string {
  const hash = createHash('sha256');
  for (const file of parts.flatMap((part) => filesBelow(join(ROOT, part)))) {
    hash.update(file.slice(ROOT.length)).update('\0').update(readFileSync(file)).update('\0');
  }
  return hash.digest('hex').slice(0, 24);
}

function filesBelow(path: string): string[] {
  if (statSync(path).isFile()) return [path];
  return readdirSync(path)
    .sort()
    .flatMap((name) => filesBelow(join(path, name)));
}
