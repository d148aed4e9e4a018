/** What the command line prints. */
import { problemLine, type Problem } from '../base/result';

/** Problems to stderr, one line each, errors first. */
export function reportProblems(problems: readonly Problem[]): void {
  const rank = { error: 0, warning: 1, note: 2 } as const;
  const sorted = [...problems].sort((a, b) => rank[a.severity] - rank[b.severity]);
  for (const p of sorted) process.stderr.write(`${problemLine(p)}\n`);
}

/** A result to the output stream, indented. */
export function printJson(value: unknown): void {
  process.stdout.write(`${JSON.stringify(value, null, 2)}\n`);
}
