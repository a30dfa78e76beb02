import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openPdf } from '../../src/dieline/pdf/document.ts';
import { openPdfDrawing } from '../../src/dieline/pdf/pdf-drawing.ts';
import { boxOf, type Point } from '../../src/geometry/point.ts';
import { judgeForProduction } from '../../src/layout/sound.ts';
import { readArtwork } from '../../src/pipeline/artwork.ts';
import { handover } from '../../src/pipeline/handover.ts';
import { svgToPdf } from '../../src/render/svg-pdf/convert.ts';
import { at, layoutWith, rectangle } from '../support/layouts.ts';
import { hasProgram } from '../support/programs.ts';

const utf8 = (text: string) => new TextEncoder().encode(text);
const svg = (content: string, root = 'width="106mm" height="66mm" viewBox="0 0 106 66"') => utf8(`<svg xmlns="http://www.w3.org/2000/svg" ${root}>${content}</svg>`);
/** One red pixel. */
const PIXEL = 'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAIAAACQd1PeAAAADElEQVR4nGP4z8AAAAMBAQDJ/pLvAAAAAElFTkSuQmCC';

const converted = async (content: string, inks: Parameters<typeof svgToPdf>[1] = []) => svgToPdf(svg(content), inks);
const codes = async (content: string) => (await converted(content)).issues.map(({ code }) => code);
const refusal = async (bytes: Uint8Array) => {
  try {
    await svgToPdf(bytes);
    return 'taken';
  } catch (error) {
    return (error as Error).message;
  }
};
const contentOf = async (bytes: Uint8Array) => {
  const { context } = await openPdf(bytes);
  return context.enumerateIndirectObjects().map(([, object]) => object.toString()).join('\n');
};
const drawn = async (bytes: Uint8Array) => (await openPdfDrawing(bytes, 1))(undefined);

let folder: string;
beforeAll(() => (folder = mkdtempSync(join(tmpdir(), 'svg-artwork-'))));
afterAll(() => rmSync(folder, { recursive: true }));

