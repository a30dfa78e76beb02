import { SaxesParser } from 'saxes';
import { inputError, type Issue } from '../base/issue.ts';
import { READING_LIMITS } from './limits.ts';

const SVG_NAMESPACE = 'http://www.w3.org/2000/svg';

/** An element of the file. Attributes keep their prefixes as written. */
export interface XmlElement {
  /** Local name. */
  readonly name: string;
  /** Of the SVG namespace, or without any. */
  readonly svg: boolean;
  readonly attributes: Readonly<Record<string, string>>;
  readonly parent: XmlElement | undefined;
  readonly children: readonly XmlElement[];
  /** Character data directly within it. */
  readonly text: string;
  /** Of the elements of a text: character data and children in their order. */
  readonly runs?: readonly (string | XmlElement)[];
  /** Which of the elements of its name it is, counted from 1. */
  readonly ordinal: number;
  /** Line in the file, counted from 1. */
  readonly line: number;
}

interface GrowingElement extends XmlElement {
  readonly children: GrowingElement[];
  text: string;
  readonly runs?: (string | XmlElement)[];
}

/** Element text beyond this is dropped: only titles, labels and style sheets are read. */
const CHARACTERS_KEPT = READING_LIMITS.styleCharacters;

const TEXTS: ReadonlySet<string> = new Set(['text', 'tspan', 'textPath']);

/**
 * The tree of an XML file. Nothing outside the file is fetched; entities other than short plain ones of the file itself
 * are left as they stand and named in an issue. Throws InputError where it is no XML or a limit is passed.
 */
export function parseXml(text: string): { readonly root: XmlElement; readonly issues: readonly Issue[] } {
  const parser = new SaxesParser({ position: true });
  const open: GrowingElement[] = [];
  const issues: Issue[] = [];
  let root: GrowingElement | undefined;
  let count = 0;
  const ordinals = new Map<string, number>();

  parser.on('error', (error) => {
    const reason = error.message.replace(/^\d+:\d+:\s*/, '').replace(/\.$/, '');
    if (/undefined entity/.test(reason)) {
      if (!issues.some(({ code }) => code === 'entity-not-followed')) {
        issues.push({ code: 'entity-not-followed', severity: 'warning', where: `line ${parser.line}` });
      }
      return;
    }
    throw inputError('drawing-not-xml', { where: `line ${parser.line}`, facts: { reason } });
  });
  parser.on('doctype', (doctype) => {
    Object.assign(parser.ENTITIES, plainEntities(doctype));
  });
  parser.on('processinginstruction', ({ target, body }) => {
    if (target === 'xml-stylesheet') issues.push({ code: 'link-not-followed', severity: 'warning', where: target, facts: { link: body } });
  });
  parser.on('opentag', (tag) => {
    const attributes = tag.attributes as Record<string, string>;
    const parent = open[open.length - 1];
    const [prefix, name] = splitName(tag.name);
    const ordinal = (ordinals.get(name) ?? 0) + 1;
    ordinals.set(name, ordinal);
    const element: GrowingElement = {
      name,
      svg: namespaceOf(prefix, attributes, parent) === SVG_NAMESPACE,
      attributes,
      parent,
      children: [],
      text: '',
      ordinal,
      line: parser.line,
      ...(TEXTS.has(name) && { runs: [] }),
    };
    if (++count > READING_LIMITS.elements) throw limitPassed('elements', READING_LIMITS.elements);
    if (open.length >= READING_LIMITS.xmlDepth) throw limitPassed('levels of elements', READING_LIMITS.xmlDepth);
    parent?.children.push(element);
    parent?.runs?.push(element);
    root ??= element;
    open.push(element);
  });
  parser.on('closetag', () => void open.pop());
  const addText = (characters: string) => {
    const element = open[open.length - 1];
    if (!element || element.text.length >= CHARACTERS_KEPT) return;
    element.text += characters;
    element.runs?.push(characters);
  };
  parser.on('text', addText);
  parser.on('cdata', addText);
  parser.write(text).close();
  if (!root) throw inputError('drawing-not-xml', { where: 'line 1', facts: { reason: 'it holds no element' } });
  return { root, issues };
}

export function limitPassed(what: string, limit: number): Error {
  return inputError('drawing-limit', { facts: { what, limit } });
}

/** `inkscape:label` → `['inkscape', 'label']`. */
export function splitName(name: string): [prefix: string, local: string] {
  const colon = name.indexOf(':');
  return colon < 0 ? ['', name] : [name.slice(0, colon), name.slice(colon + 1)];
}

/** Files without any declaration are taken for SVG: many hand-made ones have none. */
function namespaceOf(prefix: string, own: Readonly<Record<string, string>>, parent: XmlElement | undefined): string | undefined {
  const attribute = prefix === '' ? 'xmlns' : `xmlns:${prefix}`;
  if (own[attribute] !== undefined) return own[attribute];
  for (let element = parent; element; element = element.parent) {
    if (element.attributes[attribute] !== undefined) return element.attributes[attribute];
  }
  return prefix === '' || prefix === 'svg' ? SVG_NAMESPACE : undefined;
}

/**
 * Internal entities whose text is short, without markup and without further entities, as drawing programs declare them
 * for namespaces. One level, so nothing can grow; external ones are never looked at.
 */
function plainEntities(doctype: string): Record<string, string> {
  const found: Record<string, string> = {};
  const declaration = /<!ENTITY\s+([A-Za-z_][\w.-]*)\s+(?:"([^"]*)"|'([^']*)')\s*>/g;
  for (const [, name, double, single] of [...doctype.matchAll(declaration)].slice(0, READING_LIMITS.entities)) {
    const text = double ?? single;
    if (text.length <= READING_LIMITS.entityCharacters && !/[&<%]/.test(text)) found[name] = text;
  }
  return found;
}

/** The attribute's value whatever its prefix: `inkscape:label`, `serif:id`, `xlink:href`. */
export function attributeByLocalName(element: XmlElement, local: string): string | undefined {
  const own = element.attributes[local];
  if (own !== undefined) return own;
  for (const name in element.attributes) {
    if (name.endsWith(`:${local}`)) return element.attributes[name];
  }
  return undefined;
}

/** All character data within, in document order of elements. */
export function textWithin(element: XmlElement): string {
  return [element.text, ...element.children.map(textWithin)].join(' ').replace(/\s+/g, ' ').trim();
}
