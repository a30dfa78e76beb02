import { deflateSync } from 'node:zlib';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { InputError } from '../../src/base/issue.ts';
import type { Dieline } from '../../src/dieline/dieline.ts';
import type { ReadOptions } from '../../src/dieline/options.ts';
import { openPdfDrawing } from '../../src/dieline/pdf/pdf-drawing.ts';
import { operations } from '../../src/dieline/pdf/tokens.ts';
import { readDrawing } from '../../src/dieline/read-drawing.ts';
import { box, latin, pdf, spot, stream } from '../support/pdf-bytes.ts';
import { codes, figures } from './support.ts';

const packed = (content: string, entries = '') => stream(new Uint8Array(deflateSync(latin(content))), `/Filter /FlateDecode ${entries}`);

const read = (bytes: Uint8Array, options: Partial<ReadOptions> = {}): Promise<Dieline> => readDrawing(bytes, options);
const lines = async (bytes: Uint8Array) => (await openPdfDrawing(bytes, 1))(undefined).lines;
const SQUARE = '20 20 100 60 re S';
const SPOTS = `/ColorSpace << /A ${spot('Stanze')} /B ${spot('Rill#20Linie')} /N [/DeviceN [/Cyan /Cutting] /DeviceCMYK << >>] /I [/ICCBased 10 0 R] >>`;

describe('line work', () => {
  test('spot colours name roles; sizes are millimetres from the page’s upper left corner', async () => {
    const dieline = await read(pdf(`/A CS 1 SCN ${SQUARE} /B CS 1 SCN 20 40 m 120 40 l S`, { resources: SPOTS }));
    expect(figures(dieline)).toEqual([{ size: [100, 60], area: 6000, openings: 0, rules: { Cutting: 320, Creasing: 100 } }]);
    expect(dieline.blanks[0]!.box).toEqual({ minX: expect.closeTo(20, 6), maxX: expect.closeTo(120, 6), minY: expect.closeTo(-180, 6), maxY: expect.closeTo(-120, 6) });
    expect([dieline.scale.from, codes(dieline)]).toEqual(['unit', []]);
    const [, crease] = dieline.blanks[0]!.rules.map(({ source }) => source);
    expect(crease).toBe('path 2 of colour "Rill Linie"');
  });

  test('curves, closing, saved states, dashes, widths, device colours', async () => {
    const content = `q 2 0 0 2 10 10 cm 0.5 w [3 1] 0 d 1 0 0 RG 0 0 m 0 10 10 10 10 0 c h S Q 0 0 0 1 K 5 5 m 10 5 15 5 v 20 6 25 5 y s 0.5 g 0 0 4 4 re f`;
    const [first, second] = await lines(pdf(content));
    expect(first).toMatchObject({ closed: true, source: { stroke: '#ff0000', widthMm: expect.closeTo(1, 9), dash: [expect.closeTo(6, 9), expect.closeTo(2, 9)] } });
    expect(first!.curves.map(({ kind }) => kind)).toEqual(['cubic', 'line']);
    expect(second).toMatchObject({ closed: true, source: { stroke: '#000000', dash: [], filled: false } });
    expect(second!.curves[0]).toMatchObject({ control1: second!.curves[0]!.from });
    expect((await openPdfDrawing(pdf(content), 1))(undefined).fills).toHaveLength(1);
  });

  test('colours of any space tell lines apart; a colorant of several that prints alone names the line', async () => {
    const content = '/I CS 0 0 1 SCN 0 0 m 1 0 l S /N CS 0 1 SCN 0 0 m 1 0 l S 1 1 SCN 0 0 m 1 0 l S /A CS 0 SCN 0 0 m 1 0 l S /Pattern CS /P SCN 0 0 m 1 0 l S';
    const found = await lines(pdf(content, { resources: SPOTS, objects: [stream('', '/N 3')] }));
    expect(found.map(({ source }) => [source.stroke, source.levels.map(({ names }) => names[0])])).toEqual([
      ['#0000ff', []], ['cutting', ['Cutting']], ['cyan and cutting', []], ['pattern', []],
    ]);
  });

  test('rules of the user by spot colour', async () => {
    const dieline = await read(pdf(`/A CS 1 SCN ${SQUARE}`, { resources: `/ColorSpace << /A ${spot('PANTONE#20806#20C')} >>` }), { roles: [{ role: 'Cutting', subject: 'stroke', value: 'Pantone 806 C', text: '' }] });
    expect(dieline.blanks[0]!.rules.map(({ role, reason }) => [role, reason])).toEqual([['Cutting', 'user rule']]);
  });

  test('a form is drawn where its matrix says, with colours and layers from outside', async () => {
    const form = packed('0 0 50 40 re S', '/Type /XObject /Subtype /Form /BBox [0 0 1 1] /Matrix [1 0 0 1 5 0]');
    const dieline = await read(pdf('/A CS 1 SCN q 0 1 -1 0 100 20 cm /F Do Q q 1 0 0 1 150 20 cm /F Do Q', { resources: `${SPOTS} /XObject << /F 10 0 R >>`, objects: [form] }));
    expect(dieline.blanks.map(({ box }) => [box.minX, box.maxX, box.minY + 200].map(Math.round))).toEqual([[60, 100, 25], [155, 205, 20]]);
    expect(dieline.blanks[0]!.rules[0]).toMatchObject({ role: 'Cutting', reason: 'name' });
  });

  test('texts help to find dimension lines', async () => {
    const content = `/A CS 1 SCN ${SQUARE} 0 G 20 90 m 120 90 l S BT /F1 4 Tf 1 0 0 1 65 91 Tm [(10) 20 (0)] TJ ET`;
    const dieline = await read(pdf(content, { resources: SPOTS }));
    expect(dieline.rest.map(({ role }) => role)).toEqual(['Dimensions']);
  });
});

