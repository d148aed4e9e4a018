/** From the text of a saved file to a project. */
import { fail, problem, type Problem, type Result } from '../base/result';
import { checkProject } from './check-project';
import { migrate, type JsonObject } from './migrate';
import { PROJECT_FORMAT, type Project } from './model';
import { parseJson } from './parse-json';

/** Characters; an embedded drawing of 20 MB still fits, a film does not. */
const LARGEST = 64 * 1024 * 1024;

/**
 * A saved project from its text; `where` names the file in problems. Problems: `json-broken` with line
 * and column, `json-empty`, `file-too-large`, `not-a-project`, `version-unknown`, and all
 * of `checkProject`.
 */
export function readProject(text: string, where: string): Result<Project> {
  if (text.length > LARGEST) return fail(tooLarge(where));
  const clean = text.startsWith('\uFEFF') ? text.slice(1) : text;
  if (clean.trim() === '') return fail(empty(where));
  const parsed = parseJson(clean, where);
  if (!parsed.ok) return parsed;
  const document = parsed.value;
  if (!isProject(document)) return fail(notAProject(where));
  const migrated = migrate(document, where);
  return migrated.ok ? checkProject(migrated.value, where) : migrated;
}

function isProject(value: unknown): value is JsonObject {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return false;
  return (value as JsonObject)['format'] === PROJECT_FORMAT;
}

const tooLarge = (where: string): Problem =>
  problem(
    'file-too-large',
    where,
    'the file is larger than any project',
    'open a project file, or save the drawing in it simpler',
  );

const empty = (where: string): Problem =>
  problem('json-empty', where, 'the file is empty', 'open a saved project');

const notAProject = (where: string): Problem =>
  problem(
    'not-a-project',
    where,
    `the file is JSON but not a project: "format" is not "${PROJECT_FORMAT}"`,
    'open a saved project',
  );