describe('an SVG as a page', () => {
  test('has its size, and shapes where they stand', async () => {
    const { fills, page } = await drawn((await converted('<g transform="translate(10 6) scale(2)"><rect width="5" height="10"/></g>')).bytes);
    expect([page!.width, page!.height].map((mm) => Math.round(mm * 1000) / 1000)).toEqual([106, 66]);
    const { minX, maxX, minY, maxY } = boxOf(fills[0]!.curves.flatMap(({ from, to }): Point[] => [from, to]));
    expect([minX, maxX, minY, maxY].map((mm) => Math.round(mm * 1000) / 1000)).toEqual([10, 20, -26, -6]);
  });

  test('inks: by data-ink on the element, a group or its use, by the job, by icc-named-color; tints', async () => {
    const inked = async (content: string, inks?: Parameters<typeof svgToPdf>[1]) => {
      const { fills } = await drawn((await converted(content, inks)).bytes);
      return fills.flatMap(({ source }) => source.levels.flatMap(({ names }) => names));
    };
    expect(await inked('<g data-ink="Mint Green"><rect width="9" height="9"/></g>')).toEqual(['Mint Green']);
    expect(await inked('<defs><rect id="r" width="9" height="9"/></defs><use href="#r" data-ink="Gold #7 (näh)"/>')).toHaveLength(1);
    expect(await inked('<rect width="9" height="9" fill="rgb(26,125,67)"/>', [{ name: 'Mint Green', colour: '#1a7d43' }])).toEqual(['Mint Green']);
    expect(await inked('<rect width="9" height="9" fill="#1a7d43 icc-named-color(book, Mint)"/>')).toEqual(['Mint']);
    const tinted = await converted('<rect width="9" height="9" data-ink="Mint 40%"/>');
    expect(tinted.issues).toEqual([]);
    expect((await drawn(tinted.bytes)).fills[0]!.source.levels[0]!.names).toEqual(['Mint']);
  });

  test('device colours stay, grey prints with black alone, other RGB is said once', async () => {
    expect(await codes('<rect width="9" height="9" fill="device-cmyk(0 50% 1 0)"/><rect width="9" height="9" fill="#fff icc-color(press, 0, 0.5, 1, 0)"/><rect width="9" height="9" fill="#777"/>')).toEqual([]);
    expect((await converted('<rect width="9" height="9" fill="red"/><path d="M0 0h9" stroke="hsl(120 50% 50%)"/>')).issues).toMatchObject([{ code: 'artwork-rgb', facts: { count: 2 } }]);
  });

  test('gradients, patterns, clips and masks stay vectors; an image stays an image, once', async () => {
    const text = await contentOf((await converted(`<defs><linearGradient id="g"><stop stop-color="#000"/><stop offset="1" stop-color="#fff" stop-opacity="0"/></linearGradient>
      <pattern id="p" width="4" height="4" patternUnits="userSpaceOnUse"><circle r="1"/></pattern><clipPath id="c"><circle r="20"/></clipPath><mask id="m"><rect width="50" height="50" fill="url(#g)"/></mask></defs>
      <rect width="20" height="20" fill="url(#g)"/><rect width="20" height="20" fill="url(#p)" clip-path="url(#c)"/><rect width="9" height="9" mask="url(#m)" opacity=".5"/>
      <image width="5" height="5" href="data:image/png;base64,${PIXEL}"/><image width="7" height="5" href="data:image/png;base64,${PIXEL}"/>`)).bytes);
    expect(text).toContain('/ShadingType 2');
    expect(text).toContain('/PatternType 1');
    expect(text).toContain('/S /Luminosity');
    expect(text.split('/Subtype /Image')).toHaveLength(2);
  });

  test('what a name makes a processing step is left out of the print, what is filled is print', async () => {
    const { bytes, issues } = await converted('<g id="Stanze"><path d="M3 3H103V63H3Z" fill="none" stroke="red"/></g><g class="glue"><rect width="9" height="9"/></g><path id="outline" d="M0 0h9v9z"/><g id="text"><path d="M0 0h9v5z"/></g>');
    const { lines, fills } = await drawn(bytes);
    expect([lines.length, fills.length]).toEqual([0, 2]);
    expect(issues).toMatchObject([{ code: 'artwork-steps-left-out', severity: 'note', facts: { count: 2, steps: 'Cutting, Gluing' } }]);
  });

  test('texts stay texts at their places and are warned of, font by font', async () => {
    const { bytes, issues } = await converted('<text x="53" y="30" text-anchor="end" font-family="Fern Serif" font-size="6">Mint <tspan dy="8" x="10">tea &amp; herbs</tspan></text><text x="1" y="9">more</text>');
    expect(issues.map(({ code, facts }) => [code, facts!['font'], facts!['text']])).toEqual([['artwork-font-not-in-svg', 'Fern Serif', 'Mint'], ['artwork-font-not-in-svg', 'no name', 'more']]);
    const { texts } = await drawn(bytes);
    expect(texts.map(({ content, place }) => [content, Math.round(place.x), Math.round(place.y)])).toEqual([['Mint', 40, -30], ['tea & herbs', -18, -38], ['more', 1, -9]]);
  });

  test('what cannot be kept is said with its place', async () => {
    const { issues } = await converted('<rect id="a" width="9" height="9" filter="url(#f)"/><path id="b" d="M0 0h9" stroke="#000" marker-end="url(#m)"/><rect id="c" width="9" height="9" fill="url(#gone)"/><text font-size="5"><textPath id="d">x</textPath></text>');
    expect(issues.filter(({ code }) => code === 'artwork-part-not-kept').map(({ where }) => where)).toEqual([
      'rect#a: its filter, which would have to be rasterised', 'path#b: its markers', 'rect#c: the fill #gone', 'textPath#d: text on a path',
    ]);
  });
});

