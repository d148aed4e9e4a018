/** Style sheets: the part of CSS that drawings use, after CSS 2.1 (syntax 4.1, cascade 6.4). */
import { attribute, type SvgElement } from './element';

export interface Declaration {
  readonly property: string;
  readonly value: string;
  readonly important: boolean;
}

/** One compound selector, `rect.wide#door`, and how it is joined to the one before it. */
interface Compound {
  readonly tag: string | null;
  readonly id: readonly string[];
  readonly classes: readonly string[];
  readonly joint: 'inside' | 'child' | null;
}

export interface Rule {
  readonly selector: readonly Compound[];
  /** Ids × 1 000 000 + classes × 1000 + tags. */
  readonly specificity: number;
  readonly order: number;
  readonly declarations: readonly Declaration[];
}

export interface StyleSheet {
  readonly rules: readonly Rule[];
  /** Selectors and at-rules that were not understood. */
  readonly skipped: readonly string[];
  /** `@import` and the like: never fetched. */
  readonly outside: readonly string[];
}

/** Rules of all sheets in order; a rule's order is its place across the sheets. */
export function parseStyleSheets(texts: readonly string[]): StyleSheet {
  const rules: Rule[] = [];
  const skipped: string[] = [];
  const outside: string[] = [];
  for (const { prelude, body } of texts.flatMap((text) => splitBlocks(stripComments(text)))) {
    if (prelude.startsWith('@')) {
      if (/^@import\b/i.test(prelude)) outside.push(prelude);
      else if (!/^@(charset|namespace)\b/i.test(prelude)) skipped.push(prelude);
      continue;
    }
    const declarations = parseDeclarations(body);
    for (const text of prelude.split(',')) {
      const selector = parseSelector(text.trim());
      if (!selector) skipped.push(text.trim());
      else {
        const specificity = specificityOf(selector);
        rules.push({ selector, specificity, order: rules.length, declarations });
      }
    }
  }
  return { rules, skipped, outside };
}

const stripComments = (text: string): string =>
  text.replace(/\/\*[\s\S]*?(?:\*\/|$)/g, ' ').replace(/<!--|-->/g, ' ');

interface Block {
  readonly prelude: string;
  readonly body: string;
}

/** `prelude { body }` pairs and `@statement;`, with inner braces kept in the body. */
function splitBlocks(text: string): Block[] {
  const blocks: Block[] = [];
  let at = 0;
  while (at < text.length) {
    const stop = nextOf(text, at, '{', ';');
    const prelude = text.slice(at, stop).trim();
    if (text[stop] !== '{') {
      if (prelude.startsWith('@')) blocks.push({ prelude, body: '' });
      at = stop + 1;
      continue;
    }
    const end = closingBrace(text, stop);
    blocks.push({ prelude, body: text.slice(stop + 1, end) });
    at = end + 1;
  }
  return blocks;
}

function nextOf(text: string, from: number, ...marks: readonly string[]): number {
  let at = from;
  while (at < text.length && !marks.includes(text[at]!)) at += 1;
  return at;
}

function closingBrace(text: string, open: number): number {
  let depth = 0;
  for (let at = open; at < text.length; at++) {
    if (text[at] === '{') depth += 1;
    if (text[at] === '}' && --depth === 0) return at;
  }
  return text.length;
}

/** `fill: red; stroke: none !important` as declarations, lower-case property names. */
export function parseDeclarations(text: string): Declaration[] {
  return splitOutside(text, ';').flatMap((part) => {
    const colon = part.indexOf(':');
    const property = part.slice(0, colon).trim().toLowerCase();
    const raw = part.slice(colon + 1).trim();
    if (colon < 0 || property === '' || raw === '') return [];
    const important = /!\s*important$/i.test(raw);
    return [{ property, value: raw.replace(/!\s*important$/i, '').trim(), important }];
  });
}

/** Split at `mark` outside brackets and quotes. */
function splitOutside(text: string, mark: string): string[] {
  const parts: string[] = [];
  let depth = 0;
  let quote = '';
  let from = 0;
  for (let at = 0; at < text.length; at++) {
    const c = text[at]!;
    if (quote) quote = c === quote ? '' : quote;
    else if (c === '"' || c === "'") quote = c;
    else if (c === '(') depth += 1;
    else if (c === ')') depth = Math.max(0, depth - 1);
    else if (c === mark && depth === 0) {
      parts.push(text.slice(from, at));
      from = at + 1;
    }
  }
  return [...parts, text.slice(from)];
}

