/** Older files brought up to date, one step per version, on plain JSON. */
import { fail, problem, succeed, type Result } from '../base/result';
import { PROJECT_VERSION } from './model';
import { STRAIGHT } from './straight-recipe';

export type JsonObject = Readonly<Record<string, unknown>>;

/** Turns a document of version `from` into one of version `from + 1`. */
export interface Migration {
  readonly from: number;
  readonly change: (document: JsonObject) => JsonObject;
}

/** One entry per step, oldest first. */
export const MIGRATIONS: readonly Migration[] = [{ from: 1, change: bandsToRecipe }];

/** Version 1 knew straight bands alone: bearing, passes and shift are now values of their recipe. */
function bandsToRecipe(document: JsonObject): JsonObject {
  const old = document['pattern'];
  if (typeof old !== 'object' || old === null || !('kind' in old)) return document;
  const { kind, bearingDeg, passesPerBand, offsetFt, ...others } = old as JsonObject;
  if (kind !== 'bands') return document;
  const values = { bearing: bearingDeg, band: { passes: passesPerBand }, shift: offsetFt };
  return { ...document, pattern: { recipe: STRAIGHT, values, ...others } };
}

/** The document at the newest version. Problem `version-unknown`: newer than this program, or none. */
export function migrate(
  document: JsonObject,
  where: string,
  steps: readonly Migration[] = MIGRATIONS,
  newest: number = PROJECT_VERSION,
): Result<JsonObject> {
  let current = document;
  let version = document['version'];
  while (version !== newest) {
    const step = steps.find((s) => s.from === version);
    if (!step) return fail(unknownVersion(document['version'], where, newest));
    version = step.from + 1;
    current = { ...step.change(current), version };
  }
  return succeed(current);
}

const unknownVersion = (version: unknown, where: string, newest: number) =>
  problem(
    'version-unknown',
    `${where}: version`,
    version === undefined
      ? 'the file names no version'
      : `version ${JSON.stringify(version)?.slice(0, 40)} is not one this program reads`,
    `open it with the program that wrote it, or save it as version ${newest}`,
  );
