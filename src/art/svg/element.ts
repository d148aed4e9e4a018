/** The drawing as a plain tree, free of the XML reader's classes. */

export interface SvgElement {
  /** Name without its prefix. */
  readonly tag: string;
  readonly line: number;
  /** By name without prefix for `xlink:href`; a plain `href` wins. */
  readonly attributes: ReadonlyMap<string, string>;
  readonly parent: SvgElement | null;
  readonly children: SvgElement[];
  /** Text directly inside, CDATA included (used for style sheets). */
  readonly text: string;
}

/** The attribute's text; undefined when the element has none of that name. */
export const attribute = (element: SvgElement, name: string): string | undefined =>
  element.attributes.get(name);

/** `<tag>`, or `<tag id="…">` when it has a name. */
export function describe(element: SvgElement): string {
  const id = attribute(element, 'id');
  return id ? `<${element.tag} id="${id.slice(0, 40)}">` : `<${element.tag}>`;
}

/** All elements in document order. */
export function allElements(root: SvgElement): SvgElement[] {
  const out: SvgElement[] = [];
  const stack = [root];
  for (let next = stack.pop(); next; next = stack.pop()) {
    out.push(next);
    for (let i = next.children.length - 1; i >= 0; i--) stack.push(next.children[i]!);
  }
  return out;
}
