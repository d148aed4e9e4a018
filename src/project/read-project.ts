import { fail, problem, type Problem, type Result } from '../base/result';
import { checkProject } from './check-project';
import { locateJsonError } from './locate-json-error';
import { migrate, type JsonObject } from './migrate';
import { PROJECT_FORMAT, type Project } from './model';

/** Characters; an embedded drawing of 20 MB still fits, a film does not. */
const LARGEST = 64 * 1024 * 1024;

/** Nesting of a project is 6 at most. */
const DEEPEST = 32;

/**
 * A saved project from its text; `where` names the file in problems. Problems: `json-broken` with line
 * and column, `json-empty`, `file-too-large`, `not-a-project`, `version-unknown`, `key-forbidden`,
 * `nesting-too-deep`, and all of `checkProject`.
 */
export function readProject(text: string, where: string): Result<Project> {
  if (text.length > LARGEST) return fail(tooLarge(where));
  const clean = text.startsWith('\uFEFF') ? text.slice(1) : text;
  if (clean.trim() === '') return fail(empty(where));
  const parsed = parse(clean, where);
  if ('problem' in parsed) return fail(parsed.problem);
  const document = parsed.value;
  if (!isProject(document)) return fail(notAProject(where));
  const unsafe = findUnsafe(document, where);
  if (unsafe.length > 0) return fail(...unsafe);
  const migrated = migrate(document, where);
  return migrated.ok ? checkProject(migrated.value, where) : migrated;
}

function parse(text: string, where: string): { value: unknown } | { problem: Problem } {
  try {
    return { value: JSON.parse(text) as unknown };
  } catch {
    const error = locateJsonError(text);
    const place = error ? `${where}: line ${error.line}, column ${error.column}` : where;
    const what = `The file is not whole JSON: ${error?.what ?? 'it cannot be read'}`;
    return {
      problem: problem('json-broken', place, what, 'correct it there, or open a saved copy'),
    };
  }
}

function isProject(value: unknown): value is JsonObject {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return false;
  return (value as JsonObject)['format'] === PROJECT_FORMAT;
}

/** Keys that every JavaScript object already has: never a key of ours, and a way to do harm. */
function findUnsafe(document: JsonObject, where: string): Problem[] {
  const problems: Problem[] = [];
  const stack: { value: unknown; path: string; depth: number }[] = [
    { value: document, path: '', depth: 0 },
  ];
  for (let item = stack.pop(); item; item = stack.pop()) {
    const { value, path, depth } = item;
    if (typeof value !== 'object' || value === null) continue;
    if (depth > DEEPEST) return [tooDeep(where, path)];
    for (const key of Object.keys(value)) {
      const inner = Array.isArray(value) ? `${path}[${key}]` : path ? `${path}.${key}` : key;
      if (!Array.isArray(value) && key in Object.prototype) problems.push(forbidden(where, inner));
      else stack.push({ value: (value as JsonObject)[key], path: inner, depth: depth + 1 });
    }
  }
  return problems;
}

const tooLarge = (where: string): Problem =>
  problem(
    'file-too-large',
    where,
    'The file is larger than any project',
    'open a project file, or save the drawing in it simpler',
  );

const empty = (where: string): Problem =>
  problem('json-empty', where, 'The file is empty', 'open a saved project');

const notAProject = (where: string): Problem =>
  problem(
    'not-a-project',
    where,
    `The file is JSON but not a project: "format" is not "${PROJECT_FORMAT}"`,
    'open a saved project',
  );

const forbidden = (where: string, path: string): Problem =>
  problem('key-forbidden', `${where}: ${path}`, 'This key may not be used', 'remove it');

const tooDeep = (where: string, path: string): Problem =>
  problem(
    'nesting-too-deep',
    `${where}: ${path.slice(0, 80)}`,
    'Groups lie in groups deeper than in any project',
    'open a saved project',
  );
