import { inputError, type Issue } from '../base/issue.ts';
import { areaFactor, compose, mapPath, mapPoint, scaling } from '../geometry/affine.ts';
import { lengthOf } from '../geometry/vector.ts';
import { normaliseColour } from './colour.ts';
import { decodeDrawing } from './decode.ts';
import { collectDrawing } from './drawing-collector.ts';
import type { Drawing, LineSource } from './drawing.ts';
import { fingerprintOf } from './fingerprint.ts';
import { inPixels, parseNumbers, parseSvgLength } from './length.ts';
import type { ReadOptions } from './options.ts';
import { readShape } from './shape.ts';
import { ROOT_STYLE } from './style.ts';
import { describeElement } from './svg-names.ts';
import { walkSvg, type SvgContext } from './svg-walk.ts';
import { pageOf, type Viewport } from './viewport.ts';
import { parseXml, textWithin, type XmlElement } from './xml.ts';

/** The outermost element of an SVG file. Throws InputError where it is none. */
export function openSvg(bytes: Uint8Array): { readonly root: XmlElement; readonly issues: readonly Issue[] } {
  const { root, issues } = parseXml(decodeDrawing(bytes));
  if (root.name !== 'svg' || !root.svg) throw inputError('drawing-not-svg', { facts: { root: root.name } });
  return { root, issues };
}

/**
 * What an SVG file draws. Nothing is fetched or run: scripts, foreign objects and links out of the file are left out and
 * named. Throws InputError where the file is no SVG or passes a limit.
 */
export function readSvg(bytes: Uint8Array, scale: number | undefined, onWork?: ReadOptions['onWork']): Drawing {
  const { root, issues: xmlIssues } = openSvg(bytes);
  const page = pageOf(root, scale);
  const { collector, visitRoot, allPhysical } = createReader(root, onWork);
  const { lines, issues } = collector;
  const map = compose(scaling(1, -1), page.map);
  visitRoot(root, { style: ROOT_STYLE, map, viewport: page.viewport, levels: [], following: [] });
  const assumed = page.scale.from === 'assumed 96 per inch';
  const physical = lines.length > 0 && allPhysical();
  issues.unshift(...(assumed && !physical ? [unitAssumed(page)] : []), ...xmlIssues);
  const from = assumed && physical ? 'unit' : page.scale.from;
  return collector.finish({ page: page.size, scale: { mmPerUnit: page.scale.mmPerUnit, from }, fingerprint: fingerprintOf(bytes), yAxis: 'down' });
}

function createReader(root: XmlElement, onWork: ReadOptions['onWork']) {
  const collector = collectDrawing(onWork);
  const { once, texts } = collector;
  let physical = true;

  const addShape = (element: XmlElement, context: SvgContext, outer: SvgContext): void => {
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

  const addText = (element: XmlElement, context: SvgContext): void => {
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

  const { visitRoot } = walkSvg(root, collector, { shape: addShape, text: addText });
  return { collector, visitRoot, allPhysical: () => physical };
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
  return { stroked, filled, fill, stroke, widthMm: width * scale, dash: dash.some((length) => length > 0) ? dash : [], marked };
}

function isPaint(paint: string): boolean {
  return paint !== 'none' && paint !== 'transparent' && paint !== '';
}

/** Page sizes by which drawings in desktop points, 72 an inch, are known, in points: A5 to A0 of ISO 216, and letter. */
const PAGES_IN_POINTS: readonly (readonly [name: string, short: number, long: number])[] = [
  ['A5', 419.53, 595.28], ['A4', 595.28, 841.89], ['A3', 841.89, 1190.55], ['A2', 1190.55, 1683.78], ['A1', 1683.78, 2383.94], ['A0', 2383.94, 3370.39], ['letter', 612, 792],
];

function unitAssumed({ scale, viewport, unknownUnit }: ReturnType<typeof pageOf>): Issue {
  const short = Math.min(viewport.width, viewport.height);
  const long = Math.max(viewport.width, viewport.height);
  const page = PAGES_IN_POINTS.find(([, width, height]) => Math.abs(short - width) < 1 && Math.abs(long - height) < 1);
  const hint = page ? ` The page would be ${page[0]} at 72 units an inch (--scale 0.352778).` : '';
  return { code: unknownUnit === undefined ? 'unit-assumed' : 'unit-unknown', severity: 'warning', facts: { ...(unknownUnit !== undefined && { unitGiven: unknownUnit }), hint, unit: `1/96 in (${Math.round(scale.mmPerUnit * 1e4) / 1e4} mm)`, mmPerUnit: scale.mmPerUnit } };
}