describe('layers', () => {
  const group = (name: string, metadata = '') => `<< /Type /OCG /Name (${name}) ${metadata} >>`;
  const step = (type: string) => `/GTS_Metadata << /GTS_ProcStepsGroup /Structural /GTS_ProcStepsType /${type} >>`;
  const layered = (content: string, groups: readonly string[], settings = '') =>
    pdf(content, {
      resources: `/Properties << ${groups.map((_, i) => `/L${i} ${10 + i} 0 R`).join(' ')} >>`,
      catalog: `/OCProperties << /OCGs [${groups.map((_, i) => `${10 + i} 0 R`).join(' ')}] /D << ${settings} >> >>`,
      objects: groups,
    });

  test('names of layers, and metadata before names', async () => {
    const dieline = await read(layered(`/OC /L0 BDC ${SQUARE} EMC /OC /L1 BDC 20 40 m 120 40 l S EMC /OC /L2 BDC 60 20 m 60 80 l S EMC`, [group('Cutter'), group('Cut', step('Creasing')), group('Art')]));
    expect(figures(dieline)[0]!.rules).toEqual({ Cutting: 320, Creasing: 100 });
    expect(dieline.rest.map(({ role }) => role)).toEqual(['Artwork']);
  });

  test('hidden layers are left out and named; of a membership one shown layer is enough', async () => {
    const hidden = await read(layered(`/OC /L0 BDC ${SQUARE} EMC /OC /L1 BDC 10 10 200 150 re S EMC`, [group('Cut'), group('Old')], '/OFF [11 0 R]'));
    expect([hidden.blanks.length, hidden.issues]).toEqual([1, [{ code: 'layer-hidden', severity: 'note', where: 'Old', facts: {} }]]);
    const member = '<< /Type /OCMD /OCGs [10 0 R 11 0 R] >>';
    const shown = await read(layered(`/OC /L2 BDC ${SQUARE} EMC`, [group('Cut'), group('Old'), member], '/BaseState /OFF /ON [10 0 R]'));
    expect(shown.blanks).toHaveLength(1);
    const all = await read(layered(`/OC /L2 BDC ${SQUARE} EMC`, [group('Cut'), group('Old'), member.replace('>>', '/P /AllOn >>')], '/BaseState /OFF /ON [10 0 R]'));
    expect(all.blanks).toHaveLength(0);
  });
});

