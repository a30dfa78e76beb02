import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { IDxf } from 'dxf-parser';
import { SaxesParser } from 'saxes';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { LayoutFile } from '../../src/layout/layout-file.ts';
import { judgeForProduction } from '../../src/layout/sound.ts';
import { handover } from '../../src/pipeline/handover.ts';
import { dieRules } from '../../src/render/die-rules.ts';
import type { HandoverDetails } from '../../src/render/handover-facts.ts';
import { viewOfLayout } from '../../src/render/view-of-layout.ts';
import { at, layoutWith, rectangle } from '../support/layouts.ts';
import { hasProgram } from '../support/programs.ts';

/** Its types speak of a default export that Node does not see. */
const DxfParser = createRequire(import.meta.url)('dxf-parser') as new () => { parseSync(text: string): IDxf | null };

/** A card with a quarter-round corner, a crease and a glue area. */
const card = {
  id: 'card & co',
  outline: [[0, 0], [100, 0], [100, 60], [0, 60]] as [number, number][],
  openings: [],
  rotations: [0, 90, 180, 270],
  drawing: {
    outline: 'M0 0 L100 0 L100 40 A20 20 0 0 1 80 60 L0 60 Z',
    paths: [{ role: 'Creasing', d: 'M20 0 L20 60' }, { role: 'Gluing', d: 'M2 2 L18 2 L18 58 L2 58 Z' }],
  },
};
card.outline = [[0, 0], [100, 0], [100, 40], ...Array.from({ length: 89 }, (_, i): [number, number] => {
  // Tangent polygon outside the corner of radius 20 about (80, 40).
  const angle = ((i + 0.5) * Math.PI) / 178;
  const reach = 20 / Math.cos(Math.PI / 356);
  return [80 + reach * Math.cos(angle), 40 + reach * Math.sin(angle)];
}), [80, 60], [0, 60]];
const layout = layoutWith([card], [at('card & co', 10, 10), at('card & co', 220, 76, 180)]);

async function filesOf(file: LayoutFile, details: HandoverDetails = {}): Promise<Map<string, string | Uint8Array>> {
  const { sound, judgement } = judgeForProduction(file);
  expect(judgement.faults).toEqual([]);
  return new Map((await handover(sound!, details)).files.map(({ name, content }) => [name, content]));
}

let folder: string;
let files: Map<string, string | Uint8Array>;
const path = (name: string) => join(folder, name);
const text = (name: string) => files.get(name) as string;
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'blankwright-'));
  files = await filesOf(layout, { layoutNumber: 'L-7', grain: 'x', back: 'work-and-turn', nicks: { count: 4, widthMm: 0.5, clearOf: ['lower'] }, board: { grammage: 300, caliper: 0.45 } });
  for (const [name, content] of files) writeFileSync(path(name), content);
});
afterAll(() => rmSync(folder, { recursive: true }));

describe('rules of the form', () => {
  const knives = (file: LayoutFile) => dieRules(viewOfLayout(file, { figures: [] })).filter(({ role }) => role === 'Cutting');
  const length = (file: LayoutFile) => knives(file).flatMap(({ curves }) => curves).reduce((sum, { from, to }) => sum + Math.hypot(to.x - from.x, to.y - from.y), 0);
  const rules = { gap: 0, bleed: 0, bleedMeeting: 'cut', commonKnife: true } as const;
  const block = (columns: number, rows: number, dx = 0) =>
    layoutWith([rectangle('a', 170.5, 154)], Array.from({ length: columns * rows }, (_, i) => at('a', 5 + (170.5 + dx) * (i % columns), 5 + 154 * Math.floor(i / columns))), { rules });

  test('12 up of 170.5 × 154 with common knives: 5 038 mm instead of 7 788', () => {
    // Closed form: (3 + 1) × 682 + (4 + 1) × 462 = 5 038; separate 12 × 2 × (170.5 + 154) = 7 788. Columns 1 mm apart share rows only.
    expect(length(block(4, 3))).toBeCloseTo(5038, 6);
    expect(length(block(4, 3, 1))).toBeCloseTo(8 * 462 + 4 * 682, 6);
  });

  test('a knife that runs on another over a part of its length is cut there', () => {
    const file = layoutWith([rectangle('a', 100, 60), rectangle('b', 50, 40)], [at('a', 10, 10), at('b', 110, 20)], { rules });
    expect(length(file)).toBeCloseTo(320 + 180 - 40, 9);
    expect(knives(file).every(({ station }) => station <= 1)).toBe(true);
  });
});

