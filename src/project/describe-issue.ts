/** Schema findings in words for the person who has the file open. */
import type { BaseIssue } from 'valibot';
import { problem, type Problem } from '../base/result';

type Issue = BaseIssue<unknown>;

/** `where` is the file; the JSON path follows it. */
export function describeIssue(issue: Issue, where: string): Problem {
  const path = jsonPath(issue);
  const place = where === '' ? path : `${where}: ${path}`;
  const about = (code: string, what: string, fix: string): Problem =>
    problem(code, place, what, fix);
  const shown = shorten(issue.received);
  switch (issue.type) {
    case 'strict_object':
      return describeKey(issue, about);
    case 'literal':
    case 'picklist':
    case 'variant':
      return about('value-choice', `${shown} is not a choice here`, `use ${choices(issue)}`);
    case 'min_value':
    case 'max_value':
      return about('value-range', `${shown} makes no sense here`, `give a figure ${range(issue)}`);
    case 'integer':
      return about('value-range', `${shown} is not a whole number`, 'give a whole number');
    case 'min_length':
    case 'max_length':
      return about(
        'value-length',
        'there is too much or too little of it',
        `have a length ${range(issue)}`,
      );
    case 'regex':
    case 'check':
      return about('value-form', `${shown} will not do`, `give ${issue.message}`);
    default:
      return about('value-type', `${shown} is not ${kindOf(issue)}`, `give ${kindOf(issue)}`);
  }
}

function describeKey(
  issue: Issue,
  about: (code: string, what: string, fix: string) => Problem,
): Problem {
  if (issue.expected === 'never') {
    return about('key-unknown', 'this key means nothing here', 'correct its spelling or remove it');
  }
  if (issue.expected === 'Object') {
    return about('value-type', `${shorten(issue.received)} is not a group of keys`, 'give { … }');
  }
  return about('value-missing', 'this is missing', 'add it, or start from a saved project');
}

/** `field.fence[2].distanceFt`; `project` for the whole. */
function jsonPath(issue: Issue): string {
  const path = (issue.path ?? []).map((item) =>
    typeof item.key === 'number' ? `[${item.key}]` : `.${String(item.key)}`,
  );
  return path.join('').replace(/^\./, '') || 'project';
}

const shorten = (text: string): string => (text.length > 60 ? `${text.slice(0, 59)}…` : text);

const choices = (issue: Issue): string =>
  (issue.expected ?? '').replace(/[()]/g, '').replaceAll(' | ', ' or ');

const KINDS: Readonly<Record<string, string>> = {
  number: 'a number',
  string: 'text in quotes',
  boolean: 'true or false',
  array: 'a list',
  record: 'a group of keys',
};

const kindOf = (issue: Issue): string => KINDS[issue.type] ?? `what belongs here (${issue.type})`;

function range(issue: Issue): string {
  const text = issue.expected ?? '';
  if (text.startsWith('>=')) return `of ${text.slice(2)} or more`;
  return `of ${text.replace('<=', '')} or less`;
}
