/** Files of the phone page in, rates out, and a new project that holds them. */
import { existsSync, writeFileSync } from 'node:fs';
import { basename } from 'node:path';
import { fail, problem, succeed, type Problem, type Result } from '../base/result';
import { engine } from '../engine/api';
import type { CrewFile } from '../exchange/crew-file-model';
import type { OwnRate } from '../labour/own-rates';
import { setRates } from '../project/edits';
import { readText } from './read-input';

/**
 * Rates from the files at `paths`, written with the project at `path` to `out` when it is given.
 * Problems of the readers, and `file-there`, `times-few`.
 */
export function takeTimes(
  path: string,
  paths: readonly string[],
  out: string | undefined,
): Result<OwnRate[]> {
  const text = readText(path);
  const project = text.ok ? engine.readProject(text.value, basename(path)) : text;
  const files = paths.map(readOne);
  const problems = [project, ...files].flatMap((result) => result.problems);
  if (!project.ok || files.some((file) => !file.ok)) return fail(...problems);
  if (out !== undefined && existsSync(out)) return fail(...problems, fileThere(out));
  const rates = engine.ownRates(files.flatMap((file) => (file.ok ? [file.value] : [])));
  const found = Object.fromEntries(rates.flatMap(({ task, rate }) => (rate ? [[task, rate]] : [])));
  if (Object.keys(found).length === 0) return fail(...problems, timesFew());
  const changed = setRates.apply(project.value, found);
  if (!changed.ok) return changed;
  if (out !== undefined) writeFileSync(out, engine.writeProject(changed.value));
  return succeed(rates, problems);
}

function readOne(path: string): Result<CrewFile> {
  const text = readText(path);
  return text.ok ? engine.readCrewFile(text.value, basename(path)) : text;
}

const fileThere = (out: string): Problem =>
  problem('file-there', basename(out), 'there is a file already', 'give another name');

const timesFew = (): Problem =>
  problem(
    'times-few',
    'times',
    'no task has enough times to go by',
    'add the files of more rounds or days',
  );
