/**
 * Results and problems. An expected failure (a bad file, a fence that crosses itself) is plain data,
 * never an exception; `invariant` is for what can only be a mistake in the code.
 */

/** `error`: the step could not be done. `warning`: done, but look. `note`: worth knowing. */
export type Severity = 'error' | 'warning' | 'note';

/** One thing wrong, in words for the person who has to act on it. */
export interface Problem {
  /** Stable kebab-case identifier, for tests and scripts. */
  readonly code: string;
  /** Where: a JSON path, a file and line, an element, a stake number, a place on the grass. */
  readonly where: string;
  /** What is wrong, one sentence. */
  readonly what: string;
  /** What to do about it, one sentence. */
  readonly fix: string;
  readonly severity: Severity;
}

/** A value with any warnings, or every problem found (at least one of severity `error`). */
export type Result<T> =
  | { readonly ok: true; readonly value: T; readonly problems: readonly Problem[] }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** A problem; an error unless a milder severity is given. */
export function problem(
  code: string,
  where: string,
  what: string,
  fix: string,
  severity: Severity = 'error',
): Problem {
  return { code, where, what, fix, severity };
}

/** A value that was made, with the warnings met on the way. */
export function succeed<T>(value: T, problems: readonly Problem[] = []): Result<T> {
  return { ok: true, value, problems };
}

/** Nothing was made; `problems` say why, at least one of them an error. */
export function fail<T = never>(...problems: readonly Problem[]): Result<T> {
  return { ok: false, problems };
}

/** The line printed for a problem on the command line: `code: where: what; what to do`. */
export function problemLine(p: Problem): string {
  return `${p.code}: ${p.where}: ${p.what}; ${p.fix}`;
}

/** Throws when `condition` is false: a broken promise inside the code, never bad input. */
export function invariant(condition: unknown, message: string): asserts condition {
  if (!condition) throw new Error(`broken invariant: ${message}`);
}