describe('hostile drawings', () => {
  const nested = (name: string, inner: string, use: (id: string) => string) => {
    const levels = Array.from({ length: 8 }, (_, i) => `<${name} id="q${i + 1}" width="1" height="1">${use(`q${i}`).repeat(10)}</${name}>`).join('');
    return svg(`<defs><${name} id="q0" width="1" height="1">${inner}</${name}>${levels}</defs>${use('q8')}`);
  };
  const square = '<rect width="9" height="9"/>';

  test.each([
    ['an image of the net', svg('<image width="9" height="9" href="https://example.org/a.png"/>'), 'artwork-image-outside'],
    ['an image of the machine', svg('<image width="9" height="9" xmlns:xlink="http://www.w3.org/1999/xlink" xlink:href="file:///etc/a.png"/>'), 'artwork-image-outside'],
    ['a drawing as image', svg('<image width="9" height="9" href="data:image/svg+xml;base64,PHN2Zy8+"/>'), 'artwork-image-kind'],
    ['a broken image', svg('<image width="9" height="9" href="data:image/png;base64,AAAA"/>'), 'artwork-image-broken'],
    ['no size', svg(square, ''), 'artwork-without-size'],
    ['uses of uses', nested('g', square, (id) => `<use href="#${id}"/>`), 'drawing-limit'],
    ['patterns of patterns', nested('pattern', square, (id) => `<rect width="9" height="9" fill="url(#${id})"/>`), 'drawing-limit'],
    ['masks of masks', nested('mask', square, (id) => `<rect width="9" height="9" mask="url(#${id})"/>`), 'drawing-limit'],
    ['clips of clips', nested('clipPath', square, (id) => `<g clip-path="url(#${id})"><rect width="9" height="9"/></g>`), 'drawing-limit'],
  ])('%s: refused', async (_, bytes, code) => {
    expect(await refusal(bytes)).toBe(code);
  });

  test('a pattern, mask or clip within itself ends; scripts are left out', async () => {
    expect(await codes('<pattern id="p" width="1" height="1"><rect width="1" height="1" fill="url(#p)"/></pattern><rect width="9" height="9" fill="url(#p)"/>')).toContain('artwork-part-not-kept');
    expect(await codes('<mask id="m"><rect width="1" height="1" mask="url(#m)"/></mask><rect width="9" height="9" mask="url(#m)"/>')).toContain('artwork-part-not-kept');
    expect(await codes('<script>run()</script>')).toEqual(['element-left-out']);
  });
});

