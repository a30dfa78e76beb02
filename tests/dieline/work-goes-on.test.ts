import { describe, expect, test } from 'vitest';
import { readDrawing } from '../../src/dieline/read-drawing.ts';
import { pdf } from '../support/pdf-bytes.ts';
import { page, read } from './support.ts';

const LINES = Array.from({ length: 50 }, (_, i) => i * 3);
const bytes = (text: string) => new TextEncoder().encode(text);
const group = (code: number, value: string | number) => `${code}\n${value}\n`;
const dxfLine = (x: number) => [[0, 'LINE'], [8, 'Cut'], [10, x], [20, 0], [11, x], [21, 100]].map(([code, value]) => group(code as number, value!)).join('');

const DRAWINGS: Readonly<Record<string, Uint8Array>> = {
  SVG: bytes(page(`<g stroke="black">${LINES.map((x) => `<path d="M${x} 0v100"/>`).join('')}</g>`)),
  PDF: pdf(LINES.map((x) => `${x} 0 m ${x} 100 l S`).join(' ')),
  DXF: bytes(`${group(0, 'SECTION')}${group(2, 'ENTITIES')}${LINES.map(dxfLine).join('')}${group(0, 'ENDSEC')}${group(0, 'EOF')}`),
};

/** Whoever waits for a large drawing is told at every step that there is work going on. */
describe('while a drawing is read', () => {
  test.each(Object.keys(DRAWINGS))('%s: told at every element, and again at every edge where lines are joined', async (format) => {
    let told = 0;
    const { rest } = await readDrawing(DRAWINGS[format]!, { onWork: () => told++ });
    expect(rest).toHaveLength(LINES.length);
    expect(told).toBeGreaterThanOrEqual(2 * LINES.length);
  });

  test('the reading is the same whether anybody is told or not', async () => {
    const svg = DRAWINGS['SVG']!;
    expect(await readDrawing(svg, { onWork: () => undefined })).toEqual(await readDrawing(svg));
  });
});

test('nearly as many elements side by side as the limit allows are read', () => {
  expect(read(page(`<g stroke="black"><path d="M10 10h50v30h-50z"/></g>${'<desc/>'.repeat(250_000)}`)).blanks).toHaveLength(1);
});
