import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { PDFArray, PDFDict, PDFName } from '@cantoo/pdf-lib';
import { openPdfDrawing } from '../../src/dieline/pdf/pdf-drawing.ts';
import { openPdf } from '../../src/dieline/pdf/document.ts';
import { boxOf, type Point } from '../../src/geometry/point.ts';
import { judgeForProduction } from '../../src/layout/sound.ts';
import { imposeArtwork, readArtwork, type GivenArtwork } from '../../src/pipeline/artwork.ts';
import { handover, type Handover } from '../../src/pipeline/handover.ts';
import type { WorkStyle } from '../../src/layout/back-up.ts';
import { at, layoutWith, rectangle } from '../support/layouts.ts';
import { box, pdf, spot } from '../support/pdf-bytes.ts';
import { hasProgram } from '../support/programs.ts';

const card = { ...rectangle('card', 100, 60), drawing: { paths: [{ role: 'Creasing', d: 'M50 0 L50 60' }] } };
const layout = layoutWith([card], [at('card', 10, 10), at('card', 220, 70, 180), at('card', 390, 10, 90)]);

/** A green page with an orange mark at the blank's lower left and a word; 3 mm of bleed; a hidden layer; the die line as a step. */
const PAGE = `/OC /Note BDC 0 0 106 66 re f EMC /A cs 1 scn 0 0 106 66 re f 0 0.6 1 0 k 8 8 20 10 re f
BT /F1 10 Tf 1 1 1 rg 1 0 0 1 40 40 Tm (Mint tea) Tj ET /OC /Die BDC 0 1 1 0 K 3 3 100 60 re S EMC`;
const artworkBytes = pdf(PAGE, {
  resources: `/ColorSpace << /A ${spot('Fernhollow#20Green', '0.8 0 0.7 0.3')} >> /Properties << /Note 10 0 R /Die 11 0 R >> /Font << /F1 << /Type /Font /Subtype /Type1 /BaseFont /Helvetica >> >>`,
  page: `/MediaBox ${box(0, 0, 106, 66)}`,
  catalog: '/OCProperties << /OCGs [10 0 R 11 0 R] /D << /OFF [10 0 R] >> >>',
  objects: ['<< /Type /OCG /Name (Notes) >>', '<< /Type /OCG /Name (Die) /GTS_Metadata << /GTS_ProcStepsGroup /Structural /GTS_ProcStepsType /Cutting >> >>'],
});

const given = async (design?: string): Promise<GivenArtwork> => ({ design, where: 'mint.pdf', artwork: await readArtwork(artworkBytes, 1, 'mint.pdf'), at: undefined });
const handed = async (back?: WorkStyle): Promise<Handover> => handover(judgeForProduction(layout).sound!, { back }, { front: [await given()], back: back ? [await given()] : [] });
const contentOf = (files: Handover['files'], name: string) => files.find((file) => file.name === name)!.content as Uint8Array;

let folder: string;
beforeAll(() => (folder = mkdtempSync(join(tmpdir(), 'artwork-'))));
afterAll(() => rmSync(folder, { recursive: true }));

/** Boxes of all fills of one colour, whole mm from the lower left corner of the sheet, in drawing order. */
async function fillsOf(bytes: Uint8Array, width: number): Promise<number[][]> {
  const { fills, page } = (await openPdfDrawing(bytes, 1))(undefined);
  const boxes = fills.map(({ curves }) => boxOf(curves.flatMap(({ from, to }): Point[] => [from, to])));
  return boxes.filter(({ minX, maxX, minY, maxY }) => Math.abs(Math.max(maxX - minX, maxY - minY) - width) < 0.01).map(({ minX, minY }) => [Math.round(minX), Math.round(minY + page!.height)]);
}

