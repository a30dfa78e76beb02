import type { NameLevel } from './drawing.ts';
import { unescaped } from './names.ts';
import { classesOf } from './style-sheet.ts';
import { attributeByLocalName, textWithin, type XmlElement } from './xml.ts';

const GROUPS: ReadonlySet<string> = new Set(['g', 'svg', 'a', 'symbol', 'use', 'switch']);

/** What an SVG element is called; undefined when it has no name at all. */
export function nameLevelOf(element: XmlElement, key: number): NameLevel | undefined {
  const data = Object.keys(element.attributes).filter((name) => name.startsWith('data-')).map((name) => element.attributes[name]);
  const title = element.children.find(({ name, svg }) => svg && name === 'title');
  const classes = classesOf(element);
  const group = GROUPS.has(element.name);
  const names = [...data, attributeByLocalName(element, 'label'), title && textWithin(title), ...classes, attributeByLocalName(element, 'id')].filter((name) => name !== undefined && name !== '') as string[];
  // A group without a name still tells which lines belong together.
  return names.length === 0 && !group ? undefined : { group, id: element.attributes.id, classes, names, key };
}

/** `path#k3 in layer "Stanze"`, as the artist finds it again. */
export function describeElement(element: XmlElement, groups: readonly NameLevel[]): string {
  const own = element.attributes.id === undefined ? `${element.name} ${element.ordinal} (line ${element.line})` : `${element.name}#${element.attributes.id}`;
  const layer = groups.find(({ group, names }) => group && names.length > 0);
  return layer ? `${own} in layer "${unescaped(layer.names[0])}"` : own;
}
