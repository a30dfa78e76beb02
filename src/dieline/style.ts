import { parseStyleAttribute, type Declaration, type StyleSheet } from './style-sheet.ts';
import type { XmlElement } from './xml.ts';

type Values = Readonly<Record<string, string>>;

/** What an element's drawing depends on, after the cascade. */
export interface Style {
  /** Handed down to children. */
  readonly inherited: Values;
  /** Its own only: display, opacity and other effects, transform and the geometry that style may set. */
  readonly own: Values;
}

const INHERITED = new Set([
  'stroke', 'stroke-width', 'stroke-dasharray', 'stroke-opacity', 'stroke-linecap', 'fill', 'fill-opacity', 'visibility',
  'color', 'font-size', 'text-anchor', 'marker-start', 'marker-end', 'fill-rule', 'clip-rule', 'stroke-linejoin', 'stroke-miterlimit', 'stroke-dashoffset',
  'font-family', 'font-weight', 'font-style', 'letter-spacing',
]);
const OWN = new Set([
  'display', 'opacity', 'transform', 'transform-origin', 'x', 'y', 'cx', 'cy', 'r', 'rx', 'ry', 'width', 'height', 'clip-path', 'mask', 'filter', 'mix-blend-mode',
  'stop-color', 'stop-opacity',
]);

/** SVG 2, initial values of the properties looked at. */
const INITIAL: Values = {
  stroke: 'none', 'stroke-width': '1', 'stroke-dasharray': 'none', 'stroke-opacity': '1', 'stroke-linecap': 'butt',
  fill: 'black', 'fill-opacity': '1', visibility: 'visible', color: 'black', 'font-size': '16', 'text-anchor': 'start',
  'marker-start': 'none', 'marker-end': 'none', 'fill-rule': 'nonzero', 'clip-rule': 'nonzero', 'stroke-linejoin': 'miter', 'stroke-miterlimit': '4', 'stroke-dashoffset': '0',
  'font-family': '', 'font-weight': 'normal', 'font-style': 'normal', 'letter-spacing': 'normal',
};

export const ROOT_STYLE: Style = { inherited: INITIAL, own: {} };

export type ComputeStyle = (element: XmlElement, parent: Style) => Style;

/** Cascade: presentation attributes, style sheet, `style` attribute; important ones last (CSS Cascading 4, 6.1). */
export function createStyler(sheet: StyleSheet): ComputeStyle {
  const attributeCache = new Map<string, readonly Declaration[]>();
  const ofStyleAttribute = (text: string | undefined): readonly Declaration[] => {
    if (text === undefined) return [];
    let declarations = attributeCache.get(text);
    if (!declarations) {
      declarations = parseStyleAttribute(text);
      if (attributeCache.size < CACHED_STYLES) attributeCache.set(text, declarations);
    }
    return declarations;
  };
  return (element, parent) => {
    const own: Record<string, string> = {};
    const handedDown: Record<string, string> = {};
    const set = ({ property, value }: Pick<Declaration, 'property' | 'value'>) => {
      if (property === 'marker') {
        set({ property: 'marker-start', value });
        set({ property: 'marker-end', value });
      }
      if (OWN.has(property)) own[property] = value;
      if (INHERITED.has(property)) handedDown[property] = resolved(property, value, parent);
    };
    for (const property in element.attributes) {
      if (OWN.has(property) || INHERITED.has(property)) set({ property, value: element.attributes[property] });
    }
    const fromSheet = sheet.declarationsFor(element);
    const fromAttribute = ofStyleAttribute(element.attributes.style);
    for (const list of [fromSheet, fromAttribute]) list.filter(({ important }) => !important).forEach(set);
    for (const list of [fromSheet, fromAttribute]) list.filter(({ important }) => important).forEach(set);
    const changed = Object.keys(handedDown).length > 0;
    return { own, inherited: changed ? { ...parent.inherited, ...handedDown } : parent.inherited };
  };
}

/** Distinct `style` attributes remembered; a drawing program writes a few dozen. */
const CACHED_STYLES = 4096;

function resolved(property: string, value: string, parent: Style): string {
  const word = value.trim();
  if (word === 'inherit' || word === 'unset' || word === '') return parent.inherited[property];
  return word === 'initial' ? INITIAL[property] : word;
}
