/** Through the tree in paint order: groups, copies and nested drawings down to painted shapes. */
import { affineCompose, affineTranslate, IDENTITY, type Affine } from '../../geometry/affine';
import type { Point } from '../../geometry/point';
import { outlineMap, outlineSize } from '../outline';
import { brushesOf, isUsable, readOpacity } from './brushes';
import type { RuleIndex } from './css';
import { attribute, describe, type SvgElement } from './element';
import { MAX_DASHED, MAX_DEPTH, MAX_PAINTED, MAX_PATH_CHARACTERS, MAX_SEGMENTS } from './limits';
import { readLength } from './numbers';
import type { Brush, PaintItem } from './paint-item';
import { reportBeside, reportStyle } from './remarks';
import type { Report } from './report';
import { SHAPE_TAGS, shapeOutline, wholeOf, type Extent } from './shapes';
import { declarationsFor, styleOf, type Property, type Style } from './style';
import { readTransform } from './transform';
import { fitViewBox, mapFrame, readViewBox, type Frame } from './viewport';

/** What holds for everything inside an element. */
interface Context {
  readonly map: Affine;
  readonly style: Style;
  readonly opacity: number;
  readonly extent: Extent;
  readonly clips: readonly (readonly Point[])[];
  /** Elements being copied by `use`, outermost first. */
  readonly copying: readonly SvgElement[];
  readonly depth: number;
}

/** The drawing being walked; the lists grow on the way. */
export interface Walk {
  readonly rules: RuleIndex;
  readonly byId: ReadonlyMap<string, SvgElement>;
  readonly report: Report;
  readonly items: PaintItem[];
  /** Lines and curves so far. */
  segments: number;
  /** Elements entered so far, copies counted each time. */
  entered: number;
  /** Characters of path data so far. */
  characters: number;
  /** Dashed lines so far. */
  dashed: number;
  /** Set when a limit was passed: which one, in words. */
  exceeded: string | null;
}

/** How large a copied `symbol` or `svg` is, when the copy says so. */
type CopySize = { readonly width?: string | undefined; readonly height?: string | undefined };

/** Walks the whole drawing from its root; painted shapes end up in `walk.items`. */
export function walkDrawing(walk: Walk, root: SvgElement, style: Style): void {
  const page = rootFrame(root);
  const context: Context = {
    map: IDENTITY,
    style,
    opacity: 1,
    extent: page,
    clips: [],
    copying: [],
    depth: 0,
  };
  enter(walk, root, context, {});
}

/** Size of the page: width and height, else the view box, else nothing known. */
function rootFrame(root: SvgElement): Frame {
  const viewBox = readViewBox(attribute(root, 'viewBox'));
  const box = viewBox === null || viewBox === 'bad' ? null : viewBox;
  const side = (name: 'width' | 'height'): number => {
    const text = attribute(root, name);
    const given = text === undefined || text.includes('%') ? null : readLength(text, 0);
    return given ?? box?.[name] ?? 0;
  };
  return { x: 0, y: 0, width: side('width'), height: side('height') };
}

function enter(walk: Walk, element: SvgElement, outer: Context, size: CopySize): void {
  if (walk.exceeded !== null) return;
  walk.entered += 1;
  if (outer.depth > MAX_DEPTH) walk.exceeded = `elements are nested more than ${MAX_DEPTH} deep`;
  if (walk.entered > MAX_PAINTED) walk.exceeded = `more than ${MAX_PAINTED} elements are painted`;
  if (walk.exceeded !== null) return;
  const inner = innerContext(walk, element, outer);
  if (!inner || reportBeside(element, walk.report)) return;
  visit(walk, element, inner, size);
}

/** The context inside the element; null when nothing of it shows or its transform is unreadable. */
function innerContext(walk: Walk, element: SvgElement, outer: Context): Context | null {
  const usable = (property: Property, value: string): boolean => {
    const fine = isUsable(property, value);
    if (!fine && (property === 'fill' || property === 'stroke')) {
      const subject = `${property} "${value.slice(0, 40)}" on ${describe(element)}`;
      walk.report.add('svg-colour', subject, element.line);
    }
    return fine;
  };
  const declared = declarationsFor(element, walk.rules);
  const style = styleOf(element, declared, outer.style, usable);
  const opacity = outer.opacity * readOpacity(style.opacity);
  if (style.display === 'none' || opacity === 0) return null;
  const own = readTransform(attribute(element, 'transform') ?? '');
  if (!own) {
    walk.report.add('svg-transform', describe(element), element.line);
    return null;
  }
  reportStyle(element, style, declared, walk.report);
  const map = affineCompose(outer.map, own);
  return { ...outer, map, style, opacity, depth: outer.depth + 1 };
}

function visit(walk: Walk, element: SvgElement, context: Context, size: CopySize): void {
  if (SHAPE_TAGS.has(element.tag)) paintShape(walk, element, context);
  else if (element.tag === 'use') copy(walk, element, context);
  else if (element.tag === 'svg') enterFrame(walk, element, context, size);
  else if (element.tag === 'symbol' && isCopied(element, context)) {
    enterFrame(walk, element, context, size);
  } else if (element.tag === 'g' || element.tag === 'a') enterAll(walk, element, context);
  else if (element.tag === 'switch') enterFirst(walk, element, context);
}

const isCopied = (element: SvgElement, context: Context): boolean =>
  context.copying[context.copying.length - 1] === element;

function enterAll(walk: Walk, element: SvgElement, context: Context): void {
  for (const child of element.children) enter(walk, child, context, {});
}

