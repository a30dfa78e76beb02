/** Makers of elements. Text goes in as text: nothing of a drawing or a file is ever read as markup. */
const SVG = 'http://www.w3.org/2000/svg';

export type Attributes = Readonly<Record<string, string | number | undefined>>;

export function svg<Name extends keyof SVGElementTagNameMap>(name: Name, attributes: Attributes = {}, children: readonly (Node | string)[] = []): SVGElementTagNameMap[Name] {
  return filled(document.createElementNS(SVG, name), attributes, children);
}

export function html<Name extends keyof HTMLElementTagNameMap>(name: Name, attributes: Attributes = {}, children: readonly (Node | string)[] = []): HTMLElementTagNameMap[Name] {
  return filled(document.createElement(name), attributes, children);
}

export function setAttributes(element: Element, attributes: Attributes): void {
  for (const [name, value] of Object.entries(attributes)) {
    if (value === undefined) element.removeAttribute(name);
    else if (element.getAttribute(name) !== String(value)) element.setAttribute(name, String(value));
  }
}

function filled<Kind extends Element>(element: Kind, attributes: Attributes, children: readonly (Node | string)[]): Kind {
  setAttributes(element, attributes);
  element.append(...children);
  return element;
}