describe('sheet-steps.pdf', () => {
  const objects = () => {
    const { qpdf } = JSON.parse(execFileSync('qpdf', ['--json=2', path('sheet-steps.pdf')], { encoding: 'utf8', maxBuffer: 2 ** 26 }));
    return Object.values(qpdf[1]).flatMap((object: any) => [object.value ?? object.stream?.dict]);
  };

  test('an independent checker finds no fault; one page of the sheet’s size', ({ skip }) => {
    if (!hasProgram('qpdf', '--version')) skip();
    expect(execFileSync('qpdf', ['--check', path('sheet-steps.pdf')], { encoding: 'utf8' })).toContain('No syntax or stream encoding errors found');
    const pages = objects().filter((value) => value?.['/Type'] === '/Page');
    expect(pages).toHaveLength(1);
    expect(pages[0]['/MediaBox'].map((points: number) => Math.round((points * 25.4) / 0.072) / 1000)).toEqual([0, 0, 1000, 700]);
  });

  test('an independent reader finds one group a processing step, with the metadata of ISO 19593-1:2018', ({ skip }) => {
    if (!hasProgram('qpdf', '--version')) skip();
    const groups = objects().filter((value) => value?.['/Type'] === '/OCG').map((group) => [group['/Name'], group['/GTS_Metadata']]);
    const structural = (type: string) => ({ '/GTS_ProcStepsGroup': '/Structural', '/GTS_ProcStepsType': `/${type}` });
    expect(Object.fromEntries(groups)).toEqual({
      'u:Bleed': structural('Bleed'),
      'u:Creasing': structural('Creasing'),
      'u:Cutting': structural('Cutting'),
      'u:Gluing': structural('Gluing'),
      'u:Legend': { '/GTS_ProcStepsGroup': '/Legend' },
      'u:Dimensions': { '/GTS_ProcStepsGroup': '/Dimensions' },
      'u:Printed marks': undefined,
    });
    const [properties] = objects().flatMap((value) => value?.['/OCProperties'] ?? []);
    expect(properties['/OCGs']).toHaveLength(7);
    expect(properties['/D']['/Order']).toEqual(properties['/OCGs']);
  });

  test('each step is a separation of its own', ({ skip }) => {
    if (!hasProgram('gs', '--version')) skip();
    execFileSync('gs', ['-q', '-dNOPAUSE', '-dBATCH', '-dSAFER', '-sDEVICE=tiffsep', '-r10', `-sOutputFile=${path('plate')}`, path('sheet-steps.pdf')], { encoding: 'utf8' });
    const plates = execFileSync('ls', [folder], { encoding: 'utf8' }).split('\n').flatMap((name) => /^plate\((.*)\)\./.exec(name)?.[1] ?? []);
    expect(plates).toEqual(expect.arrayContaining(['Bleed', 'Creasing', 'Cutting', 'Dimensions', 'Gluing', 'Legend']));
  });
});

describe('the die maker’s DXF', () => {
  const read = (name: string) => new DxfParser().parseSync(text(name))!;
  const texts = (name: string) => read(name).entities.filter(({ type }) => type === 'TEXT').map((entity) => (entity as unknown as { text: string }).text);

  test('millimetres, layers by role, arcs as arcs', () => {
    const { header, entities, tables } = read('die-printed-side.dxf');
    expect(header['$INSUNITS']).toBe(4);
    expect(Object.keys(tables.layer.layers)).toEqual(expect.arrayContaining(['Cutting', 'Creasing', 'Gluing', 'Nicks', 'Sheet', 'Stations', 'Marks']));
    const arcs = entities.filter(({ type }) => type === 'ARC') as unknown as { center: { x: number; y: number }; radius: number; startAngle: number; endAngle: number; layer: string }[];
    expect(arcs.map(({ layer, radius, center: { x, y } }) => [layer, radius, x, y])).toEqual([['Cutting', 20, 90, 50], ['Cutting', 20, 140, 36]]);
    expect([arcs[0]!.startAngle, arcs[0]!.endAngle]).toEqual([0, Math.PI / 2]);
    expect(entities.filter(({ layer }) => layer === 'Nicks')).toHaveLength(8);
  });

  test('the rule side is the mirror image and says so', () => {
    const lines = (name: string) => read(name).entities.filter(({ type, layer }) => type === 'LINE' && layer === 'Creasing').map((entity) => (entity as unknown as { vertices: { x: number }[] }).vertices.map(({ x }) => x));
    expect(lines('die-printed-side.dxf')).toEqual([[30, 30], [200, 200]]);
    expect(lines('die-rule-side.dxf')).toEqual([[970, 970], [800, 800]]);
    const arc = read('die-rule-side.dxf').entities.find(({ type }) => type === 'ARC') as unknown as { center: { x: number }; startAngle: number; endAngle: number };
    expect([arc.center.x, arc.startAngle, arc.endAngle]).toEqual([910, Math.PI / 2, Math.PI]);
    expect(texts('die-printed-side.dxf')).toContain('PRINTED SIDE');
    expect(texts('die-printed-side.dxf')).not.toContain('RULE SIDE');
    expect(texts('die-rule-side.dxf')).toContain('RULE SIDE');
    expect(texts('die-rule-side.dxf')).not.toContain('PRINTED SIDE');
  });

  test('an independent library audits both without errors', ({ skip }) => {
    if (!hasProgram('/usr/bin/python3', '-c', 'import ezdxf')) skip();
    for (const side of ['printed', 'rule']) {
      const script = 'import sys, ezdxf; d = ezdxf.readfile(sys.argv[1]); print(len(d.audit().errors), d.units, len(d.modelspace().query("ARC")))';
      expect(execFileSync('/usr/bin/python3', ['-c', script, path(`die-${side}-side.dxf`)], { encoding: 'utf8' }).trim()).toBe('0 4 2');
    }
  });
});

