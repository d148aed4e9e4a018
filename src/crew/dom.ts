/** Making elements: text only ever goes in as text, never as markup. */

type Child = Node | string | null;
type Value = string | number | boolean | null | ((event: Event) => void);

/**
 * An element with attributes and children. `on…` keys listen; `true` sets a bare attribute; null and
 * false set none.
 */
export function el<K extends keyof HTMLElementTagNameMap>(
  tag: K,
  attributes: Readonly<Record<string, Value>> = {},
  ...children: readonly Child[]
): HTMLElementTagNameMap[K] {
  const node = document.createElement(tag);
  setAttributes(node, attributes);
  node.append(...children.filter((child) => child !== null));
  return node;
}

/** The same for a part of a drawing. */
export function svg(
  tag: string,
  attributes: Readonly<Record<string, Value>> = {},
  ...children: readonly Child[]
): SVGElement {
  const node = document.createElementNS('http://www.w3.org/2000/svg', tag);
  setAttributes(node, attributes);
  node.append(...children.filter((child) => child !== null));
  return node;
}

function setAttributes(node: Element, attributes: Readonly<Record<string, Value>>): void {
  for (const [name, value] of Object.entries(attributes)) {
    if (typeof value === 'function') node.addEventListener(name.slice(2), value);
    else if (value === true) node.setAttribute(name, '');
    else if (value !== null && value !== false) node.setAttribute(name, String(value));
  }
}

/** A button; `name` is said by a screen reader when it is more than the text. */
export const button = (
  className: string,
  text: string | Node,
  press: () => void,
  attributes: Readonly<Record<string, Value>> = {},
): HTMLButtonElement =>
  el('button', { type: 'button', class: className, onclick: press, ...attributes }, text);
