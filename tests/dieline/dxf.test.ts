import { DxfWriter, point2d, point3d, Units } from '@tarikjabiri/dxf';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { InputError } from '../../src/base/issue.ts';
import { curvePoint } from '../../src/dieline/curve-part.ts';
import { readDxf, SPLINE_TOLERANCE_MM } from '../../src/dieline/dxf/dxf-drawing.ts';
import { READING_LIMITS } from '../../src/dieline/limits.ts';
import type { ReadOptions } from '../../src/dieline/options.ts';
import { readDrawing } from '../../src/dieline/read-drawing.ts';
import { lengthOf } from '../../src/geometry/vector.ts';
import { codes, figures } from './support.ts';

type Pair = readonly [code: number, value: string | number];

const bytes = (text: string) => new TextEncoder().encode(text);
const groups = (...pairs: readonly Pair[]) => pairs.map(([code, value]) => `${String(code).padStart(3)}\n${value}\n`).join('');
const entity = (type: string, ...pairs: readonly Pair[]) => groups([0, type], ...pairs);
const section = (name: string, content: string) => `${groups([0, 'SECTION'], [2, name])}${content}${groups([0, 'ENDSEC'])}`;
const MILLIMETRES = groups([9, '$INSUNITS'], [70, 4]);

/** A whole file; `units` are the groups of the header. */
function dxf(entities: string, { header = MILLIMETRES, tables = '', blocks = '' } = {}): string {
  return `${section('HEADER', header)}${section('TABLES', tables)}${section('BLOCKS', blocks)}${section('ENTITIES', entities)}${groups([0, 'EOF'])}`;
}

function block(name: string, entities: string, ...pairs: readonly Pair[]): string {
  return `${entity('BLOCK', [8, '0'], [2, name], [10, 0], [20, 0], ...pairs)}${entities}${entity('ENDBLK')}`;
}

const line = (x1: number, y1: number, x2: number, y2: number, layer = 'Cut') => entity('LINE', [8, layer], [10, x1], [20, y1], [11, x2], [21, y2]);
const polyline = (layer: string, closed: boolean, ...vertices: readonly (readonly [number, number, number?])[]) =>
  entity('LWPOLYLINE', [8, layer], [90, vertices.length], [70, closed ? 1 : 0], ...vertices.flatMap(([x, y, bulge]): Pair[] => [[10, x], [20, y], ...(bulge === undefined ? [] : [[42, bulge] as const])]));
const square = (layer: string, size = 40) => polyline(layer, true, [0, 0], [size, 0], [size, size], [0, size]);

const read = (text: string, options: Partial<ReadOptions> = {}) => readDrawing(bytes(text), options);
const curves = (text: string) => readDxf(bytes(text), undefined).lines.flatMap((drawn) => drawn.curves);

