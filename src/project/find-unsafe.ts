/** Keys and nesting that no project has, found before anything else looks at the data. */
import { problem, type Problem } from '../base/result';
import type { JsonObject } from './migrate';

/** Nesting of a project is 6 at most. */
const DEEPEST = 32;

/**
 * Keys that every JavaScript object already has: never a key of ours, and a way to do harm. Walks
 * without recursion, so that no nesting can break it. `where` is the file, or empty.
 */
export function findUnsafe(document: unknown, where: string): Problem[] {
  const problems: Problem[] = [];
  const stack: { value: unknown; path: string; depth: number }[] = [
    { value: document, path: '', depth: 0 },
  ];
  for (let item = stack.pop(); item; item = stack.pop()) {
    const { value, path, depth } = item;
    if (typeof value !== 'object' || value === null) continue;
    if (depth > DEEPEST) return [tooDeep(place(where, path))];
    for (const key of Object.keys(value)) {
      const inner = Array.isArray(value) ? `${path}[${key}]` : path ? `${path}.${key}` : key;
      if (!Array.isArray(value) && key in Object.prototype)
        problems.push(forbidden(place(where, inner)));
      else stack.push({ value: (value as JsonObject)[key], path: inner, depth: depth + 1 });
    }
  }
  return problems;
}

const place = (where: string, path: string): string => (where === '' ? path : `${where}: ${path}`);

const forbidden = (at: string): Problem =>
  problem('key-forbidden', at, 'this key may not be used', 'remove it');

const tooDeep = (at: string): Problem =>
  problem(
    'nesting-too-deep',
    at.slice(0, 120),
    'groups lie in groups deeper than in any project',
    'open a saved project',
  );
