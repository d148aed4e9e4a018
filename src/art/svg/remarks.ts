/** What is in a drawing beside shapes that can be drawn: said once, and left alone. */
import type { Declaration } from './css';
import { attribute, describe, type SvgElement } from './element';
import type { RemarkCode, Report } from './report';
import { unfollowedProperties, type Style } from './style';

const LEFT_OUT: Readonly<Record<string, RemarkCode>> = {
  text: 'svg-text',
  tspan: 'svg-text',
  textPath: 'svg-text',
  image: 'svg-image',
  script: 'svg-script',
  foreignObject: 'svg-foreign',
  animate: 'svg-animation',
  animateColor: 'svg-animation',
  animateMotion: 'svg-animation',
  animateTransform: 'svg-animation',
  set: 'svg-animation',
};

/** Reports an element that is never drawn; true when it, with all inside it, is to be left out. */
export function reportBeside(element: SvgElement, report: Report): boolean {
  const code = Object.hasOwn(LEFT_OUT, element.tag) ? LEFT_OUT[element.tag] : undefined;
  if (code) report.add(code, describe(element), element.line);
  return code !== undefined;
}

/** Scripts and event handlers anywhere in the file, definitions included. */
export function reportScripts(elements: readonly SvgElement[], report: Report): void {
  for (const element of elements) {
    for (const [name, value] of element.attributes) {
      const runs = /^on[a-z]+$/i.test(name) || /^\s*javascript:/i.test(value);
      if (runs) report.add('svg-script', `${name} on ${describe(element)}`, element.line);
    }
    if (element.tag === 'script' && !isDrawnPlace(element)) {
      report.add('svg-script', describe(element), element.line);
    }
    for (const child of element.children) {
      if (isShapeAnimation(element, child))
        report.add('svg-animation', describe(child), child.line);
    }
  }
}

/** Places whose children the walk itself visits and reports. */
const isDrawnPlace = (element: SvgElement): boolean => {
  for (let up = element.parent; up; up = up.parent) {
    if (!['svg', 'g', 'a'].includes(up.tag)) return false;
  }
  return true;
};

/** Animation of a single shape stands inside the shape, where the walk does not go. */
const isShapeAnimation = (parent: SvgElement, child: SvgElement): boolean =>
  LEFT_OUT[child.tag] === 'svg-animation' && !['svg', 'g', 'a', 'switch'].includes(parent.tag);

/** Clips, masks, filters, markers and CSS geometry on an element that is drawn. */
export function reportStyle(
  element: SvgElement,
  style: Style,
  declared: readonly Declaration[],
  report: Report,
): void {
  const say = (code: RemarkCode, name: string, value: string): void =>
    report.add(code, `${name} "${value.slice(0, 60)}" on ${describe(element)}`, element.line);
  for (const [property, code] of WHOLE) {
    const value = style[property];
    if (value !== 'none') say(isOutside(value) ? 'svg-external' : code, property, value);
  }
  for (const property of MARKERS) {
    const value = style[property];
    if (value !== 'none' && MARKED_TAGS.has(element.tag)) say('svg-marker', property, value);
  }
  for (const property of unfollowedProperties(declared)) {
    report.add('svg-style', `CSS property ${property} on ${describe(element)}`, element.line);
  }
}

const WHOLE = [
  ['clip-path', 'svg-clip'],
  ['mask', 'svg-mask'],
  ['filter', 'svg-filter'],
] as const;

const MARKERS = ['marker-start', 'marker-mid', 'marker-end'] as const;
const MARKED_TAGS: ReadonlySet<string> = new Set(['path', 'line', 'polyline', 'polygon']);

/** `url(...)` of anything but a name in the file. */
const isOutside = (value: string): boolean => /url\(\s*['"]?(?!\s*#)[^)'"\s]/i.test(value);

/** Style sheets' own leavings: selectors not understood, imports not fetched. */
export function reportSheets(
  sheet: { readonly skipped: readonly string[]; readonly outside: readonly string[] },
  line: number,
  report: Report,
): void {
  for (const text of sheet.skipped) report.add('svg-style', `"${text.slice(0, 60)}"`, line);
  for (const text of sheet.outside) report.add('svg-external', `"${text.slice(0, 60)}"`, line);
}

/** Links to style sheets outside the file. */
export function reportLinks(
  elements: readonly SvgElement[],
  outside: number,
  report: Report,
): void {
  if (outside > 0) report.add('svg-external', 'a linked style sheet', 0);
  for (const element of elements) {
    if (element.tag !== 'link') continue;
    const href = attribute(element, 'href') ?? '';
    report.add('svg-external', `link to "${href.slice(0, 60)}"`, element.line);
  }
}