describe('pages', () => {
  const places = async (page: string) => {
    const { blanks, scale } = await read(pdf(`0 G ${SQUARE}`, { page }));
    return [...[blanks[0]!.box.minX, blanks[0]!.box.maxX, blanks[0]!.box.minY, blanks[0]!.box.maxY].map((value) => Math.round(value * 1000) / 1000), Math.round(scale.mmPerUnit * 1e6) / 1e6];
  };

  test('the crop box is the page, turned as it is looked at, larger by its unit', async () => {
    expect(await places(`/MediaBox ${box(0, 0, 300, 200)} /CropBox ${box(10, 10, 200, 100)}`)).toEqual([10, 110, -90, -30, 0.352778]);
    expect(await places(`/MediaBox ${box(0, 0, 300, 200)} /Rotate 90`)).toEqual([20, 80, -120, -20, 0.352778]);
    expect(await places(`/MediaBox ${box(0, 0, 300, 200)} /Rotate -90`)).toEqual([120, 180, -280, -180, 0.352778]);
    expect(await places(`/MediaBox ${box(0, 0, 300, 200)} /UserUnit 2`)).toEqual([40, 240, -360, -240, 0.705556]);
  });

  test('the first page unless said; others are told of; one that is not there', async () => {
    const two = latin(String.fromCharCode(...pdf(`0 G ${SQUARE}`)).replace('[3 0 R]', '[3 0 R 5 0 R]').replace('trailer', `5 0 obj << /Type /Page /Parent 2 0 R /MediaBox [0 0 800 800] /Contents 6 0 R >> endobj 6 0 obj ${stream('0 0 72 144 re S')} endobj\ntrailer`));
    expect(await read(two)).toMatchObject({ blanks: [{ box: { maxX: expect.closeTo(120, 3) } }], issues: [{ code: 'one-kind-is-cut' }, { code: 'several-pages' }].toReversed() });
    expect(figures(await read(two, { page: 2 }))[0]!.size).toEqual([25.4, 50.8]);
    await expect(read(two, { page: 3 })).rejects.toMatchObject({ issues: [{ code: 'no-such-page' }] });
  });

  test('--scale and --width-is', async () => {
    expect(figures(await read(pdf(`0 G ${SQUARE}`), { scale: 1 }))[0]!.size).toEqual([283.465, 170.079]);
    expect(figures(await read(pdf(`0 G ${SQUARE}`), { widthIs: 50 }))[0]!.size).toEqual([50, 30]);
  });
});