describe('artwork on every station', () => {
  test('lies on the blank, turned with it, and is there once in the file', async () => {
    const { files, issues } = await handed();
    const bytes = contentOf(files, 'sheet-artwork.pdf');
    // The mark lies at (5, 5) to (25, 15) of the blank: upright, half a turn, a quarter turn about the blank's corner.
    expect(await fillsOf(bytes, 20)).toEqual([[15, 15], [195, 55], [375, 15]]);
    expect(issues.map(({ code, severity }) => [code, severity])).toEqual([['artwork-holds-die-line', 'note'], ['artwork-font-missing', 'warning']]);
    const { context } = await openPdf(bytes);
    const forms = context.enumerateIndirectObjects().filter(([, object]) => object.toString().includes('/Form'));
    expect(forms).toHaveLength(1);
  });

  test('colours are kept, hidden layers stay hidden, steps within the artwork are switched off', async () => {
    const bytes = contentOf((await handed()).files, 'sheet-artwork.pdf');
    const { fills, issues, lines } = (await openPdfDrawing(bytes, 1))(undefined);
    expect(fills.filter(({ source }) => source.levels.some(({ names }) => names.includes('Fernhollow Green')))).toHaveLength(3);
    expect(issues.map(({ code, where }) => [code, where])).toEqual([['layer-hidden', 'Notes'], ['layer-hidden', 'Die']]);
    expect(lines.some(({ source }) => source.levels.some(({ names }) => names.includes('Cutting')))).toBe(true);
  });

  test('the back: mirrored places, artwork as it is looked at', async () => {
    const { files } = await handed('sheetwise');
    // Blanks back up at 890 to 990, 780 to 880 and 610 to 670; the mark is at each mirrored blank's own lower left.
    expect(await fillsOf(contentOf(files, 'sheet-back.pdf'), 20)).toEqual([[895, 15], [855, 55], [615, 85]]);
    const tumbled = await fillsOf(contentOf((await handed('perfecting')).files, 'sheet-back.pdf'), 20);
    expect(tumbled).toEqual([[85, 675], [125, 635], [375, 595]]);
  });

  test('work-and-turn wants the backs on fronts', async () => {
    expect((await handed('work-and-turn')).issues.filter(({ code }) => code === 'back-not-on-stations')).toMatchObject([{ facts: { count: 3, stations: '1, 2, 3' } }]);
    const symmetric = layoutWith([card], [at('card', 10, 10), at('card', 890, 10)]);
    expect((await handover(judgeForProduction(symmetric).sound!, { back: 'work-and-turn' })).issues).toEqual([]);
  });

  test('legend and dimensions are seen but not printed', async () => {
    const { catalog, context } = await openPdf(contentOf((await handed()).files, 'sheet-artwork.pdf'));
    const settings = catalog.lookup(PDFName.of('OCProperties'), PDFDict).lookup(PDFName.of('D'), PDFDict);
    const [usage] = settings.lookup(PDFName.of('AS'), PDFArray).asArray().map((one) => context.lookup(one, PDFDict));
    expect(String(usage!.get(PDFName.of('Event')))).toBe('/Print');
    const names = usage!.lookup(PDFName.of('OCGs'), PDFArray).asArray().map((group) => context.lookup(group, PDFDict)).map((group) => [String(group.get(PDFName.of('Name'))), String(group.get(PDFName.of('Usage')))]);
    expect(names.map(([name]) => name)).toEqual(['(Legend)', '(Dimensions)']);
    for (const [, state] of names) expect(state).toMatch(/PrintState \/OFF/);
  });

  test('designs have artwork by their names; what has none is said', async () => {
    const two = layoutWith([card, { ...card, id: 'other' }], [at('card', 10, 10), at('other', 220, 10)]);
    const imposed = imposeArtwork(two, [await given('card')]);
    expect([imposed.ofStation, imposed.issues.map(({ code }) => code)]).toEqual([[0, undefined], ['artwork-holds-die-line', 'artwork-font-missing', 'artwork-missing']]);
    const [a, b] = [await given('card'), await given()];
    expect(() => imposeArtwork(two, [a, b])).toThrow('artwork-twice');
    expect(() => imposeArtwork(two, [{ ...a, design: 'third' }])).toThrow('artwork-for-no-design');
  });

  test('versions of a gang run: each station has the artwork of what it prints', async () => {
    const versions = ['mint', 'lemon', 'mint'];
    const imposed = imposeArtwork(layout, [await given('mint'), await given('lemon')], versions);
    expect(imposed.ofStation).toEqual([0, 1, 0]);
    const half = imposeArtwork(layout, [await given('lemon')], versions);
    expect([half.ofStation, half.issues.at(-1)]).toEqual([[undefined, 0, undefined], { code: 'artwork-missing', severity: 'warning', facts: { design: 'mint' } }]);
    const one = await given('card');
    expect(() => imposeArtwork(layout, [one], versions)).toThrow('artwork-for-no-design');
    const { files } = await handover(judgeForProduction(layout).sound!, { versions }, { front: [await given('mint'), await given('lemon')] });
    expect(String(files.find(({ name }) => name === 'placements.csv')!.content).split('\r\n').map((row) => row.split(',').at(-1))).toEqual(['version', 'mint', 'lemon', 'mint', '']);
    expect(String(files.find(({ name }) => name === 'crew-ticket.html')!.content)).toMatch(/mint<\/th><td><b>station 1, 3/);
  });

  test('the file is sound to another program, its plates are those of artwork and steps', async ({ skip }) => {
    if (!hasProgram('qpdf', '--version') || !hasProgram('gs', '--version') || !hasProgram('pdftotext', '-v')) skip();
    const path = join(folder, 'sheet-artwork.pdf');
    writeFileSync(path, contentOf((await handed()).files, 'sheet-artwork.pdf'));
    expect(execFileSync('qpdf', ['--check', path], { encoding: 'utf8' })).toContain('No syntax or stream encoding errors');
    expect(execFileSync('pdftotext', [path, '-'], { encoding: 'utf8' }).split('Mint tea')).toHaveLength(4);
    const inks = execFileSync('gs', ['-q', '-dNOPAUSE', '-dBATCH', '-sDEVICE=tiffsep', '-r10', '-o', join(folder, 'plate%d.tif'), path], { encoding: 'utf8' });
    expect(typeof inks).toBe('string');
    const plates = execFileSync('ls', [folder], { encoding: 'utf8' });
    for (const name of ['Fernhollow Green', 'Cutting', 'Creasing', 'Magenta']) expect(plates).toContain(`(${name})`);
  });
});