/** `switch` shows its first child that asks for nothing special. */
function enterFirst(walk: Walk, element: SvgElement, context: Context): void {
  const asks = ['systemLanguage', 'requiredExtensions'];
  const plain = element.children.find((c) => asks.every((name) => !c.attributes.has(name)));
  if (plain) enter(walk, plain, context, {});
}

/** An `svg` or a copied `symbol`: its view box fitted into its place, what is outside cut off. */
function enterFrame(walk: Walk, element: SvgElement, context: Context, size: CopySize): void {
  const viewBox = readViewBox(attribute(element, 'viewBox'));
  const root = element.parent === null;
  const place = root ? rootFrame(element) : innerFrame(element, context.extent, size);
  if (viewBox === 'bad' || !place || (!root && (place.width <= 0 || place.height <= 0))) {
    walk.report.add('svg-viewbox', describe(element), element.line);
    return;
  }
  const sized = place.width > 0 && place.height > 0;
  const aspect = attribute(element, 'preserveAspectRatio');
  const fit = viewBox && sized ? fitViewBox(viewBox, place, aspect) : shift(place);
  const shows = context.style.overflow === 'visible' && !root;
  const clips = sized && !shows ? [...context.clips, mapFrame(place, context.map)] : context.clips;
  const extent = viewBox ?? place;
  enterAll(walk, element, { ...context, map: affineCompose(context.map, fit), clips, extent });
}

const shift = (place: Frame): Affine => affineTranslate(place.x, place.y);

/** Where a nested drawing goes; null when a number cannot be read. */
function innerFrame(element: SvgElement, extent: Extent, size: CopySize): Frame | null {
  const read = (text: string | undefined, axis: 'x' | 'y', other: string): number | null =>
    readLength(text ?? other, wholeOf(axis, extent));
  const symbol = element.tag === 'symbol';
  const x = read(symbol ? '0' : attribute(element, 'x'), 'x', '0');
  const y = read(symbol ? '0' : attribute(element, 'y'), 'y', '0');
  const width = read(size.width ?? attribute(element, 'width'), 'x', '100%');
  const height = read(size.height ?? attribute(element, 'height'), 'y', '100%');
  if (x === null || y === null || width === null || height === null) return null;
  return { x, y, width, height };
}

/** `use`: the named element again, moved by x and y. */
function copy(walk: Walk, element: SvgElement, context: Context): void {
  const subject = describe(element);
  const target = copyTarget(walk, element, subject);
  if (!target) return;
  if (context.copying.includes(target) || isAncestor(target, element)) {
    walk.report.add('svg-use-loop', subject, element.line);
    return;
  }
  const x = readLength(attribute(element, 'x') ?? '0', context.extent.width);
  const y = readLength(attribute(element, 'y') ?? '0', context.extent.height);
  if (x === null || y === null) {
    walk.report.add('svg-number', subject, element.line);
    return;
  }
  const map = affineCompose(context.map, affineTranslate(x, y));
  const size = { width: attribute(element, 'width'), height: attribute(element, 'height') };
  enter(walk, target, { ...context, map, copying: [...context.copying, target] }, size);
}

function copyTarget(walk: Walk, element: SvgElement, subject: string): SvgElement | null {
  const href = (attribute(element, 'href') ?? '').trim();
  const target = href.startsWith('#') ? walk.byId.get(href.slice(1)) : undefined;
  if (target) return target;
  const outside = href !== '' && !href.startsWith('#');
  const named = `${subject} of "${href.slice(0, 60)}"`;
  walk.report.add(outside ? 'svg-external' : 'svg-use-missing', named, element.line);
  return null;
}

function isAncestor(target: SvgElement, element: SvgElement): boolean {
  for (let up: SvgElement | null = element; up; up = up.parent) if (up === target) return true;
  return false;
}

function paintShape(walk: Walk, element: SvgElement, context: Context): void {
  if (context.style.visibility !== 'visible') return;
  walk.characters += (attribute(element, 'd') ?? '').length;
  if (walk.characters > MAX_PATH_CHARACTERS) {
    walk.exceeded = `more than ${MAX_PATH_CHARACTERS} characters of path data are painted`;
    return;
  }
  const { outline, flaw } = shapeOutline(element, context.extent);
  const subject = describe(element);
  if (flaw !== 'none') {
    walk.report.add(flaw === 'broken' ? 'svg-path' : 'svg-number', subject, element.line);
  }
  if (outline.length === 0) return;
  walk.segments += outlineSize(outline);
  if (walk.segments > MAX_SEGMENTS) {
    walk.exceeded = `more than ${MAX_SEGMENTS} lines and curves are painted`;
    return;
  }
  const { style, extent, opacity, clips } = context;
  for (const { brush, tone } of brushesOf(element, style, extent, opacity, walk.report)) {
    const fixed = brush.kind === 'stroke' && style['vector-effect'] === 'non-scaling-stroke';
    walk.items.push({
      outline: fixed ? outlineMap(outline, context.map) : outline,
      map: fixed ? IDENTITY : context.map,
      brush: countDashes(walk, brush, element),
      tone,
      clips,
      subject,
      line: element.line,
    });
  }
}

/** The brush, solid once the drawing has too many dashed lines. */
function countDashes(walk: Walk, brush: Brush, element: SvgElement): Brush {
  if (brush.kind === 'fill' || brush.pen.dashes.length === 0) return brush;
  walk.dashed += 1;
  if (walk.dashed <= MAX_DASHED) return brush;
  walk.report.add('svg-dashes', describe(element), element.line);
  return { kind: 'stroke', pen: { ...brush.pen, dashes: [] } };
}
