import { SaxesParser } from 'saxes';
import { describe, expect, test } from 'vitest';
import { sheetScene } from '../../src/render/sheet-scene.ts';
import { sceneToSvg } from '../../src/render/svg.ts';
import { carton, grid, roundLabel, sheetView } from './views.ts';

interface Found {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
}

/** Reads with an XML parser that refuses whatever is not well formed. */
function elements(svg: string): Found[] {
  const found: Found[] = [];
  const parser = new SaxesParser();
  parser.on('error', (error) => {
    throw error;
  });
  parser.on('opentag', ({ name, attributes }) => found.push({ name, attributes: attributes as Record<string, string> }));
  parser.write(svg).close();
  return found;
}

const design = carton(60, 40, 90);
const view = sheetView(1020, 720, design, grid(design, 8, 13, { rows: 3, columns: 4, stepX: 218, stepY: 204, turned: (row) => row % 2 === 1 }));

describe('the sheet as SVG', () => {
  const svg = sceneToSvg(sheetScene(view));
  const all = elements(svg);

  test('every blank is a use of one drawing, at its place on the sheet', () => {
    const cuts = all.filter(({ name, attributes }) => name === 'use' && attributes['href'] === '#design1-Cutting');
    expect(cuts).toHaveLength(12);
    expect(cuts[1]!.attributes['transform']).toBe('translate(226 13)');
    expect(cuts[4]!.attributes['transform']).toBe('translate(220 415) rotate(180)');
  });

  test('rules stand in groups named after their roles, knives painted last', () => {
    const layers = all.filter(({ attributes }) => attributes['data-layer'] !== undefined).map(({ attributes }) => attributes['data-layer']);
    expect(layers).toEqual(['Surround', 'Waste', 'Gripper edge', 'Limits', 'Blanks', 'Bleed', 'Creasing', 'Cutting', 'Register marks', 'Sheet edge', 'Stations', 'Steps', 'Title block']);
  });

  test('every reference has its target and no id stands twice', () => {
    const ids = all.flatMap(({ attributes }) => attributes['id'] ?? []);
    expect(new Set(ids).size).toBe(ids.length);
    for (const { name, attributes } of all) if (name === 'use') expect(ids).toContain(attributes['href']!.slice(1));
  });

  test('a prefix keeps several pictures in one page apart', () => {
    const ids = elements(sceneToSvg(sheetScene(view), { idPrefix: 'b-' })).flatMap(({ attributes }) => attributes['id'] ?? []);
    expect(ids.every((id) => id.startsWith('b-'))).toBe(true);
  });

  test('is the same to the byte when drawn again', () => {
    expect(sceneToSvg(sheetScene(structuredClone(view)))).toBe(svg);
  });

  test('true size in millimetres, one user unit a millimetre', () => {
    const { attributes } = all[0]!;
    const [, , width, height] = attributes['viewBox']!.split(' ');
    expect(attributes['width']).toBe(`${width}mm`);
    expect(attributes['height']).toBe(`${height}mm`);
  });

  test('names from a drawing cannot break the markup', () => {
    const hostile = { ...view, designs: [{ ...design, id: `"><script>&'\u0000` }], figures: [{ label: '<b>', value: ']]> & "x"' }] };
    const found = elements(sceneToSvg(sheetScene(hostile)));
    expect(found.some(({ name }) => name === 'script' || name === 'b')).toBe(false);
  });

  test('true curves stay curves', () => {
    const label = roundLabel(20);
    expect(sceneToSvg(sheetScene(sheetView(420, 297, label, grid(label, 8, 14, { rows: 1, columns: 1, stepX: 0, stepY: 0 }))))).toMatch(/A20 20 0 0 1 /);
  });
});
