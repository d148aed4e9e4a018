/** A project and a file of readings in, an audit and its files out. */
import { existsSync, mkdirSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import type { Audit } from '../audit/model';
import { fail, problem, succeed, type Problem, type Result } from '../base/result';
import { engine } from '../engine/api';
import type { LengthSystem } from '../base/quantity';
import { readInput, readSheetFonts, readText } from './read-input';

/** An audit, and the units it is told in. */
export interface Audited {
  readonly audit: Audit;
  readonly system: LengthSystem;
}

/**
 * Audits the readings at `readings` against the project at `project`; writes into `folder` when one is
 * given. Problem `file-in-the-way` (nothing is written then), and those of the steps.
 */
export async function auditFile(
  project: string,
  readings: string,
  folder: string | undefined,
): Promise<Result<Audited>> {
  const input = readInput(project);
  const text = readText(readings);
  if (!input.ok || !text.ok) return fail(...input.problems, ...text.problems);
  const plan = engine.makePlan(input.value.project, input.value.assets);
  if (!plan.ok) return fail(...input.problems, ...plan.problems);
  const read = engine.readReadings(text.value, basename(readings), plan.value);
  if (!read.ok) return read;
  const audit = engine.auditReadings(plan.value, read.value);
  if (!audit.ok) return audit;
  const audited = { audit: audit.value, system: plan.value.project.units };
  if (folder === undefined) return succeed(audited);
  const sheets = await engine.makeAsSetSheets(plan.value, audit.value, readSheetFonts());
  const files = engine.makeAuditFiles(plan.value, audit.value);
  const problems = writeNew(folder, { ...files, 'outline-as-set.pdf': sheets });
  return problems.length > 0 ? fail(...problems) : succeed(audited);
}

/** Writes files into `folder`, all or, when one of them is there already, none. */
export function writeNew(
  folder: string,
  files: Readonly<Record<string, string | Uint8Array>>,
): Problem[] {
  const names = Object.keys(files);
  const there = names.map((name) => join(folder, name)).filter((path) => existsSync(path));
  if (there.length > 0) return there.map(inTheWay);
  mkdirSync(folder, { recursive: true });
  for (const name of names) writeFileSync(join(folder, name), files[name]!);
  return [];
}

const inTheWay = (path: string): Problem =>
  problem(
    'file-in-the-way',
    path,
    'it is there already and is not written over',
    'give another folder, or take it away',
  );