test('a PDF that ends too early is refused; a font of two-byte glyphs tells its place and width', async () => {
  await expect(readArtwork(artworkBytes.subarray(0, artworkBytes.length - 12), 1, 'a.pdf')).rejects.toMatchObject({ issues: [{ code: 'artwork-cut-off', where: 'a.pdf' }] });
  const composite = '<< /Type /Font /Subtype /Type0 /BaseFont /Fern /Encoding /Identity-H /DescendantFonts [<< /Subtype /CIDFontType2 /FontDescriptor << /FontFile2 10 0 R >> /DW 500 /W [3 [250]] >>] >>';
  const bytes = pdf('BT /F1 10 Tf 1 0 0 1 20 30 Tm <000300040005> Tj ET', { resources: `/Font << /F1 ${composite} >>`, page: `/MediaBox ${box(0, 0, 106, 66)}`, objects: ['<< /Length 0 >>\nstream\n\nendstream'] });
  const { content, issues } = await readArtwork(bytes, 1, 'a.pdf');
  expect(issues).toEqual([]);
  expect(content.texts).toMatchObject([{ content: '', place: { x: 20, y: 30 }, widthMm: expect.closeTo(12.5, 5) }]);
});

test('what is neither PDF nor SVG is refused', async () => {
  await expect(readArtwork(new TextEncoder().encode('words'), 1, 'a.txt')).rejects.toMatchObject({ issues: [{ code: 'artwork-kind', where: 'a.txt' }] });
});
