import { areaFactor, compose, translation, type Affine } from '../geometry/affine.ts';
import type { DrawingCollector } from './drawing-collector.ts';
import type { NameLevel } from './drawing.ts';
import { inPixels, parseNumbers, parseSvgLength } from './length.ts';
import { READING_LIMITS } from './limits.ts';
import { SHAPES } from './shape.ts';
import { createStyler, type ComputeStyle, type Style } from './style.ts';
import { parseStyleSheet } from './style-sheet.ts';
import { describeElement, nameLevelOf } from './svg-names.ts';
import { about, parseTransform } from './transform-list.ts';
import { fitViewBox, viewBoxOf, type Viewport } from './viewport.ts';
import { attributeByLocalName, type XmlElement } from './xml.ts';

/** What holds for an element, and for the children of one. */
export interface SvgContext {
  readonly style: Style;
  /** Their user units to millimetres, y up. */
  readonly map: Affine;
  readonly viewport: Viewport;
  /** Names of the groups around them, innermost first. */
  readonly levels: readonly NameLevel[];
  /** `use` elements being followed. */
  readonly following: readonly XmlElement[];
}

/** What is done with the elements that are met. */
export interface SvgVisitor {
  /** `outer` is what holds around the element. */
  readonly shape: (element: XmlElement, context: SvgContext, outer: SvgContext) => void;
  readonly text: (element: XmlElement, context: SvgContext) => void;
  readonly image?: (element: XmlElement, context: SvgContext) => void;
  /** Draws the element by `draw`, with whatever effect the element has as a whole. */
  readonly around?: (element: XmlElement, context: SvgContext, draw: () => void) => void;
}

export interface SvgWalk {
  readonly visitRoot: (element: XmlElement, outer: SvgContext) => void;
  readonly visitChildren: (element: XmlElement, context: SvgContext) => void;
  /** The element that a link within the file leads to. */
  readonly target: (link: string) => XmlElement | undefined;
  readonly styleOf: ComputeStyle;
}

/**
 * Goes through what an SVG draws, in drawing order: `use` followed, views placed, styles resolved, nothing hidden met. Every
 * element met counts against the collector's limit, however often it is used; flaws are said there.
 */
