/** The few helpers the page builds its elements with. Texts always go in as text, never as markup. */

export type AttributeValue = string | number | boolean | null;
export type Attributes = Readonly<Record<string, AttributeValue>>;
export type Child = Node | string;

const SVG = "http://www.w3.org/2000/svg";

export function el<K extends keyof HTMLElementTagNameMap>(
  tag: K,
  attributes: Attributes = {},
  ...children: readonly Child[]
): HTMLElementTagNameMap[K] {
  const element = document.createElement(tag);
  setAttributes(element, attributes);
  element.append(...children);
  return element;
}

export function svg<K extends keyof SVGElementTagNameMap>(
  tag: K,
  attributes: Attributes = {},
  ...children: readonly Child[]
): SVGElementTagNameMap[K] {
  const element = document.createElementNS(SVG, tag);
  setAttributes(element, attributes);
  element.append(...children);
  return element;
}

/** Set attributes that differ; `null` and `false` take one away, `true` sets it empty. */
export function setAttributes(element: Element, attributes: Attributes): void {
  for (const [name, value] of Object.entries(attributes)) {
    if (value === null || value === false) element.removeAttribute(name);
    else if (element.getAttribute(name) !== attributeText(value))
      element.setAttribute(name, attributeText(value));
  }
}

function attributeText(value: string | number | true): string {
  return value === true ? "" : String(value);
}

/** Set a text that differs: an unchanged one is not announced again. */
export function setText(element: Element, text: string): void {
  if (element.textContent !== text) element.textContent = text;
}

export function setHidden(element: Element, hidden: boolean): void {
  setAttributes(element, { hidden });
  // SVG has no `hidden` of its own: the style sheet reads the attribute for both.
}

/**
 * Give a parent one child for each item, the old children used again in order, so that an update takes neither focus
 * nor scroll place from what stays.
 */
export function keepChildren<T, E extends Element>(
  parent: Element,
  items: readonly T[],
  create: (index: number) => E,
  update: (element: E, item: T, index: number) => void,
): void {
  const kept = childrenMadeBy.get(parent) ?? [];
  childrenMadeBy.set(parent, kept);
  while (kept.length > items.length) kept.pop()?.remove();
  for (const [index, item] of items.entries()) {
    if (kept.length <= index) {
      const made = create(index);
      kept.push(made);
      parent.append(made);
    }
    const child = kept[index];
    // Each parent is only ever filled by one kind of call, so its children are of that call's kind.
    if (child) update(child as E, item, index);
  }
}

const childrenMadeBy = new WeakMap<Element, Element[]>();

let lastId = 0;

/** An id that no other element of the page has. */
export function freshId(stem: string): string {
  lastId += 1;
  return `${stem}-${lastId}`;
}