describe('entities', () => {
  test('a polyline with bulges, a crease by its layer, a round opening', async () => {
    const half = polyline('Cut', true, [0, 0], [60, 0, 1], [60, 20], [0, 20, 1]);
    const dieline = await read(dxf(half + line(10, 0, 10, 20, 'Rilllinie') + entity('CIRCLE', [8, 'Cut'], [10, 40], [20, 10], [40, 3])));
    expect(figures(dieline)).toEqual([{ size: [80, 20], area: 1200 + round(100 * Math.PI), openings: 1, rules: { Cutting: round(120 + 26 * Math.PI), Creasing: 20 } }]);
    expect(dieline.blanks[0]!.box).toEqual({ minX: -10, minY: 0, maxX: 70, maxY: 20 });
    expect(codes(dieline)).toEqual([]);
  });

  test('a heavy polyline says the same as a light one; frame points of a fitted curve are no part of it', () => {
    const vertex = (x: number, y: number, ...more: readonly Pair[]) => entity('VERTEX', [8, 'Cut'], [10, x], [20, y], ...more);
    const heavy = entity('POLYLINE', [8, 'Cut'], [66, 1], [10, 0], [20, 0], [70, 1]) + vertex(0, 0, [42, 0.5]) + vertex(500, 500, [70, 16]) + vertex(40, 0) + vertex(40, 40) + entity('SEQEND', [8, 'Cut']);
    expect(curves(dxf(heavy))).toEqual(curves(dxf(polyline('Cut', true, [0, 0, 0.5], [40, 0], [40, 40]))));
  });

  test('arcs run counter-clockwise in degrees, ellipses by parameter, seen from below the other way', () => {
    const [arc] = curves(dxf(entity('ARC', [8, '0'], [10, 10], [20, 0], [40, 5], [50, 350], [51, 80])));
    expect(arc!.from).toEqual({ x: expect.closeTo(10 + 5 * Math.cos((-10 * Math.PI) / 180), 9), y: expect.closeTo(-5 * Math.sin((10 * Math.PI) / 180), 9) });
    expect(arc).toMatchObject({ kind: 'arc', sweep: expect.closeTo(Math.PI / 2, 12) });
    const half = (...more: readonly Pair[]) => curves(dxf(entity('ELLIPSE', [8, '0'], [10, 0], [20, 0], [11, 0], [21, 10], [40, 0.5], [41, 0], [42, Math.PI], ...more)))[0]!;
    expect(curvePoint(half(), 0.5)).toEqual({ x: expect.closeTo(-5, 9), y: expect.closeTo(0, 9) });
    expect(curvePoint(half([210, 0], [220, 0], [230, -1]), 0.5)).toEqual({ x: expect.closeTo(5, 9), y: expect.closeTo(0, 9) });
    const mirrored = curves(dxf(entity('ARC', [8, '0'], [10, 10], [20, 0], [40, 5], [50, 0], [51, 90], [210, 0], [220, 0], [230, -1])))[0]!;
    expect(mirrored).toMatchObject({ from: { x: -15, y: 0 }, sweep: expect.closeTo(-Math.PI / 2, 12) });
  });

  test('a cubic spline is exact: one that is a single Bézier curve, and one with a knot within', () => {
    const spline = (knots: readonly number[], points: readonly (readonly [number, number])[], ...more: readonly Pair[]) =>
      curves(dxf(entity('SPLINE', [8, 'Cut'], [70, 8], [71, 3], ...knots.map((knot): Pair => [40, knot]), ...points.flatMap(([x, y]): Pair[] => [[10, x], [20, y]]), ...more)));
    expect(spline([0, 0, 0, 0, 1, 1, 1, 1], [[0, 0], [0, 10], [10, 10], [10, 0]])).toEqual([
      { kind: 'cubic', from: { x: 0, y: 0 }, control1: { x: 0, y: 10 }, control2: { x: 10, y: 10 }, to: { x: 10, y: 0 } },
    ]);
    const two = spline([0, 0, 0, 0, 1, 2, 2, 2, 2], [[0, 0], [0, 8], [10, 16], [20, 8], [20, 0]]);
    expect(two).toHaveLength(2);
    // By hand: halfway the middle point of the knot's two inner points, (5, 12) and (15, 12).
    expect(two[0]!.to).toEqual({ x: 10, y: 12 });
    expect(two[1]!.from).toEqual(two[0]!.to);
  });

  test('a rational spline that is a quarter of a circle keeps to the circle', () => {
    const weights = [1, Math.SQRT1_2, 1];
    const quarter = curves(dxf(entity('SPLINE', [8, 'Cut'], [70, 12], [71, 2], ...[0, 0, 0, 1, 1, 1].map((knot): Pair => [40, knot]), ...weights.map((weight): Pair => [41, weight]), ...[[50, 0], [50, 50], [0, 50]].flatMap(([x, y]): Pair[] => [[10, x!], [20, y!]]))));
    const offCircle = quarter.flatMap((curve) => Array.from({ length: 101 }, (_, i) => Math.abs(lengthOf(curvePoint(curve, i / 100)) - 50)));
    expect(Math.max(...offCircle)).toBeLessThan(1.2 * SPLINE_TOLERANCE_MM);
    expect(quarter.length).toBeLessThan(40);
  });

  test('the writer of our own files is read: line, arc, circle, polyline, spline, block turned and mirrored', async () => {
    const writer = new DxfWriter();
    writer.setUnits(Units.Centimeters);
    writer.addLayer('Stanze', 1, 'CONTINUOUS');
    const flag = writer.addBlock('flag');
    flag.addLWPolyline([{ point: point2d(0, 0) }, { point: point2d(4, 0) }, { point: point2d(0, 2) }], { flags: 1, layerName: '0' });
    writer.addInsert('flag', point3d(10, 5), { rotationAngle: 90, scaleFactor: { x: 1, y: -2, z: 1 }, layerName: 'Stanze' });
    const [blank] = (await read(writer.stringify())).blanks;
    // (0,0) (4,0) (0,2), mirrored and doubled in y, turned a quarter, moved; centimetres.
    expect(blank!.box).toEqual({ minX: 100, minY: 50, maxX: 140, maxY: 90 });
    expect(blank!.areaMm2).toBeCloseTo(800, 6);
  });
});