test('placements.csv: every station with its box and its place on the back', () => {
  expect(text('placements.csv').split('\r\n')).toEqual([
    'station,design,rotation,x_mm,y_mm,left_mm,bottom_mm,right_mm,top_mm,back_x_mm,back_y_mm,back_rotation',
    '1,card & co,0,10,10,10,10,110,70,990,10,0',
    '2,card & co,180,220,76,120,16,220,76,780,76,180',
    '',
  ]);
});

test('job.xjdf is well-formed and keeps the rules of units and references', () => {
  const seen: { name: string; attributes: Record<string, string> }[] = [];
  const parser = new SaxesParser({ xmlns: false });
  parser.on('opentag', ({ name, attributes }) => seen.push({ name, attributes: attributes as Record<string, string> }));
  parser.on('error', (error) => expect.fail(error.message));
  parser.write(text('job.xjdf')).close();
  const all = (name: string) => seen.filter((element) => element.name === name).map(({ attributes }) => attributes);
  expect(all('XJDF')).toEqual([{ xmlns: 'http://www.CIP4.org/JDFSchema_2_0', JobID: 'L-7', Types: 'DieLayoutProduction' }]);
  // 1000 mm = 2834.6457 pt, 700 mm = 1984.252 pt; thickness in µm.
  expect(all('Media')).toEqual([{ MediaType: 'Paper', MediaUnit: 'Sheet', Dimension: '2834.6457 1984.252', GrainDirection: 'XDirection', Thickness: '450', Weight: '300' }]);
  expect(all('Layout')[0]).toMatchObject({ WorkStyle: 'WorkAndTurn', SheetLay: 'Left', PaperRef: 'Media1' });
  expect(all('Position').map(({ Orientation, AbsoluteBox }) => [Orientation, AbsoluteBox])).toEqual([['Rotate0', '28.3465 28.3465 311.811 198.4252'], ['Rotate180', '340.1575 45.3543 623.622 215.4331']]);
  const stations = all('Station').map(({ StationName, ShapeDefRef }) => [StationName, ShapeDefRef]);
  expect(stations).toEqual([['1', 'Shape1'], ['2', 'Shape1']]);
  const ids = new Set(all('Resource').map(({ ID }) => ID));
  for (const { attributes } of seen) for (const [key, value] of Object.entries(attributes)) if (key.endsWith('Ref')) expect(ids).toContain(value);
  // Outline less the corner's (1 − π/4) · 20², m².
  expect(Number(all('ShapeDef')[0]!.Area)).toBeCloseTo((6000 - (1 - Math.PI / 4) * 400) / 1e6, 6);
});

describe('the pages', () => {
  test('the die order names rule lengths, channels and force; the caution once', () => {
    const page = text('die-order.html');
    // Two blanks: 2 · (100 + 40 + 80 + 60) mm of straight knife and two quarter circles of radius 20.
    expect(page).toContain(`${((2 * (280 + 10 * Math.PI)) / 1000).toFixed(2)}\u00a0m of it knife`);
    for (const figure of ['23.35', '1.295', '1.385', '4 on every blank', '500\u00a0mm from either side edge']) expect(page).toContain(figure);
    expect(page.split('confirmed with the machine').length).toBe(2);
  });

  test('no page holds a rate, all repeat the layout number', () => {
    for (const name of ['die-order.html', 'crew-ticket.html', 'customer.html']) {
      expect(text(name)).toContain('L-7');
      expect(text(name)).not.toMatch(/EUR|per thousand/);
    }
  });
});
