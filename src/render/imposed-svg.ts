import { nameLevelOf } from '../dieline/svg-names.ts';
import type { NameLevel } from '../dieline/drawing.ts';
import { parseStyleAttribute, parseStyleSheet, type Declaration, type StyleSheet } from '../dieline/style-sheet.ts';
import { NEVER_FOLLOWED, styleSheetText } from '../dieline/svg-walk.ts';
import { pageOf } from '../dieline/viewport.ts';
import { attributeByLocalName, splitName, type XmlElement } from '../dieline/xml.ts';
import { writePathData } from '../geometry/path-data.ts';
import { degreesOf } from '../geometry/turn.ts';
import type { ImposedArtwork } from './imposed-artwork.ts';
import { LENGTH_DECIMALS, plain } from './plain.ts';
import { polygonPaths } from './polygon-paths.ts';
import type { SheetView } from './sheet-view.ts';
import { createStepByName } from './svg-pdf/step-by-name.ts';
import { element as written, escapeXml } from './xml.ts';

/**
 * The print of one side as SVG of the sheet's size: each drawing is there once, placed on its stations, turned with them and
 * clipped to their areas. Undefined where some of it did not come as SVG. Style sheets become styles of the elements, so that
 * two drawings do not touch one another; scripts, foreign objects and links out of the file are left out.
 */
export function imposedSvg({ sheet, placements }: SheetView, { artworks, ofStation, areas }: ImposedArtwork): string | undefined {
  const roots = artworks.map(({ svg }) => svg);
  if (!roots.every((root) => root !== undefined)) return undefined;
  const symbols = roots.map((root, i) => drawing(root, `art${i + 1}`));
  const stations = placements.flatMap(({ turn, x, y }, station) => {
    const index = ofStation[station];
    if (index === undefined) return [];
    const { offset } = artworks[index]!;
    const { height } = pageOf(roots[index]!, undefined).size!;
    const clip = written('clipPath', { id: `area${station + 1}` }, written('path', { d: polygonPaths(areas[station]!).map((path) => writePathData(path, LENGTH_DECIMALS)).join(' ') }));
    const placed = `translate(${plain(x)} ${plain(y)}) rotate(${degreesOf(turn)}) translate(${plain(offset.x)} ${plain(offset.y + height)}) scale(1 -1)`;
    return [written('g', { id: `station${station + 1}` }, `${clip}${written('g', { 'clip-path': `url(#area${station + 1})` }, written('use', { href: `#art${index + 1}`, transform: placed }))}`)];
  });
  const root = { xmlns: 'http://www.w3.org/2000/svg', width: `${plain(sheet.width)}mm`, height: `${plain(sheet.height)}mm`, viewBox: `0 0 ${plain(sheet.width)} ${plain(sheet.height)}` };
  const upright = written('g', { transform: `translate(0 ${plain(sheet.height)}) scale(1 -1)` }, `\n${stations.join('\n')}\n`);
  return `${written('svg', root, `\n${written('defs', {}, `\n${symbols.join('\n')}\n`)}\n${upright}\n`)}\n`;
}

/** A whole drawing as one element of its size in millimetres, all its ids beginning with `name`. */
function drawing(root: XmlElement, name: string): string {
  const { size, viewport } = pageOf(root, undefined);
  const write = createWriter(root, name);
  const { viewBox = `0 0 ${plain(viewport.width)} ${plain(viewport.height)}`, preserveAspectRatio } = root.attributes;
  const attributes = { ...write.attributes(root), width: plain(size!.width), height: plain(size!.height), x: undefined, y: undefined, viewBox, preserveAspectRatio };
  return written('g', { id: name }, written('svg', { ...attributes, id: undefined }, write.children(root, [])));
}

function createWriter(root: XmlElement, prefix: string) {
  const sheet = parseStyleSheet(styleSheetText(root));
  const stepNamed = createStepByName();
  /** Links within the file follow the ids; others lead nowhere. */
  const moved = (value: string) => value.replace(/url\(\s*(["']?)(#?)([^"')]*)\1\s*\)/g, (_, __, sign: string, id: string) => (sign === '#' ? `url(#${prefix}-${id})` : 'none'));

  const attributes = (element: XmlElement): Record<string, string | undefined> => {
    const kept = Object.entries(element.attributes).flatMap(([name, value]): [string, string][] => {
      const [space, local] = splitName(name);
      if (name === 'id') return [[name, `${prefix}-${value}`]];
      if (space !== '' || local === 'class' || local === 'style' || local === 'href' || local === 'xmlns' || /^on/i.test(local)) return name === 'xml:space' ? [[name, value]] : [];
      return [[name, moved(value)]];
    });
    const link = attributeByLocalName(element, 'href')?.trim() ?? '';
    const href = link.startsWith('#') ? `#${prefix}-${link.slice(1)}` : /^data:image\/(png|jpe?g)\b/i.test(link) ? link : undefined;
    const style = styleText(sheet, element);
    return { ...Object.fromEntries(kept), ...(style !== '' && { style: moved(style) }), ...(href !== undefined && { href }) };
  };

  const children = (element: XmlElement, levels: readonly NameLevel[]): string => {
    if (element.runs) return element.runs.map((run) => (typeof run === 'string' ? escapeXml(run) : one(run, levels))).join('');
    return element.children.map((child) => one(child, levels)).join('');
  };

  const one = (element: XmlElement, outer: readonly NameLevel[]): string => {
    if (!element.svg || NOT_WRITTEN.has(element.name) || NEVER_FOLLOWED.has(element.name)) return '';
    const level = nameLevelOf(element, 0);
    const levels = level ? [level, ...outer] : outer;
    const own = attributes(element);
    const isLeaf = element.children.length === 0 && element.name !== 'use' && element.name !== 'image';
    if (isLeaf && stepNamed(levels, !isUnfilled(element, sheet)) !== undefined) return '';
    return written(element.name, own, children(element, levels));
  };
  return { attributes, children };
}

const NOT_WRITTEN: ReadonlySet<string> = new Set(['style', 'title', 'desc', 'metadata', 'set', 'animate', 'animateTransform', 'animateMotion', 'view', 'cursor', 'font', 'font-face', 'handler', 'listener']);

function styleText(sheet: StyleSheet, element: XmlElement): string {
  return ownDeclarations(sheet, element).map(({ property, value }) => `${property}:${value}`).join(';');
}

/** Weakest first. */
function ownDeclarations(sheet: StyleSheet, element: XmlElement): Declaration[] {
  const all = [...sheet.declarationsFor(element), ...parseStyleAttribute(element.attributes['style'] ?? '')];
  return [...all.filter(({ important }) => !important), ...all.filter(({ important }) => important)];
}

/** Fill is handed down: the nearest that says something decides. */
function isUnfilled(element: XmlElement, sheet: StyleSheet): boolean {
  for (let at: XmlElement | undefined = element; at; at = at.parent) {
    const fill = ownDeclarations(sheet, at).findLast(({ property }) => property === 'fill')?.value ?? at.attributes['fill'];
    if (fill !== undefined && fill !== 'inherit') return fill.trim() === 'none';
  }
  return false;
}