describe('SVG on every station', () => {
  const card = { ...rectangle('card', 100, 60), drawing: { paths: [{ role: 'Creasing', d: 'M50 0 L50 60' }] } };
  const layout = layoutWith([card], [at('card', 10, 10), at('card', 220, 70, 180), at('card', 390, 10, 90)]);
  const page = svg(`<style>.a { fill: #1a7d43 } #b { stroke: url(#g) }</style><linearGradient id="g"><stop/><stop offset="1" stop-color="#fff"/></linearGradient>
    <rect class="a" data-ink="Mint Green" width="106" height="66"/><rect x="8" y="48" width="20" height="10" fill="#fff"/><path id="b" d="M9 9h40" fill="none"/>
    <g id="Cut"><rect x="3" y="3" width="100" height="60" fill="none" stroke="red"/></g><rect onclick="run()" width="1" height="1" style="fill: url(http://example.org/a)"/>`);
  const handed = async (back = false) => {
    const given = { design: undefined, where: 'mint.svg', artwork: await readArtwork(page, 1, 'mint.svg'), at: undefined };
    return handover(judgeForProduction(layout).sound!, { back: back ? 'sheetwise' : undefined }, { front: [given], back: back ? [given] : [] });
  };
  const fileOf = async (name: string, back = false) => (await handed(back)).files.find((file) => file.name === name)?.content;

  test('lies by its die line, turned with the blank, in the PDF', async () => {
    const { fills, page: sheet } = await drawn((await fileOf('sheet-artwork.pdf')) as Uint8Array);
    const marks = fills.map(({ curves }) => boxOf(curves.flatMap(({ from, to }): Point[] => [from, to]))).filter(({ minX, maxX, minY, maxY }) => Math.abs(Math.max(maxX - minX, maxY - minY) - 20) < 0.01);
    expect(marks.map(({ minX, minY }) => [Math.round(minX), Math.round(minY + sheet!.height)])).toEqual([[15, 15], [195, 55], [375, 15]]);
  });

  test('and as SVG of its own: clipped, ids and styles apart, nothing that runs or leads out', async () => {
    const text = (await fileOf('sheet-artwork.svg')) as string;
    expect(text.split('<use ')).toHaveLength(4);
    expect(text.split('clip-path="url(#area')).toHaveLength(4);
    expect(text).toContain('stroke:url(#art1-g)');
    expect(text).not.toMatch(/onclick|example\.org|<style|class=|id="art1-Cut"><rect/);
    expect(typeof (await fileOf('sheet-back-artwork.svg', true))).toBe('string');
  });

  test('other programs: sound, one plate for each ink, nothing rasterised, both files look alike', async ({ skip }) => {
    for (const [name, option] of [['qpdf', '--version'], ['gs', '--version'], ['pdfimages', '-v'], ['pdftoppm', '-v'], ['rsvg-convert', '--version']] as const) if (!hasProgram(name, option)) skip();
    const [pdfPath, svgPath] = [join(folder, 'sheet.pdf'), join(folder, 'sheet.svg')];
    writeFileSync(pdfPath, (await fileOf('sheet-artwork.pdf')) as Uint8Array);
    writeFileSync(svgPath, (await fileOf('sheet-artwork.svg')) as string);
    expect(execFileSync('qpdf', ['--check', pdfPath], { encoding: 'utf8' })).toContain('No syntax or stream encoding errors');
    expect(execFileSync('pdfimages', ['-list', pdfPath], { encoding: 'utf8' }).trim().split('\n')).toHaveLength(2);
    execFileSync('gs', ['-q', '-dNOPAUSE', '-dBATCH', '-sDEVICE=tiffsep', '-r10', '-o', join(folder, 'plate%d.tif'), pdfPath]);
    expect(execFileSync('ls', [folder], { encoding: 'utf8' })).toContain('(Mint Green)');
    // White marks on the green, seen in both renderings at the same places.
    const pixels = (ppm: Buffer) => {
      const [, width, height, , start] = /^P6\s(\d+)\s(\d+)\s(\d+)\s/.exec(ppm.subarray(0, 40).toString('latin1'))!.flatMap((part, i, all) => (i === 0 ? [part] : i === 3 ? [part, String(all[0]!.length)] : [part])).map(Number) as unknown as [number, number, number, number, number];
      return (x: number, y: number) => [...ppm.subarray(start + 3 * (Math.round(y * (height / 700)) * width + Math.round(x * (width / 1000))), start + 3 * (Math.round(y * (height / 700)) * width + Math.round(x * (width / 1000))) + 3)];
    };
    const fromPdf = pixels(execFileSync('pdftoppm', ['-r', '25.4', pdfPath], { maxBuffer: 1e8 }));
    for (const [x, y] of [[25, 20], [205, 60], [380, 25]] as const) expect(fromPdf(x, 700 - y)).toEqual([255, 255, 255]);
    const [red, green, blue] = fromPdf(80, 700 - 40) as [number, number, number];
    expect(green).toBeGreaterThan(red + 40);
    expect(green).toBeGreaterThan(blue + 20);
    execFileSync('rsvg-convert', ['-f', 'pdf', '-o', join(folder, 'second.pdf'), svgPath]);
    const fromSvg = pixels(execFileSync('pdftoppm', ['-r', '25.4', join(folder, 'second.pdf')], { maxBuffer: 1e8 }));
    for (const [x, y] of [[25, 20], [205, 60], [380, 25], [600, 300]] as const) expect(fromSvg(x, 700 - y)).toEqual([255, 255, 255]);
    expect(fromSvg(80, 700 - 40)).toEqual([26, 125, 67]);
  });
});
