/** The style of an element: attributes, then style sheets, then its own `style`, then inheritance. */
import { matchingRules, parseDeclarations, type Declaration, type RuleIndex } from './css';
import { attribute, type SvgElement } from './element';

/** Properties that a child takes over from its parent, with their initial values. */
const INHERITED = {
  fill: 'black',
  'fill-rule': 'nonzero',
  'fill-opacity': '1',
  stroke: 'none',
  'stroke-width': '1',
  'stroke-linecap': 'butt',
  'stroke-linejoin': 'miter',
  'stroke-miterlimit': '4',
  'stroke-dasharray': 'none',
  'stroke-dashoffset': '0',
  'stroke-opacity': '1',
  'paint-order': 'normal',
  visibility: 'visible',
  color: 'black',
  'marker-start': 'none',
  'marker-mid': 'none',
  'marker-end': 'none',
} as const;

/** Properties that start afresh on every element. */
const OWN = {
  opacity: '1',
  display: 'inline',
  'clip-path': 'none',
  mask: 'none',
  filter: 'none',
  overflow: 'hidden',
  'vector-effect': 'none',
} as const;

export type Property = keyof typeof INHERITED | keyof typeof OWN;
export type Style = Readonly<Record<Property, string>>;

/** The style that the root inherits: every property's initial value. */
export const INITIAL_STYLE: Style = { ...INHERITED, ...OWN };

const PROPERTIES = Object.keys(INITIAL_STYLE) as Property[];
const isInherited = (property: Property): boolean => Object.hasOwn(INHERITED, property);
const isProperty = (name: string): name is Property => Object.hasOwn(INITIAL_STYLE, name);

/** Says whether a value can be used; a useless one is skipped, as CSS asks. */
export type ValueCheck = (property: Property, value: string) => boolean;

/**
 * The element's style under its parent's, with what is declared for it. Precedence, weakest first: attributes, rules by
 * specificity and order, the `style` attribute, then the same again for what is `!important`.
 */
export function styleOf(
  element: SvgElement,
  declared: readonly Declaration[],
  parent: Style,
  usable: ValueCheck,
): Style {
  const style: Record<Property, string> = { ...parent, ...OWN };
  const apply = (property: Property, value: string): void => {
    if (!usable(property, value)) return;
    style[property] = resolveKeyword(property, value, parent);
  };
  for (const property of PROPERTIES) {
    const value = attribute(element, property);
    if (value !== undefined) apply(property, value.trim());
  }
  for (const important of [false, true]) {
    for (const d of declared) {
      if (d.important === important && isProperty(d.property)) apply(d.property, d.value);
    }
  }
  return style;
}

function resolveKeyword(property: Property, value: string, parent: Style): string {
  if (value === 'inherit') return parent[property];
  if (value === 'initial') return INITIAL_STYLE[property];
  if (value === 'unset') return isInherited(property) ? parent[property] : INITIAL_STYLE[property];
  return value;
}

/** Everything declared for the element, weakest first; `marker` stands for its three parts. */
export function declarationsFor(element: SvgElement, rules: RuleIndex): Declaration[] {
  const ordered = matchingRules(rules, element);
  const own = parseDeclarations(attribute(element, 'style') ?? '');
  return [...ordered.flatMap((rule) => rule.declarations), ...own].flatMap(expandMarker);
}

function expandMarker(d: Declaration): Declaration[] {
  if (d.property !== 'marker') return [d];
  return ['marker-start', 'marker-mid', 'marker-end'].map((property) => ({ ...d, property }));
}

/** Properties set in CSS that change a shape and are not followed. */
export const unfollowedProperties = (declared: readonly Declaration[]): string[] =>
  declared.map((d) => d.property).filter((property) => UNFOLLOWED.has(property));

const UNFOLLOWED: ReadonlySet<string> = new Set([
  'transform',
  'rotate',
  'scale',
  'translate',
  'd',
  'x',
  'y',
  'cx',
  'cy',
  'r',
  'rx',
  'ry',
  'width',
  'height',
]);