describe('splines given only by points that they go through', () => {
  const fit = (points: readonly (readonly [number, number])[], closed: boolean) => entity('SPLINE', [8, 'Cut'], [70, closed ? 9 : 8], [71, 3], [74, points.length], ...points.flatMap(([x, y]): Pair[] => [[11, x], [21, y]]));
  const round = Array.from({ length: 24 }, (_, i): [number, number] => [50 + 40 * Math.cos((i * Math.PI) / 12), 50 + 40 * Math.sin((i * Math.PI) / 12)]);

  /** A cubic spline leaves a circle by some (chord angle)⁴/384 of its radius: for 15° 0.0005 mm of 40. */
  test('a closed one through 24 points of a circle is that circle to 2 µm, the same at every corner; and is said', async () => {
    const dieline = await read(dxf(fit(round, true)));
    expect(codes(dieline)).toContain('spline-through-points');
    const [blank] = dieline.blanks;
    expect(Math.abs(blank!.areaMm2 - Math.PI * 1600)).toBeLessThan(0.5);
    for (const curve of blank!.outline) for (const share of [0, 0.25, 0.5, 0.75]) expect(Math.abs(lengthOf({ x: curvePoint(curve, share).x - 50, y: curvePoint(curve, share).y - 50 }) - 40)).toBeLessThan(0.002);
  });

  test('an open one goes through every point, and two points are a line', async () => {
    const points: [number, number][] = [[0, 0], [20, 30], [60, 35], [100, 0]];
    const wave = await read(dxf(fit(points, false) + line(100, 0, 0, 0)));
    const ends = wave.blanks[0]!.outline.map(({ from }) => [Math.round(from.x * 1e3) / 1e3, Math.round(from.y * 1e3) / 1e3]);
    for (const point of points) expect(ends).toContainEqual(point);
    const straight = await read(dxf(fit([[0, 0], [100, 0]], false) + line(100, 0, 50, 80) + line(50, 80, 0, 0)));
    expect(straight.blanks[0]!.areaMm2).toBeCloseTo(4000, 3);
  });

  test('points that are no numbers, or one alone, are not read', async () => {
    expect(codes(await read(dxf(fit([[0, 0]], false) + square('Cut'))))).toContain('shape-not-read');
  });
});

describe('units', () => {
  test.each([[1, 25.4], [2, 304.8], [4, 1], [5, 10], [6, 1000], [13, 0.001]])('$INSUNITS %i is %d mm', async (units, mm) => {
    const dieline = await read(dxf(square('Cut', 100 / mm), { header: groups([9, '$INSUNITS'], [70, units]) }));
    expect(dieline.blanks[0]!.box).toMatchObject({ maxX: expect.closeTo(100, 3) });
    expect(dieline.scale).toEqual({ mmPerUnit: expect.closeTo(mm, 12), from: 'unit' });
    expect(codes(dieline)).not.toContain('unit-assumed');
  });

  test('without units millimetres are assumed and said; --scale and --width-is set it right', async () => {
    const bare = dxf(square('Cut'), { header: '' });
    expect(await read(bare)).toMatchObject({ scale: { mmPerUnit: 1, from: 'assumed millimetres' }, issues: [{ code: 'unit-assumed', severity: 'warning' }] });
    const inches = await read(bare, { scale: 25.4 });
    expect([figures(inches)[0]!.size, codes(inches)]).toEqual([[1016, 1016], []]);
    const measured = await read(bare, { widthIs: 182 });
    expect([figures(measured)[0]!.size, measured.scale.from]).toEqual([[182, 182], 'given width']);
  });
});