describe('hostile and broken files', () => {
  const codeOf = async (bytes: Uint8Array): Promise<string> => {
    try {
      await read(bytes);
      return 'read';
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      return error.issues[0]!.code;
    }
  };

  test('encrypted, without pages, cut short, no PDF within', async () => {
    expect(await codeOf(pdf(SQUARE, { trailer: '/Encrypt 10 0 R', objects: ['<< /Filter /Standard >>'] }))).toBe('pdf-encrypted');
    expect(await codeOf(latin('%PDF-1.4\n'))).toBe('pdf-not-readable');
    expect(await codeOf(pdf(SQUARE).subarray(0, 100))).toBe('pdf-not-readable');
    expect(await codeOf(pdf(SQUARE, { objects: ['['.repeat(20000)] }))).toBe('read');
  });

  test('what unpacks to more than is read is refused: content, object lists, and under other names', async () => {
    const bomb = deflateSync(new Uint8Array(80 * 1024 * 1024), { level: 9 });
    expect(await codeOf(pdf('/F Do', { resources: '/XObject << /F 10 0 R >>', objects: [stream(new Uint8Array(bomb), '/Filter /FlateDecode /Subtype /Form')] }))).toBe('drawing-limit');
    for (const type of ['/Type /ObjStm', '/Type /O#62jStm', '/Type 1 0 R']) expect(await codeOf(pdf(SQUARE, { objects: [stream(new Uint8Array(bomb), `/Filter /FlateDecode ${type} /N 1 /First 4`)] }))).toBe('drawing-limit');
    expect(await codeOf(pdf(SQUARE, { objects: [stream('x', '/Type /ObjStm /Filter [/FlateDecode /FlateDecode] /N 1 /First 4')] }))).toBe('pdf-not-readable');
    expect(await codeOf(pdf(SQUARE, { objects: [stream('x', '/Type /XRef /Size 999999999999 /W [1 2 1]')] }))).toBe('pdf-not-readable');
    expect(await codeOf(pdf(SQUARE, { objects: ['1'.repeat(5000)] }))).toBe('pdf-not-readable');
  }, 60_000);

  test('forms in themselves and forms that multiply', async () => {
    const form = (content: string, i: number) => stream(content, `/Subtype /Form /Resources << /XObject << /G ${9 + i} 0 R /F ${10 + i} 0 R >> >>`);
    expect(codes(await read(pdf(`${SQUARE} /F Do`, { resources: '/XObject << /F 10 0 R >>', objects: [form('/F Do', 0)] })))).toContain('use-in-itself');
    const doubling = Array.from({ length: 16 }, (_, i) => form(i === 0 ? '0 0 m 1 1 l S' : '/G Do '.repeat(40), i));
    expect(await codeOf(pdf('/F Do', { resources: '/XObject << /F 25 0 R >>', objects: doubling }))).toBe('drawing-limit');
  }, 60_000);

  test('a page tree that is no tree', async () => {
    const bytes = latin(String.fromCharCode(...pdf(SQUARE)).replace('/Kids [3 0 R]', '/Kids [2 0 R 2 0 R 3 0 R 3 0 R 99 0 R]'));
    expect(await codeOf(bytes)).toBe('read');
  });

  test('any content ends in a drawing or in a reason', async () => {
    const word = fc.constantFrom('q', 'Q', 'cm', 'm', 'l', 'c', 'v', 'y', 're', 'h', 'S', 's', 'f', 'B*', 'n', 'W', 'd', 'w', 'CS', 'SCN', 'K', 'Do', 'BDC', 'EMC', 'BT', 'Tj', 'Tm', 'BI', 'ID', 'EI', '[', ']', '<<', '>>', '(', ')', '<', '>', '{', '%', '/A', '/OC', '1e999', '--1', '1', '-20.5', '\\', 'NaN');
    await fc.assert(
      fc.asyncProperty(fc.array(word, { maxLength: 80 }), async (words) => {
        expect(typeof (await codeOf(pdf(words.join(' '), { resources: SPOTS })))).toBe('string');
      }),
      { numRuns: 300, seed: 11 },
    );
  });
});

test('tokens: nested strings, escapes, hexadecimal, arrays, dictionaries, comments, images', () => {
  const found = [...operations(latin('(a(b)\\)\\101\\\nc) Tj <41 4> Tj [1 (x) [2]] TJ /N << /K [1] /L (>>) >> BDC % no S\n1.5 -.5 m BI /W 1 ID xx EIx y EI S'))];
  expect(found).toEqual([
    { operator: 'Tj', operands: [{ text: 'a(b))Ac' }] },
    { operator: 'Tj', operands: [{ text: 'A@' }] },
    { operator: 'TJ', operands: [[1, { text: 'x' }, [2]]] },
    { operator: 'BDC', operands: [{ name: 'N' }, undefined] },
    { operator: 'm', operands: [1.5, -0.5] },
    { operator: 'BI', operands: [] },
    { operator: 'S', operands: [] },
  ]);
});
