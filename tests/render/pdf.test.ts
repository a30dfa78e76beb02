import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { PDFDocument } from '@cantoo/pdf-lib';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { sceneToPdf } from '../../src/render/pdf.ts';
import { sheetScene } from '../../src/render/sheet-scene.ts';
import { carton, grid, sheetView } from './views.ts';

const POINT = 25.4 / 72;
const design = carton(60, 40, 90);
const view = sheetView(1020, 720, design, grid(design, 8, 13, { rows: 3, columns: 4, stepX: 218, stepY: 204, turned: (row) => row % 2 === 1 }));

/** True where a program of the machine can be called; on the build server its absence is a failure, elsewhere a loud skip. */
function hasProgram(name: string): boolean {
  const found = spawnSync(name, ['--version']).error === undefined;
  if (!found && process.env['CI']) throw new Error(`${name} is needed for this test`);
  if (!found) console.warn(`SKIPPED: ${name} is not installed, the PDF was not checked by it`);
  return found;
}

describe('the sheet as PDF', () => {
  let bytes: Uint8Array;
  let folder: string;
  let file: string;

  beforeAll(async () => {
    bytes = await sceneToPdf(sheetScene(view));
    folder = mkdtempSync(join(tmpdir(), 'blankwright-'));
    file = join(folder, 'sheet.pdf');
    writeFileSync(file, bytes);
  });
  afterAll(() => rmSync(folder, { recursive: true }));

  test('the first page is the sheet at true size, the second A4', async () => {
    const pages = (await PDFDocument.load(bytes, { updateMetadata: false })).getPages().map((page) => page.getSize());
    expect(pages[0]!.width * POINT).toBeCloseTo(1020, 6);
    expect(pages[0]!.height * POINT).toBeCloseTo(720, 6);
    expect([pages[1]!.width * POINT, pages[1]!.height * POINT].map(Math.round)).toEqual([297, 210]);
  });

  test('carries our name and no dates', async () => {
    const document = await PDFDocument.load(bytes, { updateMetadata: false });
    expect([document.getProducer(), document.getCreator(), document.getTitle()]).toEqual(['Blankwright', 'Blankwright', '12 ups on 1020 × 720 mm']);
    expect([document.getCreationDate(), document.getModificationDate()]).toEqual([undefined, undefined]);
  });

  test('is the same to the byte when made again', async () => {
    expect(Buffer.from(await sceneToPdf(sheetScene(structuredClone(view)))).equals(Buffer.from(bytes))).toBe(true);
  });

  test('letters outside the standard fonts do not stop it', async () => {
    const foreign = { ...view, figures: [{ label: 'design', value: 'Грушевый чай · ≤ 3 (‘a’) \\' }] };
    await expect(sceneToPdf(sheetScene(foreign))).resolves.toBeInstanceOf(Uint8Array);
  });

  test('an independent checker finds no fault in it', ({ skip }) => {
    if (!hasProgram('qpdf')) skip();
    expect(execFileSync('qpdf', ['--check', file], { encoding: 'utf8' })).toContain('No syntax or stream encoding errors found');
  });

  test('an independent reader finds every station number and the figures', ({ skip }) => {
    if (spawnSync('pdftotext', ['-v']).error && !process.env['CI']) skip();
    const text = execFileSync('pdftotext', ['-f', '2', '-l', '2', file, '-'], { encoding: 'utf8' }).split(/\s+/);
    for (let station = 1; station <= 12; station++) expect(text).toContain(String(station));
    expect(text.join(' ')).toContain('GRIPPER EDGE');
    expect(text.join(' ')).toContain('1020 (M)');
  });

  test('what is drawn is where the layout says, measured on the page', ({ skip }) => {
    if (!hasProgram('pdftoppm') && !process.env['CI']) skip();
    // One pixel a millimetre, greys: the cut line of station 4's right edge is dark, the middle of the gap beside it is not.
    const image = execFileSync('pdftoppm', ['-f', '1', '-l', '1', '-gray', '-r', '25.4', '-scale-to-x', '1020', '-scale-to-y', '720', file], { maxBuffer: 2 ** 24 });
    const header = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(image.subarray(0, 40).toString('latin1'))!;
    const at = (x: number, y: number) => image[header[0].length + (719 - y) * 1020 + x]!;
    const darkest = (x: number, y: number) => Math.min(at(x - 1, y), at(x, y), at(x + 1, y));
    expect([Number(header[1]), Number(header[2])]).toEqual([1020, 720]);
    const edge = 8 + 3 * 218 + 212;
    expect(darkest(edge, 120)).toBeLessThan(140);
    expect(darkest(edge + 12, 120)).toBeGreaterThan(180);
  });
});
