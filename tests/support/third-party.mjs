// Lists what the product ships or runs with, from the lock file; `node tests/support/third-party.mjs`
// prints THIRD-PARTY.md. The licence test holds the file and the allow-list against this.
import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

const ROOT = resolve(import.meta.dirname, '../..');

/** Packages whose manifest states its licence oddly; read from their own licence files. */
const STATED = { arc: 'BSD-3-Clause', 'splaytree-ts': 'BSD-3-Clause' };

export function productionPackages() {
  const lock = JSON.parse(readFileSync(join(ROOT, 'package-lock.json'), 'utf8'));
  const found = new Map();
  for (const [path, entry] of Object.entries(lock.packages)) {
    if (path === '' || entry.dev || entry.optional || entry.devOptional || entry.peer) continue;
    const manifest = JSON.parse(readFileSync(join(ROOT, path, 'package.json'), 'utf8'));
    const licence = STATED[manifest.name] ?? manifest.license;
    found.set(`${manifest.name} ${licence}`, { name: manifest.name, licence });
  }
  return [...found.values()].sort((a, b) => (a.name < b.name ? -1 : 1));
}

export function thirdPartyText() {
  const rows = productionPackages().map((p) => `| ${p.name} | ${p.licence} |`);
  return [
    '# Third-party notice',
    '',
    'Swathscribe is MIT. It ships or runs with the packages below, each under its own licence; the full text stands in each package. Fonts are under the SIL Open Font License 1.1, those in packages that name only the wrapper (Graduate) included.',
    '',
    '| package | licence |',
    '|---|---|',
    ...rows,
    '',
  ].join('\n');
}

if (process.argv[1] === fileURLToPath(import.meta.url)) process.stdout.write(thirdPartyText());