const COMPOUND = /^(\*|[a-zA-Z][\w-]*)?((?:[.#][\w\u0080-\uffff-]+)*)$/;

/** `g.a > rect b` and so on; null for what is not understood (`:hover`, `[x]`, `+`, `~`). */
function parseSelector(text: string): Compound[] | null {
  const words = text.replace(/\s*>\s*/g, ' > ').split(/\s+/);
  const out: Compound[] = [];
  let joint: Compound['joint'] = null;
  for (const word of words) {
    if (word === '>') {
      if (joint !== 'inside') return null;
      joint = 'child';
      continue;
    }
    const compound = parseCompound(word, joint);
    if (!compound) return null;
    out.push(compound);
    joint = 'inside';
  }
  return joint === 'child' || out.length === 0 ? null : out;
}

function parseCompound(word: string, joint: Compound['joint']): Compound | null {
  const match = COMPOUND.exec(word);
  if (!match || word === '') return null;
  const marks = match[2]!.match(/[.#][^.#]+/g) ?? [];
  const named = (sign: string): string[] =>
    marks.filter((m) => m.startsWith(sign)).map((m) => m.slice(1));
  const tag = match[1] === undefined || match[1] === '*' ? null : match[1];
  return { tag, id: named('#'), classes: named('.'), joint };
}

const specificityOf = (selector: readonly Compound[]): number =>
  selector.reduce(
    (n, c) => n + c.id.length * 1_000_000 + c.classes.length * 1000 + (c.tag ? 1 : 0),
    0,
  );

/** Rules by what their last compound asks for, so that an element meets only those that may apply. */
export interface RuleIndex {
  readonly byKey: ReadonlyMap<string, readonly Rule[]>;
}

/** `#id`, `.class`, `tag` or `*`: the most telling part of the last compound. */
function ruleKey(rule: Rule): string {
  const { id, classes, tag } = rule.selector[rule.selector.length - 1]!;
  if (id.length > 0) return `#${id[0]}`;
  return classes.length > 0 ? `.${classes[0]}` : (tag ?? '*');
}

/** Rules by the most telling part of their selector, so that an element looks at few of them. */
export function indexRules(rules: readonly Rule[]): RuleIndex {
  const byKey = new Map<string, Rule[]>();
  for (const rule of rules) {
    const key = ruleKey(rule);
    byKey.set(key, [...(byKey.get(key) ?? []), rule]);
  }
  return { byKey };
}

/** The rules that apply to the element where it stands in the file, weakest first. */
export function matchingRules(index: RuleIndex, element: SvgElement): Rule[] {
  const classes = (attribute(element, 'class') ?? '').split(/\s+/).filter(Boolean);
  const keys = ['*', element.tag, `#${attribute(element, 'id') ?? ''}`];
  const all = new Set([...keys, ...classes.map((name) => `.${name}`)]);
  const rules = [...all].flatMap((key) => index.byKey.get(key) ?? []);
  return rules
    .filter((rule) => matches(rule.selector, element))
    .sort((a, b) => a.specificity - b.specificity || a.order - b.order);
}

/** Down from the root, keeping which parts of the selector have been met: no backtracking. */
function matches(selector: readonly Compound[], element: SvgElement): boolean {
  const last = selector.length - 1;
  if (!matchesCompound(selector[last]!, element)) return false;
  if (last === 0) return true;
  const met: boolean[] = selector.map(() => false);
  let parent: readonly boolean[] = met;
  let here: boolean[] = [];
  for (const step of lineage(element)) {
    here = selector.map((compound, i) => {
      const before = i === 0 || (compound.joint === 'child' ? parent[i - 1]! : met[i - 1]!);
      return before && matchesCompound(compound, step);
    });
    here.forEach((now, i) => (met[i] ||= now));
    parent = here;
  }
  return here[last]!;
}

function lineage(element: SvgElement): SvgElement[] {
  const out: SvgElement[] = [];
  for (let up: SvgElement | null = element; up; up = up.parent) out.push(up);
  return out.reverse();
}

function matchesCompound(compound: Compound, element: SvgElement): boolean {
  if (compound.tag !== null && compound.tag !== element.tag) return false;
  const id = attribute(element, 'id');
  if (!compound.id.every((name) => name === id)) return false;
  if (compound.classes.length === 0) return true;
  const classes = (attribute(element, 'class') ?? '').split(/\s+/);
  return compound.classes.every((name) => classes.includes(name));
}