describe('layers, blocks, paint', () => {
  const layer = (name: string, ...pairs: readonly Pair[]) => entity('LAYER', [2, name], ...pairs);

  test('what is off, frozen, invisible or on paper is not read', () => {
    const tables = layer('Off', [62, -3]) + layer('Frozen', [70, 1], [62, 3]) + layer('On', [62, 3]);
    const drawing = readDxf(bytes(dxf(line(0, 0, 1, 0, 'Off') + line(0, 0, 2, 0, 'frozen') + line(0, 0, 3, 0, 'on') + entity('LINE', [67, 1], [8, 'On'], [10, 0], [20, 0], [11, 9], [21, 9]), { tables })), undefined);
    expect(drawing.lines.map(({ curves: [curve] }) => curve!.to.x)).toEqual([3]);
  });

  test('colour and dashes come from the entity, its layer, or the block’s insert', () => {
    const tables = entity('LTYPE', [2, 'Strich'], [49, 3], [49, -1]) + layer('A', [62, 5], [6, 'STRICH']) + layer('B', [62, 1]);
    const blocks = block('part', entity('LINE', [8, '0'], [62, 0], [10, 0], [20, 0], [11, 1], [21, 0]) + entity('LINE', [8, 'B'], [420, 0x123456], [10, 0], [20, 0], [11, 2], [21, 0]) + line(0, 0, 3, 0, '0'));
    const { lines } = readDxf(bytes(dxf(entity('INSERT', [8, 'A'], [2, 'PART'], [62, 3], [10, 0], [20, 0], [41, 2], [42, 2]), { tables, blocks })), undefined);
    expect(lines.map(({ source }) => [source.stroke, source.dash, source.levels.map(({ names }) => names[0])])).toEqual([
      ['#00ff00', [6, 2], ['A', 'part', 'A']],
      ['#123456', [], ['B', 'part', 'A']],
      ['#0000ff', [6, 2], ['A', 'part', 'A']],
    ]);
  });

  test('rules of the user, names in other languages, old code pages and escapes', async () => {
    const latin = Uint8Array.from(dxf(square('Außenkontur') + line(10, 0, 10, 40, 'Ma\\U+00DFe'), { header: MILLIMETRES + groups([9, '$DWGCODEPAGE'], [3, 'ANSI_1252']) }), (character) => character.charCodeAt(0));
    const dieline = await readDrawing(latin);
    expect(dieline.rest.map(({ role }) => role)).toEqual(['Dimensions']);
    expect(dieline.blanks[0]!.rules.map(({ role, reason }) => [role, reason])).toEqual([['Cutting', 'name']]);
    const ruled = await read(dxf(square('L1') + line(10, 0, 10, 40, 'L2')), { roles: [{ role: 'Cutting', subject: 'layer', value: 'l1', text: '' }, { role: 'Creasing', subject: 'layer', value: 'L2', text: '' }] });
    expect(figures(ruled)[0]!.rules).toEqual({ Cutting: 160, Creasing: 40 });
  });

  test('an insert in rows and columns; dimensions and their blocks are no rules', async () => {
    const blocks = block('one', square('0')) + block('*D1', line(0, -5, 40, -5, '0') + line(0, 0, 0, -6, '0'));
    const dimension = entity('DIMENSION', [8, 'Cut'], [2, '*D1'], [10, 0], [20, -5]);
    const dieline = await read(dxf(entity('INSERT', [8, 'Cut'], [2, 'one'], [10, 0], [20, 0], [70, 3], [71, 2], [44, 50], [45, 60]) + dimension, { blocks }));
    expect(dieline.blanks.map(({ box }) => [box.minX, box.minY])).toEqual([[0, 60], [50, 60], [100, 60], [0, 0], [50, 0], [100, 0]]);
    expect(dieline.rest.map(({ role }) => role)).toEqual(['Dimensions', 'Dimensions']);
  });

  test('faults have their places in the drawing’s own axes, y up, and name layer and handle', async () => {
    const gap = entity('LINE', [5, '1A3'], [8, 'Cut'], [10, 0], [20, 100], [11, 40], [21, 100]) + line(40, 100, 40, 140) + line(40, 140, 0, 140) + line(0, 140, 0, 100.3);
    const { issues } = await read(dxf(gap));
    expect(issues).toMatchObject([{ code: 'gap-closed', place: [0, 100.15] }]);
    expect(readDxf(bytes(dxf(gap)), undefined).lines[0]!.source.described).toBe('line#1A3 in layer "Cut"');
  });
});

