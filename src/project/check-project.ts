/** Whether plain data is a project. */
import { safeParse } from 'valibot';
import { fail, succeed, type Result } from '../base/result';
import { valuesOf } from '../pattern/work-out';
import { checkSeat } from '../view/check-seat';
import { describeIssue } from './describe-issue';
import { findUnsafe } from './find-unsafe';
import type { Project } from './model';
import { projectSchema } from './schema';

/**
 * Holds plain data against the shape of a project: every missing, unknown, mistyped or absurd value
 * at once, each with its JSON path behind `where`. Problems `value-missing`, `key-unknown`,
 * `value-type`, `value-choice`, `value-range`, `value-length`, `value-form`,
 * `key-forbidden`, `nesting-too-deep`, `seat-height`, `seat-look`, `parameter-unknown`,
 * `parameter-value`.
 */
export function checkProject(value: unknown, where = ''): Result<Project> {
  const unsafe = findUnsafe(value, where);
  if (unsafe.length > 0) return fail(...unsafe);
  const parsed = safeParse(projectSchema, value);
  if (parsed.success) return checkParts(parsed.output, where);
  return fail(...parsed.issues.map((issue) => describeIssue(issue, where)));
}

function checkParts(project: Project, where: string): Result<Project> {
  const prefix = where === '' ? '' : `${where}: `;
  const seats = project.seats.flatMap((seat, i) => checkSeat(seat, `${prefix}seats[${i}]`));
  const values = valuesOf(project.pattern).problems.map((p) => ({
    ...p,
    where: `${prefix}${p.where}`,
  }));
  const problems = [...seats, ...values];
  return problems.length > 0 ? fail(...problems) : succeed(project);
}