export function walkSvg(root: XmlElement, collector: DrawingCollector, visitor: SvgVisitor): SvgWalk {
  const { once, issues } = collector;
  const sheet = parseStyleSheet(styleSheetText(root));
  for (const selector of sheet.unread) issues.push({ code: 'selector-not-read', severity: 'note', facts: { selector } });
  const styleOf = createStyler(sheet);
  const byId = indexById(root);
  const visit = (element: XmlElement, outer: SvgContext): void => {
    if (!element.svg || NOT_DRAWN.has(element.name)) {
      if (element.svg && NEVER_FOLLOWED.has(element.name)) once('element-left-out', 'note', element.name);
      return;
    }
    const drawn = collector.nextElement();
    const style = styleOf(element, outer.style);
    if (style.own.display === 'none' || Number(style.own.opacity ?? 1) === 0) return;
    const level = nameLevelOf(element, drawn);
    const inner: SvgContext = {
      ...outer,
      style,
      map: compose(outer.map, ownTransform(element, style)),
      levels: level ? [level, ...outer.levels] : outer.levels,
    };
    if (areaFactor(inner.map) === 0) return;
    const draw = () => drawElement(element, inner, outer);
    if (visitor.around) visitor.around(element, inner, draw);
    else draw();
  };

  const drawElement = (element: XmlElement, inner: SvgContext, outer: SvgContext): void => {
    if (SHAPES.has(element.name)) visitor.shape(element, inner, outer);
    else if (element.name === 'text') visitor.text(element, inner);
    else if (element.name === 'image') visitor.image?.(element, inner);
    else if (element.name === 'use') follow(element, inner);
    else if (element.name === 'svg') visitChildren(element, placedViewport(element, element, inner));
    else if (element.name === 'switch') visitSwitch(element, inner);
    else if (element.name === 'g' || element.name === 'a') visitChildren(element, inner);
  };

  const visitRoot = (element: XmlElement, outer: SvgContext): void => {
    const style = styleOf(element, outer.style);
    if (style.own.display !== 'none') visitChildren(element, { ...outer, style, map: compose(outer.map, ownTransform(element, style)) });
  };

  const visitChildren = (element: XmlElement, context: SvgContext): void => {
    for (const child of element.children) visit(child, context);
  };

  const visitSwitch = (element: XmlElement, context: SvgContext): void => {
    const chosen = element.children.find(
      ({ svg, name, attributes }) => svg && !NOT_DRAWN.has(name) && attributes.requiredExtensions === undefined && attributes.systemLanguage === undefined,
    );
    if (chosen) visit(chosen, context);
  };

  /** An own transform that cannot be read counts as none, as SVG asks; it is said, for the picture may be wrong. */
  const ownTransform = (element: XmlElement, style: Style): Affine => {
    const text = style.own.transform;
    if (text === undefined || text.trim() === '') return translation(0, 0);
    const map = parseTransform(text);
    if (!map) once('transform-not-read', 'warning', describeElement(element, []), { transform: text });
    const [x, y] = parseNumbers((style.own['transform-origin'] ?? '').replace(/px/g, '')) ?? [];
    return map ? about(x ?? 0, y ?? 0, map) : translation(0, 0);
  };

  /** The viewport that a nested svg or a symbol opens; `placed` holds its place and size. */
  const placedViewport = (element: XmlElement, placed: XmlElement, context: SvgContext): SvgContext => {
    const along = (name: string, whole: number, missing: number) => {
      const length = parseSvgLength(placed.attributes[name] ?? element.attributes[name]);
      return length ? inPixels(length, whole) : missing;
    };
    const { width: wholeWidth, height: wholeHeight } = context.viewport;
    const width = along('width', wholeWidth, wholeWidth);
    const height = along('height', wholeHeight, wholeHeight);
    const own = element === placed ? translation(along('x', wholeWidth, 0), along('y', wholeHeight, 0)) : translation(0, 0);
    const box = viewBoxOf(element);
    const map = compose(context.map, own);
    if (!box || !(width > 0 && height > 0)) return { ...context, map, viewport: { width, height } };
    return { ...context, map: compose(map, fitViewBox(box, width, height, element.attributes.preserveAspectRatio)), viewport: box };
  };

  const follow = (element: XmlElement, context: SvgContext): void => {
    const where = describeElement(element, []);
    const link = attributeByLocalName(element, 'href')?.trim() ?? '';
    if (!link.startsWith('#')) return once('link-not-followed', 'warning', where, { link });
    const target = targetOf(link);
    if (!target) return once('use-without-target', 'warning', where, { link });
    const contains = context.following.includes(element) || isWithin(element, target);
    if (contains || context.following.length >= READING_LIMITS.useDepth) return once('use-in-itself', 'warning', where, { link });
    const length = (name: string, whole: number) => inPixels(parseSvgLength(element.attributes[name]) ?? { value: 0, unit: '' }, whole);
    const moved: SvgContext = {
      ...context,
      map: compose(context.map, translation(length('x', context.viewport.width), length('y', context.viewport.height))),
      following: [...context.following, element],
    };
    if (target.name !== 'symbol') return visit(target, moved);
    const style = styleOf(target, moved.style);
    if (style.own.display === 'none') return;
    const level = nameLevelOf(target, collector.nextElement());
    const levels = level ? [level, ...moved.levels] : moved.levels;
    visitChildren(target, placedViewport(target, element, { ...moved, style, levels }));
  };

  const targetOf = (link: string): XmlElement | undefined => byId.get(decodeLink(link.slice(1)));

  return { visitRoot, visitChildren, target: (link) => (link.startsWith('#') ? targetOf(link) : undefined), styleOf };
}

/** Elements whose content is not drawn where it stands. */
const NOT_DRAWN: ReadonlySet<string> = new Set([
  'defs', 'symbol', 'clipPath', 'mask', 'pattern', 'marker', 'linearGradient', 'radialGradient', 'filter', 'style', 'title', 'desc',
  'metadata', 'script', 'foreignObject', 'audio', 'video', 'iframe', 'canvas', 'view', 'cursor', 'font',
]);

/** Of those, the ones that would do or fetch something elsewhere; it is said that they were left out. */
export const NEVER_FOLLOWED: ReadonlySet<string> = new Set(['script', 'foreignObject', 'audio', 'video', 'iframe', 'canvas']);

/** Text of all style sheets of the file. */
export function styleSheetText(element: XmlElement): string {
  if (element.name === 'style') return element.text;
  return element.children.map(styleSheetText).filter((text) => text !== '').join('\n');
}

function indexById(root: XmlElement): ReadonlyMap<string, XmlElement> {
  const found = new Map<string, XmlElement>();
  const open = [root];
  while (open.length > 0) {
    const element = open.pop()!;
    const { id } = element.attributes;
    if (id !== undefined && !found.has(id)) found.set(id, element);
    // One by one: a call takes no hundred thousand arguments.
    for (let i = element.children.length - 1; i >= 0; i--) open.push(element.children[i]!);
  }
  return found;
}

function isWithin(element: XmlElement, ancestor: XmlElement): boolean {
  for (let at: XmlElement | undefined = element; at; at = at.parent) if (at === ancestor) return true;
  return false;
}

function decodeLink(link: string): string {
  try {
    return decodeURIComponent(link);
  } catch {
    return link;
  }
}