describe('hostile and broken files', () => {
  const codeOf = async (work: () => Promise<unknown>): Promise<string> => {
    try {
      await work();
      return 'read';
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      return error.issues[0]!.code;
    }
  };

  test.each([
    ['no pairs', 'dxf-not-readable', `${section('ENTITIES', 'LINE\n0\n')}`],
    ['binary', 'dxf-binary', 'AutoCAD Binary DXF\r\n\x1a\0'],
    ['nothing at all', 'drawing-empty', ''],
    ['nothing known', 'drawing-kind-unknown', 'BM6'],
    ['a drawing database', 'drawing-kind-unknown', 'AC1027\0\0'],
  ])('%s: %s', async (_, code, text) => {
    expect(await codeOf(() => read(text))).toBe(code);
  });

  test('blocks in themselves, missing blocks, blocks too deep and too many', async () => {
    const insert = (name: string, ...more: readonly Pair[]) => entity('INSERT', [8, '0'], [2, name], [10, 0], [20, 0], ...more);
    expect(codes(await read(dxf(square('Cut') + insert('a'), { blocks: block('a', insert('b')) + block('b', insert('A')) })))).toContain('use-in-itself');
    expect(codes(await read(dxf(square('Cut') + insert('nowhere'))))).toContain('use-without-target');
    const bomb = Array.from({ length: 12 }, (_, i) => block(`l${i}`, Array.from({ length: 20 }, () => (i === 0 ? line(0, 0, 1, 1) : insert(`l${i - 1}`))).join('')));
    expect(await codeOf(() => read(dxf(insert('l11'), { blocks: bomb.join('') })))).toBe('drawing-limit');
    expect(await codeOf(() => read(dxf(insert('l0', [70, 30000], [71, 30000]), { blocks: block('l0', '') })))).toBe('drawing-limit');
    const large = new Uint8Array(READING_LIMITS.fileBytes + 1).fill(0x20);
    large.set(bytes(' 0\nSECTION\n'));
    expect(await codeOf(() => readDrawing(large))).toBe('drawing-limit');
  });

  test('what cannot be read is left out and named; a file cut short is said', async () => {
    const wild = entity('LINE', [8, 'Cut'], [10, 'x'], [20, 0], [11, 4], [21, 0]) + entity('SPLINE', [8, 'Cut'], [71, 3], [40, 0], [10, 0], [20, 0]) + entity('ARC', [8, 'Cut'], [10, 0], [20, 0], [40, -4], [50, 0], [51, 90]) + line(0, 0, 1e9, 0) + entity('REGION', [8, 'Cut']) + entity('CIRCLE', [8, 'Cut'], [10, 0], [20, 0], [40, 4], [210, 1], [220, 0], [230, 0]);
    const { issues, blanks } = await read(dxf(square('Cut') + wild).replace(/ {2}0\nEOF\n/, ''));
    expect(blanks).toHaveLength(1);
    expect(issues.map(({ code }) => code).sort()).toEqual(['coordinates-out-of-range', 'dxf-cut-short', 'entity-left-out', 'shape-not-read', 'shape-not-read', 'shape-not-read', 'shape-not-read']);
  });

  test('any lines at all end in a drawing or in a reason', async () => {
    const word = fc.constantFrom('SECTION', 'ENDSEC', 'TABLE', 'ENDTAB', 'LAYER', 'VPORT', 'LTYPE', 'BLOCK', 'ENDBLK', 'ENTITIES', 'BLOCKS', 'TABLES', 'HEADER', 'INSERT', 'LINE', 'ARC', 'SPLINE', 'POLYLINE', 'VERTEX', 'SEQEND', 'EOF', '__proto__', '1', '-1', '0', '1e400', '40', 'a');
    const code = fc.constantFrom(0, 0, 0, 2, 8, 10, 20, 11, 21, 40, 41, 42, 50, 51, 62, 70, 71, 210, 230);
    await fc.assert(
      fc.asyncProperty(fc.array(fc.tuple(code, word), { maxLength: 60 }), async (pairs) => {
        expect(typeof (await codeOf(() => read(groups([0, 'SECTION'], [2, 'ENTITIES'], ...pairs))))).toBe('string');
      }),
      { numRuns: 300, seed: 7 },
    );
  });
});

function round(value: number): number {
  return Math.round(value * 1000) / 1000;
}
