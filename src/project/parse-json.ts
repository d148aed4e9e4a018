/** Plain data from the text of a JSON file. */
import { fail, problem, succeed, type Result } from '../base/result';
import { locateJsonError } from './locate-json-error';

/** Problem `json-broken` with the line and column; `where` names the file. */
export function parseJson(text: string, where: string): Result<unknown> {
  try {
    return succeed(JSON.parse(text) as unknown);
  } catch {
    const error = locateJsonError(text);
    const place = error ? `${where}: line ${error.line}, column ${error.column}` : where;
    const what = `the file is not whole JSON: ${error?.what ?? 'it cannot be read'}`;
    return fail(problem('json-broken', place, what, 'correct it there, or open a saved copy'));
  }
}
