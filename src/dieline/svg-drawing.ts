import { inputError, type Issue } from '../base/issue.ts';
import { areaFactor, compose, mapPath, mapPoint, scaling, translation, type Affine } from '../geometry/affine.ts';
import { lengthOf } from '../geometry/vector.ts';
import { normaliseColour } from './colour.ts';
import { decodeDrawing } from './decode.ts';
import { collectDrawing } from './drawing-collector.ts';
import type { Drawing, LineSource, NameLevel } from './drawing.ts';
import { fingerprintOf } from './fingerprint.ts';
import { inPixels, parseNumbers, parseSvgLength } from './length.ts';
import { READING_LIMITS } from './limits.ts';
import { readShape, SHAPES } from './shape.ts';
import { createStyler, ROOT_STYLE, type Style } from './style.ts';
import { parseStyleSheet } from './style-sheet.ts';
import { describeElement, nameLevelOf } from './svg-names.ts';
import { about, parseTransform } from './transform-list.ts';
import { fitViewBox, pageOf, viewBoxOf, type Viewport } from './viewport.ts';
import { attributeByLocalName, parseXml, textWithin, type XmlElement } from './xml.ts';

/** What holds for the children of an element. */
interface Context {
  readonly style: Style;
  /** Their user units to millimetres, y up. */
  readonly map: Affine;
  readonly viewport: Viewport;
  /** Names of the groups around them, innermost first. */
  readonly levels: readonly NameLevel[];
  /** `use` elements being followed. */
  readonly following: readonly XmlElement[];
}

/**
 * What an SVG file draws. Nothing is fetched or run: scripts, foreign objects and links out of the file are left out and
 * named. Throws InputError where the file is no SVG or passes a limit.
 */
export function readSvg(bytes: Uint8Array, scale: number | undefined): Drawing {
  const { root, issues: xmlIssues } = parseXml(decodeDrawing(bytes));
  if (root.name !== 'svg' || !root.svg) throw inputError('drawing-not-svg', { facts: { root: root.name } });
  const page = pageOf(root, scale);
  const { collector, visitRoot, allPhysical } = createVisitor(root);
  const { lines, issues } = collector;
  const map = compose(scaling(1, -1), page.map);
  visitRoot(root, { style: ROOT_STYLE, map, viewport: page.viewport, levels: [], following: [] });
  const assumed = page.scale.from === 'assumed 96 per inch';
  const physical = lines.length > 0 && allPhysical();
  issues.unshift(...(assumed && !physical ? [unitAssumed(page)] : []), ...xmlIssues);
  const from = assumed && physical ? 'unit' : page.scale.from;
  return collector.finish({ page: page.size, scale: { mmPerUnit: page.scale.mmPerUnit, from }, fingerprint: fingerprintOf(bytes), yAxis: 'down' });
}

