import { areaFactor, compose, mapCurve, rotation, scaling, translation, type Affine } from '../../geometry/affine.ts';
import type { Curve } from '../../geometry/curve.ts';
import { samePoint } from '../../geometry/vector.ts';
import { collectDrawing } from '../drawing-collector.ts';
import type { Drawing, LineSource, NameLevel } from '../drawing.ts';
import { fingerprintOf } from '../fingerprint.ts';
import { READING_LIMITS } from '../limits.ts';
import type { ReadOptions } from '../options.ts';
import { limitPassed } from '../xml.ts';
import { decodeDxf } from './decode.ts';
import { keyOf, readDocument, type DxfBlock, type DxfDocument, type DxfLayer } from './document.ts';
import { numberOf, textOf, type DxfRecord } from './groups.ts';
import { NO_BLOCK, paintOf, type DxfPaint } from './paint.ts';
import { curvesOf, isFitOnly, LINE_ENTITIES, OWN_PLANE, pointOf } from './shapes.ts';
import { drawnText, TEXT_ENTITIES } from './texts.ts';

/** Splines that no cubic follows exactly are followed within this, mm. */
export const SPLINE_TOLERANCE_MM = 0.0005;

/** What holds for the entities of a block. */
interface Context {
  /** Their drawing units to millimetres. */
  readonly map: Affine;
  /** Names of the blocks and layers around them, innermost first. */
  readonly levels: readonly NameLevel[];
  readonly layer: DxfLayer | undefined;
  readonly paint: DxfPaint;
  /** They draw a dimension, whatever layer they are on. */
  readonly measuring: boolean;
  /** Blocks being followed. */
  readonly following: readonly DxfBlock[];
}

/**
 * What a DXF file draws in its model space, with its layers and blocks as names. Layers that are off or frozen and paper
 * space are left out. Throws InputError where the file is no DXF in text form or passes a limit.
 */
export function readDxf(bytes: Uint8Array, scale: number | undefined, onWork?: ReadOptions['onWork']): Drawing {
  const document = readDocument(decodeDxf(bytes));
  const mmPerUnit = scale ?? document.mmPerUnit ?? 1;
  const { collector, visitAll } = createVisitor(document, onWork);
  visitAll(document.entities, { map: scaling(mmPerUnit), levels: [], layer: undefined, paint: NO_BLOCK, measuring: false, following: [] });
  if (!document.whole) collector.issues.unshift({ code: 'dxf-cut-short', severity: 'warning' });
  const assumed = scale === undefined && document.mmPerUnit === undefined;
  if (assumed) collector.issues.unshift({ code: 'unit-assumed', severity: 'warning', facts: { unit: '1 mm', mmPerUnit, hint: '' } });
  const from = scale !== undefined ? 'given scale' : assumed ? 'assumed millimetres' : 'unit';
  return collector.finish({ page: undefined, scale: { mmPerUnit, from }, fingerprint: fingerprintOf(bytes), yAxis: 'up' });
}

