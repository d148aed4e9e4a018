/** SVG text to a plain element tree, with the limits that keep a hostile file harmless. */
import { DOMParser, type Element, type Node } from '@xmldom/xmldom';
import { fail, problem, succeed, type Problem, type Result } from '../../base/result';
import type { SvgElement } from './element';
import { MAX_CHARACTERS, MAX_DEPTH, MAX_ELEMENTS } from './limits';
import { place } from './report';

const SVG_NAMESPACE = 'http://www.w3.org/2000/svg';
const XLINK_NAMESPACE = 'http://www.w3.org/1999/xlink';
const ELEMENT_NODE = 1;
const TEXT_NODES = [3, 4];

export interface ParsedSvg {
  readonly root: SvgElement;
  /** Style sheets that the file asks for from outside; never fetched. */
  readonly outsideStyles: number;
}

/**
 * The element tree of an SVG text. Problems: `svg-too-large`, `svg-entity`, `svg-too-complex`,
 * `svg-xml` (with line), `svg-not-svg`.
 */
export function parseSvg(text: string, file: string): Result<ParsedSvg> {
  const refused = checkSize(text, file) ?? checkEntities(text, file);
  if (refused) return fail(refused);
  const parsed = parseXml(text.replace(/^\uFEFF/, ''), file);
  if (!parsed.ok) return parsed;
  const { element, outsideStyles } = parsed.value;
  if (element.localName !== 'svg') return fail(notSvg(element, file));
  const root = toTree(element);
  if (!root) return fail(tooComplex(file, `elements are nested more than ${MAX_DEPTH} deep`));
  return succeed({ root, outsideStyles }, parsed.problems);
}

function checkSize(text: string, file: string): Problem | null {
  if (text.length > MAX_CHARACTERS) {
    const megabytes = (text.length / 1_000_000).toFixed(1);
    return problem(
      'svg-too-large',
      file,
      `the drawing is ${megabytes} MB, the most that is read is ${MAX_CHARACTERS / 1_000_000} MB`,
      'remove pictures and hidden layers, or simplify the paths',
    );
  }
  let tags = 0;
  for (let at = text.indexOf('<'); at >= 0; at = text.indexOf('<', at + 1)) {
    if (++tags > 3 * MAX_ELEMENTS) {
      return tooComplex(file, `the drawing has more than ${MAX_ELEMENTS} elements`);
    }
  }
  return null;
}

const tooComplex = (file: string, what: string): Problem =>
  problem('svg-too-complex', file, what, 'simplify the drawing: keep only what is to be mown');

/** Entities can grow without end when they are expanded, so a file that declares any is refused. */
function checkEntities(text: string, file: string): Problem | null {
  const at = text.search(/<!ENTITY/i);
  if (at < 0) return null;
  const line = text.slice(0, at).split('\n').length;
  return problem(
    'svg-entity',
    place(file, line),
    'the file declares XML entities, which are not read',
    'save the drawing as plain SVG',
  );
}

interface ParsedXml {
  readonly element: Element;
  readonly outsideStyles: number;
}

function parseXml(text: string, file: string): Result<ParsedXml> {
  const errors: Problem[] = [];
  const warnings: Problem[] = [];
  const onError = (level: string, message: string, context: unknown): void => {
    const found = xmlProblem(file, message, lineOf(context), level);
    if (level === 'warning') warnings.push(found);
    else errors.push(found);
  };
  let element: Element | null = null;
  let outsideStyles = 0;
  try {
    const document = new DOMParser({ onError }).parseFromString(text, 'text/xml');
    element = document.documentElement;
    for (const node of document.childNodes) {
      if (node.nodeName === 'xml-stylesheet') outsideStyles += 1;
    }
  } catch (error) {
    // The reader stops by throwing; the same mistake has mostly gone through onError already.
    if (errors.length === 0) errors.push(xmlProblem(file, messageOf(error), 0, 'fatalError'));
  }
  if (errors.length > 0) return fail(...errors.slice(0, 5));
  if (!element) return fail(xmlProblem(file, 'the file is empty', 0, 'fatalError'));
  return succeed({ element, outsideStyles }, warnings.slice(0, 5));
}

function xmlProblem(file: string, message: string, line: number, level: string): Problem {
  const first = message.split('\n')[0]!.slice(0, 200);
  return problem(
    'svg-xml',
    place(file, line),
    `the file is not well-formed XML: ${first}`,
    'save the drawing again from the drawing program',
    level === 'warning' ? 'warning' : 'error',
  );
}

const messageOf = (error: unknown): string =>
  error instanceof Error ? error.message : 'it cannot be read';

function lineOf(context: unknown): number {
  const locator = (context as { locator?: { lineNumber?: unknown } } | undefined)?.locator;
  return typeof locator?.lineNumber === 'number' ? locator.lineNumber : 0;
}

const notSvg = (element: Element, file: string): Problem =>
  problem(
    'svg-not-svg',
    place(file, element.lineNumber ?? 0),
    `the file holds <${element.nodeName}>, not an SVG drawing`,
    'choose an SVG file',
  );

/** The tree of SVG elements, without recursion; null when it is nested too deep. */
function toTree(element: Element): SvgElement | null {
  const root = toElement(element, null);
  const stack: { from: Element; to: SvgElement; depth: number }[] = [
    { from: element, to: root, depth: 1 },
  ];
  for (let next = stack.pop(); next; next = stack.pop()) {
    if (next.depth > MAX_DEPTH) return null;
    for (const node of next.from.childNodes) {
      if (!isSvgElement(node)) continue;
      const child = toElement(node, next.to);
      next.to.children.push(child);
      stack.push({ from: node, to: child, depth: next.depth + 1 });
    }
  }
  return root;
}

/** Elements of drawing programs' own namespaces hold settings, not shapes. */
function isSvgElement(node: Node): node is Element {
  if (node.nodeType !== ELEMENT_NODE) return false;
  const { namespaceURI } = node as Element;
  return namespaceURI === SVG_NAMESPACE || namespaceURI === null || namespaceURI === '';
}

function toElement(element: Element, parent: SvgElement | null): SvgElement {
  let text = '';
  for (const node of element.childNodes) {
    if (TEXT_NODES.includes(node.nodeType)) text += node.nodeValue ?? '';
  }
  return {
    tag: element.localName ?? element.nodeName,
    line: element.lineNumber ?? 0,
    attributes: attributesOf(element),
    parent,
    children: [],
    text,
  };
}

function attributesOf(element: Element): Map<string, string> {
  const out = new Map<string, string>();
  for (const { name, localName, namespaceURI, value } of element.attributes) {
    const link = namespaceURI === XLINK_NAMESPACE && localName === 'href';
    if (link && element.hasAttribute('href')) continue;
    out.set(link ? 'href' : name, value);
  }
  return out;
}
