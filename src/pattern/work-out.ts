/** Numbers, places and widths of a recipe worked out from its parameters' values. */
import { problem, type Problem } from '../base/result';
import type { Feet } from '../base/units';
import type { Field } from '../field/model';
import type { Point } from '../geometry/point';
import {
  NAMED_PLACES,
  type NamedPlace,
  type NumberRule,
  type Parameter,
  type ParameterValue,
  type PatternSpec,
  type PlaceRule,
  type PlaceValue,
  type WidthRule,
  type WidthValue,
} from './model';
import { placeOf } from './places';
import type { BandWidth, SwathWidths } from './resolved';

/** What rules are worked out with; `problems` is added to, and a stand-in returned, where they fail. */
export interface Workings {
  readonly field: Field;
  readonly widths: SwathWidths;
  readonly values: ReadonlyMap<string, ParameterValue>;
  readonly problems: Problem[];
}

/** More passes than this are no band but a field. */
const MOST_PASSES = 60;
/** A width this much below a pass (feet) is the same width, written rounded. */
const WIDTH_SLACK: Feet = 0.01;

/** The parameters with their values, checked. Problems `parameter-unknown`, `parameter-value`. */
export function valuesOf({ recipe, values }: PatternSpec): {
  readonly values: ReadonlyMap<string, ParameterValue>;
  readonly problems: readonly Problem[];
} {
  const problems: Problem[] = [];
  const known = new Map(recipe.parameters.map((p) => [p.id, p]));
  for (const id of Object.keys(values)) {
    if (!known.has(id)) problems.push(unknownParameter(`pattern.values.${id}`, id, recipe.name));
  }
  const out = new Map<string, ParameterValue>();
  for (const p of recipe.parameters) {
    const value = Object.hasOwn(values, p.id) ? values[p.id]! : p.value;
    const wrong = wrongValue(p, value);
    if (wrong) problems.push(problem('parameter-value', `pattern.values.${p.id}`, ...wrong));
    out.set(p.id, value);
  }
  return { values: out, problems };
}

const unknownParameter = (where: string, id: string, name: string): Problem =>
  problem(
    'parameter-unknown',
    where,
    `the pattern "${name}" has nothing called "${id}" to set`,
    'correct its spelling or remove it',
  );

/** What is wrong with a value and what to do; null when it will do. */
function wrongValue(p: Parameter, value: ParameterValue): readonly [string, string] | null {
  const shown = JSON.stringify(value);
  switch (p.kind) {
    case 'bearing':
      return typeof value === 'number' && Number.isFinite(value)
        ? null
        : [`${shown} is no bearing`, 'give degrees clockwise from home to second base'];
    case 'count':
    case 'length':
    case 'factor': {
      const whole = p.kind !== 'count' || Number.isInteger(value);
      const fits = typeof value === 'number' && whole && value >= p.least && value <= p.most;
      const unit = p.kind === 'length' ? ' ft' : '';
      const kind = p.kind === 'count' ? 'a whole number ' : '';
      return fits
        ? null
        : [`${shown} will not do for ${p.name}`, `give ${kind}${p.least} to ${p.most}${unit}`];
    }
    case 'width':
      return isWidth(value) && isWhole(value)
        ? null
        : [`${shown} is no width`, `give whole passes up to ${MOST_PASSES}, or feet`];
    case 'place':
      return isPlace(value)
        ? null
        : [`${shown} is no place`, `give one of ${NAMED_PLACES.join(', ')}, or x and y in feet`];
    case 'choice':
      return p.options.some((o) => o.value === value)
        ? null
        : [`${shown} is no choice`, `use ${p.options.map((o) => o.value).join(' or ')}`];
  }
}

const isWidth = (value: ParameterValue): value is WidthValue =>
  typeof value === 'object' && ('passes' in value || 'feet' in value);

const isWhole = (value: WidthValue): boolean =>
  'feet' in value || (Number.isInteger(value.passes) && value.passes <= MOST_PASSES);

const isPlace = (value: ParameterValue): value is PlaceValue =>
  isNamed(value) || (typeof value === 'object' && 'x' in value);

const isNamed = (value: unknown): value is NamedPlace =>
  NAMED_PLACES.some((name) => name === value);

