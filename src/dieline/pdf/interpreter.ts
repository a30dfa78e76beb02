import { PDFName, PDFRawStream, type PDFContext, type PDFDict, type PDFObject } from '@cantoo/pdf-lib';
import type { CurvePath } from '../../geometry/curve.ts';
import { areaFactor, compose, IDENTITY, type Affine } from '../../geometry/affine.ts';
import { flattenPath } from '../../geometry/flatten.ts';
import { boxOf, type Box } from '../../geometry/point.ts';
import { samePoint } from '../../geometry/vector.ts';
import type { DrawingCollector } from '../drawing-collector.ts';
import type { LineSource, NameLevel } from '../drawing.ts';
import { READING_LIMITS } from '../limits.ts';
import { limitPassed } from '../xml.ts';
import { BLACK, cmyk, grey, inkSpace, named, rgb, type Ink, type InkSpace } from './inks.ts';
import type { PdfLayer } from './layers.ts';
import { asDict, asName, asNumber, contentsOf, dictEntry, entry, items, numbers } from './objects.ts';
import { readFont, type PdfFont } from './font.ts';
import { createPath } from './path.ts';
import { createTexts } from './texts.ts';
import { operations, type Operand, type PdfNameToken } from './tokens.ts';

/** ISO 32000-1, 8.4.1, as far as it matters to lines. */
interface GraphicsState {
  /** User space to millimetres, y up. */
  readonly map: Affine;
  readonly stroke: Ink;
  readonly fill: Ink;
  readonly strokeSpace: InkSpace;
  readonly fillSpace: InkSpace;
  readonly width: number;
  readonly dash: readonly number[];
  /** Box of the clipping path, mm; undefined where nothing is clipped. */
  readonly clip?: Box;
}

const FIRST_STATE: Omit<GraphicsState, 'map'> = { stroke: BLACK, fill: BLACK, strokeSpace: grey, fillSpace: grey, width: 1, dash: [] };

/** Content that is marked as of some layers, or of none. */
type Mark = readonly PdfLayer[];

const PAINTS: Readonly<Record<string, { readonly stroked?: true; readonly filled?: true; readonly closes?: true }>> = {
  S: { stroked: true }, s: { stroked: true, closes: true }, f: { filled: true }, F: { filled: true }, 'f*': { filled: true },
  B: { stroked: true, filled: true }, 'B*': { stroked: true, filled: true }, b: { stroked: true, filled: true, closes: true }, 'b*': { stroked: true, filled: true, closes: true }, n: {},
};

/**
 * Runs content streams and hands what they draw to the collector. Forms are followed; every operation counts against one
 * limit, however often a form is drawn.
 */