function createVisitor(root: XmlElement) {
  const collector = collectDrawing();
  const { once, issues, texts } = collector;
  const sheet = parseStyleSheet(styleSheetText(root));
  for (const selector of sheet.unread) issues.push({ code: 'selector-not-read', severity: 'note', facts: { selector } });
  const styleOf = createStyler(sheet);
  const byId = indexById(root);
  let physical = true;

  const visit = (element: XmlElement, outer: Context): void => {
    if (!element.svg || NOT_DRAWN.has(element.name)) {
      if (element.svg && NEVER_FOLLOWED.has(element.name)) once('element-left-out', 'note', element.name);
      return;
    }
    const drawn = collector.nextElement();
    const style = styleOf(element, outer.style);
    if (style.own.display === 'none' || Number(style.own.opacity ?? 1) === 0) return;
    const level = nameLevelOf(element, drawn);
    const inner: Context = {
      ...outer,
      style,
      map: compose(outer.map, ownTransform(element, style)),
      levels: level ? [level, ...outer.levels] : outer.levels,
    };
    if (areaFactor(inner.map) === 0) return;
    if (SHAPES.has(element.name)) addShape(element, inner, outer);
    else if (element.name === 'text') addText(element, inner);
    else if (element.name === 'use') follow(element, inner);
    else if (element.name === 'svg') visitChildren(element, placedViewport(element, element, inner));
    else if (element.name === 'switch') visitSwitch(element, inner);
    else if (element.name === 'g' || element.name === 'a') visitChildren(element, inner);
  };

  const visitRoot = (element: XmlElement, outer: Context): void => {
    const style = styleOf(element, outer.style);
    if (style.own.display !== 'none') visitChildren(element, { ...outer, style, map: compose(outer.map, ownTransform(element, style)) });
  };

  const visitChildren = (element: XmlElement, context: Context): void => {
    for (const child of element.children) visit(child, context);
  };

  const visitSwitch = (element: XmlElement, context: Context): void => {
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
  const placedViewport = (element: XmlElement, placed: XmlElement, context: Context): Context => {
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

  const follow = (element: XmlElement, context: Context): void => {
    const where = describeElement(element, []);
    const link = attributeByLocalName(element, 'href')?.trim() ?? '';
    if (!link.startsWith('#')) return once('link-not-followed', 'warning', where, { link });
    const target = byId.get(decodeLink(link.slice(1)));
    if (!target) return once('use-without-target', 'warning', where, { link });
    const contains = context.following.includes(element) || isWithin(element, target);
    if (contains || context.following.length >= READING_LIMITS.useDepth) return once('use-in-itself', 'warning', where, { link });
    const length = (name: string, whole: number) => inPixels(parseSvgLength(element.attributes[name]) ?? { value: 0, unit: '' }, whole);
    const moved: Context = {
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

  const addShape = (element: XmlElement, context: Context, outer: Context): void => {
    const { inherited } = context.style;
    if (inherited.visibility !== 'visible') return;
    const scale = Math.sqrt(Math.abs(areaFactor(context.map)));
    const paint = paintOf(inherited, scale, context.viewport);
    if (!paint.stroked && !paint.filled) return;
    const described = describeElement(element, outer.levels);
    const shape = readShape(element, context.style, context.viewport);
    if (shape.fault !== undefined) once('shape-not-read', 'warning', described, { fault: shape.fault });
    if (paint.stroked && !shape.physical) physical = false;
    const source: LineSource = { index: collector.elements(), described, levels: context.levels, ...paint };
    for (const { curves: own, closed } of shape.paths) {
      collector.addPath(paint.stroked ? 'lines' : 'fills', { curves: mapPath(context.map, own), closed, source });
    }
  };

  const addText = (element: XmlElement, context: Context): void => {
    const { inherited } = context.style;
    const content = textWithin(element);
    if (inherited.visibility !== 'visible' || content === '') return;
    const placed = [element, ...element.children].find(({ attributes }) => attributes.x !== undefined) ?? element;
    const [x] = parseNumbers(placed.attributes.x ?? '0') ?? [];
    const [y] = parseNumbers(placed.attributes.y ?? '0') ?? [];
    const place = mapPoint(context.map, { x: x ?? 0, y: y ?? 0 });
    const along = { x: context.map.a, y: context.map.b };
    const scale = lengthOf(along);
    const size = inPixels(parseSvgLength(inherited['font-size']) ?? { value: 16, unit: '' }, 16);
    if (!Number.isFinite(place.x + place.y) || scale === 0) return;
    texts.push({ content, place, heightMm: size * scale, direction: { x: along.x / scale, y: along.y / scale }, anchor: inherited['text-anchor'], levels: context.levels });
  };

  return { collector, visitRoot, allPhysical: () => physical };
}

/** Elements whose content is not drawn where it stands. */
const NOT_DRAWN: ReadonlySet<string> = new Set([
  'defs', 'symbol', 'clipPath', 'mask', 'pattern', 'marker', 'linearGradient', 'radialGradient', 'filter', 'style', 'title', 'desc',
  'metadata', 'script', 'foreignObject', 'image', 'audio', 'video', 'iframe', 'canvas', 'view', 'cursor', 'font',
]);

/** Of those, the ones that would do or fetch something elsewhere; it is said that they were left out. */
const NEVER_FOLLOWED: ReadonlySet<string> = new Set(['script', 'foreignObject', 'audio', 'video', 'iframe', 'canvas']);

function styleSheetText(element: XmlElement): string {
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
    open.push(...element.children.toReversed());
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

/** How a shape is painted. A hairline (width 0) without a fill is a line, as computer-aided design programs write it. */
function paintOf(style: Readonly<Record<string, string>>, scale: number, viewport: Viewport) {
  const resolve = (paint: string) => normaliseColour(paint === 'currentColor' || paint === 'currentcolor' ? style.color : paint);
  const inUnits = (text: string) => inPixels(parseSvgLength(text) ?? { value: 0, unit: '' }, viewport.width);
  const stroke = resolve(style.stroke);
  const fill = resolve(style.fill);
  const width = inUnits(style['stroke-width']);
  const filled = isPaint(fill) && Number(style['fill-opacity']) !== 0;
  const stroked = isPaint(stroke) && Number(style['stroke-opacity']) !== 0 && !(width === 0 && filled);
  const dash = style['stroke-dasharray'].split(/[\s,]+/).map(inUnits).map((length) => length * scale);
  const marked = [style['marker-start'], style['marker-end']].some((marker) => marker.startsWith('url('));
  return { stroked, filled, stroke, widthMm: width * scale, dash: dash.some((length) => length > 0) ? dash : [], marked };
}

function isPaint(paint: string): boolean {
  return paint !== 'none' && paint !== 'transparent' && paint !== '';
}

/** Page sizes by which drawings in desktop points, 72 an inch, are known, in points: A5 to A0 of ISO 216, and letter. */
const PAGES_IN_POINTS: readonly (readonly [name: string, short: number, long: number])[] = [
  ['A5', 419.53, 595.28], ['A4', 595.28, 841.89], ['A3', 841.89, 1190.55], ['A2', 1190.55, 1683.78], ['A1', 1683.78, 2383.94], ['A0', 2383.94, 3370.39], ['letter', 612, 792],
];

function unitAssumed({ scale, viewport }: ReturnType<typeof pageOf>): Issue {
  const short = Math.min(viewport.width, viewport.height);
  const long = Math.max(viewport.width, viewport.height);
  const page = PAGES_IN_POINTS.find(([, width, height]) => Math.abs(short - width) < 1 && Math.abs(long - height) < 1);
  const hint = page ? ` The page would be ${page[0]} at 72 units an inch (--scale 0.352778).` : '';
  return { code: 'unit-assumed', severity: 'warning', facts: { hint, unit: `1/96 in (${Math.round(scale.mmPerUnit * 1e4) / 1e4} mm)`, mmPerUnit: scale.mmPerUnit } };
}