/** A rule's number, or NaN with a problem. */
export function numberOf(w: Workings, rule: NumberRule, where: string): number {
  const value = workOut(w, rule, where);
  if (Number.isFinite(value)) return value;
  if (!w.problems.some((p) => p.severity === 'error')) {
    w.problems.push(problem('rule-number', where, 'this comes to no number', 'check the sum'));
  }
  return NaN;
}

function workOut(w: Workings, rule: NumberRule, where: string): number {
  if (typeof rule === 'number') return rule;
  if (typeof rule === 'string') {
    if (rule === '$swath') return w.widths.swathFt;
    const value = referenced(w, rule, where);
    if (typeof value === 'number') return value;
    if (value !== null && isWidth(value)) return widthFrom(w, value, where).ft;
    return value === null ? NaN : wrongKind(w, rule, where, 'a number');
  }
  if ('sum' in rule) return rule.sum.reduce<number>((n, r) => n + workOut(w, r, where), 0);
  if ('product' in rule) return rule.product.reduce<number>((n, r) => n * workOut(w, r, where), 1);
  const chosen = referenced(w, rule.choose, where);
  if (typeof chosen !== 'string' || !Object.hasOwn(rule.among, chosen)) {
    return chosen === null ? NaN : wrongKind(w, rule.choose, where, 'one of the choices named');
  }
  return workOut(w, rule.among[chosen]!, where);
}

function referenced(w: Workings, rule: string, where: string): ParameterValue | null {
  const value = w.values.get(rule.slice(1));
  if (value !== undefined) return value;
  const known = ['$swath', ...[...w.values.keys()].map((id) => `$${id}`)].join(', ');
  w.problems.push(
    problem('rule-reference', where, `there is no parameter "${rule}"`, `use one of ${known}`),
  );
  return null;
}

function wrongKind(w: Workings, rule: string, where: string, wanted: string): number {
  w.problems.push(
    problem(
      'rule-reference',
      where,
      `"${rule}" does not give ${wanted}`,
      'use a parameter of the right kind',
    ),
  );
  return NaN;
}

/** A rule's place in the field frame; the plate with a problem where there is none. */
export function pointOf(w: Workings, rule: PlaceRule, where: string): Point {
  if (typeof rule !== 'string') {
    return { x: numberOf(w, rule.x, `${where}.x`), y: numberOf(w, rule.y, `${where}.y`) };
  }
  if (isNamed(rule)) return placeOf(w.field, rule);
  const value = referenced(w, rule, where);
  if (value === null) return w.field.bases.home;
  if (isNamed(value)) return placeOf(w.field, value);
  if (typeof value === 'object' && 'x' in value) return value;
  wrongKind(w, rule, where, 'a place');
  return w.field.bases.home;
}

/** A band's width. Problems `band-passes`, `band-narrow`. */
export function widthOf(w: Workings, rule: WidthRule, where: string): BandWidth {
  if (typeof rule === 'string') {
    const value = referenced(w, rule, where);
    if (value === null) return standIn(w);
    if (typeof value === 'object' && isWidth(value)) return widthFrom(w, value, where);
    wrongKind(w, rule, where, 'a width');
    return standIn(w);
  }
  return 'passes' in rule
    ? widthFrom(w, { passes: numberOf(w, rule.passes, where) }, where)
    : widthFrom(w, { feet: numberOf(w, rule.feet, where) }, where);
}

const standIn = (w: Workings): BandWidth => ({ ft: w.widths.swathFt, passes: 1 });

function widthFrom(w: Workings, value: WidthValue, where: string): BandWidth {
  const { swathFt } = w.widths;
  if ('passes' in value) {
    const { passes } = value;
    if (Number.isInteger(passes) && passes >= 1 && passes <= MOST_PASSES) {
      return { ft: passes * swathFt, passes };
    }
    w.problems.push(
      problem(
        'band-passes',
        where,
        `a band of ${passes} passes cannot be mown`,
        `give a whole number of passes from 1 to ${MOST_PASSES}`,
      ),
    );
    return standIn(w);
  }
  if (value.feet >= swathFt - WIDTH_SLACK) {
    const passes = Math.max(1, Math.ceil((value.feet - WIDTH_SLACK) / swathFt));
    return { ft: value.feet, passes };
  }
  w.problems.push(
    problem(
      'band-narrow',
      where,
      `a band of ${value.feet.toFixed(2)} ft is narrower than one pass of ${swathFt.toFixed(2)} ft`,
      'make the band wider, or take a narrower mower',
    ),
  );
  return standIn(w);
}