function createVisitor(document: DxfDocument, onWork: ReadOptions['onWork']) {
  const collector = collectDrawing(onWork);
  const { once } = collector;
  const levelOf = createLevels();

  const visitAll = (records: readonly DxfRecord[], context: Context): void => {
    for (let i = 0; i < records.length; i++) {
      const record = records[i]!;
      if (FOLLOWS.has(record.type)) continue;
      let end = i + 1;
      while (end < records.length && FOLLOWS.has(records[end]!.type)) end++;
      visit(record, records.slice(i + 1, end), context);
    }
  };

  const visit = (record: DxfRecord, rest: readonly DxfRecord[], outer: Context): void => {
    const index = collector.nextElement();
    if (numberOf(record, 67) === 1 || numberOf(record, 60) === 1) return;
    const layer = layerOf(record, outer);
    if (layer?.hidden) return;
    const map = OWN_PLANE.has(record.type) ? ownPlane(record, outer.map) : outer.map;
    const levels = layer && !outer.measuring ? [levelOf(layer.name, outer.levels), ...outer.levels] : outer.levels;
    const described = describe(record, index, layer);
    if (!map) return once('shape-not-read', 'warning', described, { fault: 'its plane, which is not that of the drawing' });
    const inner: Context = { ...outer, map, levels, layer, paint: paintOf(record, layer, outer.paint, document) };
    if (LINE_ENTITIES.has(record.type)) addLine(record, rest, index, described, inner);
    else if (record.type === 'INSERT') insert(record, described, inner);
    else if (record.type === 'DIMENSION') dimension(record, described, inner);
    else if (record.type === 'SOLID' || record.type === 'TRACE') addSolid(record, index, described, inner);
    else if (TEXT_ENTITIES.has(record.type)) addText(record, inner);
    else if (!SILENT.has(record.type)) once('entity-left-out', AS_NOTE.has(record.type) ? 'note' : 'warning', record.type, {});
    for (const attribute of rest) if (attribute.type === 'ATTRIB') addText(attribute, { ...inner, map: outer.map });
  };

  /** In a block, layer 0 stands for the layer of the insert. */
  const layerOf = (record: DxfRecord, outer: Context): DxfLayer | undefined => {
    const name = textOf(record, 8) ?? '0';
    if (outer.layer && name === '0') return outer.layer;
    return document.layers.get(keyOf(name)) ?? { name, hidden: false, record: { type: 'LAYER', groups: [], line: record.line } };
  };

  const addLine = (record: DxfRecord, rest: readonly DxfRecord[], index: number, described: string, { map, levels, paint }: Context): void => {
    const scale = Math.sqrt(Math.abs(areaFactor(map)));
    const own = curvesOf(record, rest, SPLINE_TOLERANCE_MM / scale);
    if (!own) return once('shape-not-read', 'warning', described, { fault: `line ${record.line} of the file` });
    if (isFitOnly(record)) once('spline-through-points', 'warning', described, {});
    const curves: Curve[] = [];
    for (const curve of own) {
      if (curves.push(mapCurve(map, curve)) > READING_LIMITS.curves) throw limitPassed('curves', READING_LIMITS.curves);
    }
    if (curves.length === 0) return;
    const dash = paint.dash.some((length) => length > 0) ? paint.dash.map((length) => length * scale) : [];
    const source: LineSource = { index, described, levels, stroke: paint.stroke, dash, widthMm: paint.widthMm, filled: false, marked: false };
    collector.addPath('lines', { curves, closed: samePoint(curves[0]!.from, curves.at(-1)!.to), source });
  };

  const addSolid = (record: DxfRecord, index: number, described: string, { map, levels, paint }: Context): void => {
    const corners = [10, 11, 13, 12].flatMap((code) => pointOf(record, code) ?? []);
    if (corners.length < 3) return once('shape-not-read', 'warning', described, { fault: `line ${record.line} of the file` });
    const source: LineSource = { index, described, levels, stroke: 'none', dash: [], widthMm: paint.widthMm, filled: true, marked: false };
    const curves = corners.map((from, i) => mapCurve(map, { kind: 'line', from, to: corners[(i + 1) % corners.length]! }));
    collector.addPath('fills', { curves, closed: true, source });
  };

  const addText = (record: DxfRecord, { map, levels }: Context): void => {
    const text = drawnText(record, map, levels);
    if (text) collector.texts.push(text);
  };

  const follow = (name: string, described: string, map: Affine, context: Context): void => {
    const block = document.blocks.get(keyOf(name));
    if (!block) return once('use-without-target', 'warning', described, { link: name });
    const isTooDeep = context.following.includes(block) || context.following.length >= READING_LIMITS.useDepth;
    if (isTooDeep) return once('use-in-itself', 'warning', described, { link: name });
    visitAll(block.entities, {
      ...context,
      map: compose(map, translation(-block.base.x, -block.base.y)),
      levels: context.measuring ? context.levels : [levelOf(block.name, context.levels), ...context.levels],
      following: [...context.following, block],
    });
  };

  const insert = (record: DxfRecord, described: string, context: Context): void => {
    const number = (code: number, otherwise: number) => numberOf(record, code) ?? otherwise;
    const at = pointOf(record, 10) ?? { x: 0, y: 0 };
    const own = compose(compose(translation(at.x, at.y), rotation(number(50, 0))), scaling(number(41, 1), number(42, 1)));
    const turned = compose(translation(at.x, at.y), rotation(number(50, 0)));
    if (!(areaFactor(own) !== 0 && Number.isFinite(areaFactor(own)))) return once('shape-not-read', 'warning', described, { fault: `line ${record.line} of the file` });
    for (let row = 0; row < Math.max(1, number(71, 1)); row++) {
      for (let column = 0; column < Math.max(1, number(70, 1)); column++) {
        if (row + column > 0) collector.nextElement();
        const step = compose(compose(turned, translation(column * number(44, 0), row * number(45, 0))), scaling(number(41, 1), number(42, 1)));
        follow(textOf(record, 2) ?? '', described, compose(context.map, step), context);
      }
    }
  };

  /** A dimension is drawn by a block of its own; nothing of it is a rule. */
  const dimension = (record: DxfRecord, described: string, context: Context): void => {
    const name = textOf(record, 2);
    if (name !== undefined) follow(name, described, context.map, { ...context, levels: [levelOf('Dimensions', [])], measuring: true });
  };

  return { collector, visitAll };
}

