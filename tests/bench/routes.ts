/**
 * `npm run -s bench:routes -- FOLDER`: every instance of a folder (`.json`, `.atsp`), one JSON line each:
 * the best tour found, a lower bound of all tours, the proven optimum where one is known or where the
 * two meet, and the seconds that the search took.
 */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { searchTour } from '../../src/tour/search-tour';
import { boundTour } from '../../src/tour/tour-bound';
import { readInstance, type Instance } from './read-instance';

/** Seconds of search, and of work on the bound, for an instance. */
const SEARCH_SECONDS = 3;
const BOUND_SECONDS = 1.5;

const secondsSince = (start: number): number => (performance.now() - start) / 1000;

function solve({ name, matrix, whole, known }: Instance): object {
  const start = performance.now();
  const search = searchTour(matrix);
  while (secondsSince(start) < SEARCH_SECONDS && search.improve(100));
  const seconds = secondsSince(start);
  const best = search.cost();
  const bounding = performance.now();
  const sharper = boundTour(matrix, best);
  while (secondsSince(bounding) < BOUND_SECONDS && sharper.improve(1));
  const raw = Math.max(search.bound(), sharper.value());
  const bound = whole ? Math.ceil(raw - 1e-6) : raw;
  const closed = known ?? (bound >= best - 1e-9 * best ? best : null);
  return {
    name,
    nodes: matrix.count,
    best: rounded(best),
    bound: rounded(bound),
    known: closed,
    seconds: Number(seconds.toFixed(2)),
  };
}

const rounded = (value: number): number => Number(value.toFixed(2));

const [folder] = process.argv.slice(2);
const fail = (words: string): void => {
  process.stderr.write(`${words}\n`);
  process.exitCode = 1;
};

if (folder === undefined || !existsSync(folder)) {
  const missing = folder === undefined ? '' : `${folder} is not there. `;
  fail(`${missing}Name a folder: npm run -s bench:routes -- FOLDER`);
} else {
  const files = readdirSync(folder).filter((file) => /\.(json|atsp)$/.test(file));
  if (files.length === 0) fail(`${folder}: no .json or .atsp file in it`);
  for (const file of files.sort()) {
    try {
      const instance = readInstance(file, readFileSync(join(folder, file), 'utf8'));
      process.stdout.write(`${JSON.stringify(solve(instance))}\n`);
    } catch (error) {
      fail(`${file}: ${error instanceof Error ? error.message : String(error)}`);
    }
  }
}