export function createInterpreter(collector: DrawingCollector, layersOf: (raw: PDFObject | undefined) => Mark, context: PDFContext) {
  let count = 0;
  const fonts = new Map<PDFDict, PdfFont>();
  const fontOf = (dict: PDFDict): PdfFont => {
    const font = fonts.get(dict) ?? readFont(dict, context);
    fonts.set(dict, font);
    return font;
  };
  const spots = new Map<string, NameLevel>();
  const spotLevel = (spot: string): NameLevel => {
    const level = spots.get(spot) ?? { group: false, id: undefined, classes: [], names: [spot], key: -1_000_000 - spots.size };
    spots.set(spot, level);
    return level;
  };

  /** `levels`: layers around the content, innermost first. */
  const interpret = (bytes: Uint8Array, resources: PDFDict | undefined, first: Affine | GraphicsState, outer: Mark = [], following: readonly PDFRawStream[] = []): void => {
    let state: GraphicsState = 'map' in first ? first : { ...FIRST_STATE, map: first };
    const saved: GraphicsState[] = [];
    let clipsNext = false;
    const marks: Mark[] = [];
    const path = createPath();
    const texts = createTexts((name) => {
      const dict = asDict(context.lookup(resource('Font', { name })));
      return dict && fontOf(dict);
    });
    const resource = (kind: string, name: Operand): PDFObject | undefined => dictEntry(resources, kind)?.get(PDFName.of((name as PdfNameToken | undefined)?.name ?? ''));
    const layers = (): Mark => [...marks.toReversed().flat(), ...outer];
    const isShown = () => layers().every((layer) => layer.shown);

    const mark = (kind: Operand, property: Operand) => {
      const isLayer = (kind as PdfNameToken | undefined)?.name === 'OC';
      marks.push(isLayer ? layersOf(resource('Properties', property)) : []);
    };

    const noteHidden = () => {
      for (const { name, shown } of layers()) if (!shown) collector.once('layer-hidden', 'note', name);
    };

    const paint = (operator: string) => {
      const { stroked, filled, closes } = PAINTS[operator]!;
      if (closes) path.close();
      const paths = path.take();
      const { stroke, fill, map, width, dash, clip } = state;
      if (clipsNext) state = { ...state, clip: commonBox(clip, paths) };
      clipsNext = false;
      const isStroked = stroked === true && stroke.colour !== 'none';
      if (paths.length === 0 || (!isStroked && !filled)) return;
      if (!isShown()) return noteHidden();
      const index = collector.nextElement();
      const around = layers();
      const { spot } = isStroked ? stroke : fill;
      // Metadata speak for themselves; else the line's own colour is nearer than the layer round it.
      const levels = [...around.flatMap(({ step }) => step ?? []), ...(spot === undefined ? [] : [spotLevel(spot)]), ...around.map(({ level }) => level)];
      const scale = Math.sqrt(Math.abs(areaFactor(map)));
      const layer = around.find(({ name }) => name !== '');
      const source: LineSource = {
        index, levels, stroke: isStroked ? stroke.colour : 'none', filled: filled === true, marked: false, ...(filled && { fill: fill.colour }), ...(clip && { clip }),
        described: `path ${index}${spot === undefined ? '' : ` of colour "${spot}"`}${layer ? ` in layer "${layer.name}"` : ''}`,
        dash: dash.some((length) => length > 0) ? dash.map((length) => length * scale) : [],
        widthMm: width * scale,
      };
      for (const curves of paths) collector.addPath(isStroked ? 'lines' : 'fills', { curves, closed: samePoint(curves[0]!.from, curves.at(-1)!.to), source });
    };

    /** A shading covers what it is clipped to. */
    const addShading = () => {
      if (!state.clip) return;
      const { minX, minY, maxX, maxY } = state.clip;
      path.take();
      path.build('re', [minX, minY, maxX - minX, maxY - minY], IDENTITY);
      const { fill } = state;
      state = { ...state, fill: { colour: 'shading' } };
      paint('f');
      state = { ...state, fill };
    };

    /** An image covers the unit square of user space. */
    const addImage = () => {
      path.take();
      path.build('re', [0, 0, 1, 1], state.map);
      const { fill } = state;
      state = { ...state, fill: { colour: 'image' } };
      paint('f');
      state = { ...state, fill };
    };

    const follow = (name: Operand) => {
      const form = context.lookup(resource('XObject', name));
      if (form instanceof PDFRawStream && asName(entry(form.dict, 'Subtype')) === 'Image') return addImage();
      if (!(form instanceof PDFRawStream) || asName(entry(form.dict, 'Subtype')) !== 'Form') return;
      const around = [...layersOf(form.dict.get(PDFName.of('OC'))), ...layers()];
      if (!around.every((layer) => layer.shown)) return noteHidden();
      const label = (name as PdfNameToken).name;
      if (following.includes(form) || following.length >= READING_LIMITS.useDepth) return collector.once('use-in-itself', 'warning', `form ${label}`, { link: label });
      const own = matrix(numbers(entry(form.dict, 'Matrix'), context) ?? []);
      const inner = compose(state.map, own ?? IDENTITY);
      if (areaFactor(inner) === 0) return;
      interpret(contentsOf(form), dictEntry(form.dict, 'Resources') ?? resources, { ...state, map: inner }, around, [...following, form]);
    };

    const setByName = (name: Operand) => {
      const settings = asDict(context.lookup(resource('ExtGState', name)));
      const width = asNumber(entry(settings, 'LW'));
      const [dash] = items(entry(settings, 'D'), context);
      if (width !== undefined) state = { ...state, width };
      if (dash) state = { ...state, dash: numbers(dash, context) ?? [] };
    };

    const space = (name: Operand): InkSpace => {
      const word = (name as PdfNameToken | undefined)?.name ?? '';
      const own = context.lookup(resource('ColorSpace', name));
      return own ? inkSpace(own, context) : named(word);
    };

    const run = (operator: string, operands: readonly Operand[]): void => {
      const values = operands.filter((value) => typeof value === 'number');
      const last = operands.at(-1);
      switch (operator) {
        case 'q':
          if (saved.length < MOST_SAVED) saved.push(state);
          return;
        case 'Q':
          state = saved.pop() ?? state;
          return;
        case 'cm': {
          const own = matrix(values);
          if (own) state = { ...state, map: compose(state.map, own) };
          return;
        }
        case 'w':
          state = { ...state, width: values[0] ?? 1 };
          return;
        case 'd':
          state = { ...state, dash: Array.isArray(operands[0]) ? operands[0].filter((value) => typeof value === 'number') : [] };
          return;
        case 'gs':
          return setByName(last);
        case 'CS': {
          const strokeSpace = space(last);
          state = { ...state, strokeSpace, stroke: strokeSpace([]) };
          return;
        }
        case 'cs': {
          const fillSpace = space(last);
          state = { ...state, fillSpace, fill: fillSpace([]) };
          return;
        }
        case 'SC':
        case 'SCN':
          state = { ...state, stroke: state.strokeSpace(values) };
          return;
        case 'sc':
        case 'scn':
          state = { ...state, fill: state.fillSpace(values) };
          return;
        case 'W':
        case 'W*':
          clipsNext = true;
          return;
        case 'sh':
          return addShading();
        case 'Do':
          return follow(last);
        case 'BDC':
          return mark(operands[0], operands[1]);
        case 'BMC':
          return void marks.push([]);
        case 'EMC':
          return void marks.pop();
      }
      const device = DEVICE[operator];
      if (device) state = { ...state, [device.of]: device.space(values), [`${device.of}Space`]: device.space };
      else if (isShown()) texts.run(operator, operands, state.map, layers().flatMap(({ step, level }) => (step ? [step, level] : [level])), (text) => (text.content === '' ? collector.unreadTexts : collector.texts).push(text));
    };

    for (const { operator, operands } of operations(bytes)) {
      if (++count > READING_LIMITS.pdfOperations) throw limitPassed('operations', READING_LIMITS.pdfOperations);
      const values = operands.filter((value) => typeof value === 'number');
      if (path.build(operator, values, state.map)) continue;
      if (PAINTS[operator]) paint(operator);
      else run(operator, operands);
    }
  };
  return interpret;
}