/** Vertices and attributes belong to the entity before them. */
const FOLLOWS: ReadonlySet<string> = new Set(['VERTEX', 'ATTRIB', 'SEQEND']);

/** What draws nothing. */
const SILENT: ReadonlySet<string> = new Set(['ATTDEF', 'VIEWPORT', 'SEQEND', 'POINT']);

/** What is drawn but is never a rule. */
const AS_NOTE: ReadonlySet<string> = new Set(['HATCH', 'IMAGE', 'LEADER', 'MULTILEADER', 'MLEADER', 'WIPEOUT', 'TOLERANCE', 'ACAD_TABLE', 'OLE2FRAME', 'XLINE', 'RAY', '3DFACE']);

/** One level a name and place: lines of one layer are of one group. */
function createLevels() {
  const known = new Map<string, NameLevel>();
  return (name: string, outer: readonly NameLevel[]): NameLevel => {
    const id = `${outer[0]?.key ?? 0} ${name}`;
    const level = known.get(id) ?? { group: true, id: undefined, classes: [], names: name === '' ? [] : [decoded(name)], key: known.size + 1 };
    known.set(id, level);
    return level;
  };
}

/** Old files write what is not Latin as `\U+20AC`. */
function decoded(name: string): string {
  return name.replace(/\\U\+([0-9a-f]{4})/gi, (_, code: string) => String.fromCodePoint(parseInt(code, 16)));
}

/** `line#1A3 in layer "Stanze"`, by its handle, as programs find it again. */
function describe(record: DxfRecord, index: number, layer: DxfLayer | undefined): string {
  const type = record.type.toLowerCase();
  const handle = textOf(record, 5);
  const own = handle === undefined ? `${type} ${index} (line ${record.line})` : `${type}#${handle}`;
  return layer ? `${own} in layer "${decoded(layer.name)}"` : own;
}

/** Entities may be drawn on the back of the drawing's plane, where x runs the other way; undefined for any other plane. */
function ownPlane(record: DxfRecord, map: Affine): Affine | undefined {
  const [x, y, z] = [numberOf(record, 210) ?? 0, numberOf(record, 220) ?? 0, numberOf(record, 230) ?? 1];
  const isFlat = Math.abs(x) < FLAT && Math.abs(y) < FLAT && z !== 0;
  if (!isFlat) return undefined;
  return z > 0 ? map : compose(map, scaling(-1, 1));
}

/** A plane leaning by less moves nothing on a sheet by a micrometre. */
const FLAT = 1e-6;