/** Clipped by a path as well, by its box. */
function commonBox(clip: Box | undefined, paths: readonly CurvePath[]): Box {
  const points = paths.flatMap((curves) => flattenPath(curves, CLIP_CHORD_MM));
  const box = points.length > 0 ? boxOf(points) : { minX: 0, minY: 0, maxX: 0, maxY: 0 };
  if (!clip) return box;
  return { minX: Math.max(clip.minX, box.minX), minY: Math.max(clip.minY, box.minY), maxX: Math.min(clip.maxX, box.maxX), maxY: Math.min(clip.maxY, box.maxY) };
}

const CLIP_CHORD_MM = 0.05;

/** States kept at once. */
const MOST_SAVED = 1000;

const DEVICE: Readonly<Record<string, { readonly of: 'stroke' | 'fill'; readonly space: InkSpace }>> = {
  G: { of: 'stroke', space: grey }, g: { of: 'fill', space: grey }, RG: { of: 'stroke', space: rgb }, rg: { of: 'fill', space: rgb }, K: { of: 'stroke', space: cmyk }, k: { of: 'fill', space: cmyk },
};

/** Undefined where it is none or would flatten the plane. */
function matrix(values: readonly number[]): Affine | undefined {
  if (values.length !== 6) return undefined;
  const [a, b, c, d, e, f] = values as [number, number, number, number, number, number];
  const map = { a, b, c, d, e, f };
  return areaFactor(map) === 0 ? undefined : map;
}
