import { spawnSync } from 'node:child_process';
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { chooseBlank } from '../../src/dieline/choose-blank.ts';
import { readDrawing } from '../../src/dieline/read-drawing.ts';
import { find, findPart, type Found } from '../../src/shop/library/find.ts';
import { keepDrawing } from '../../src/shop/library/drawings.ts';
import { openLibrary, type Library } from '../../src/shop/library/open-library.ts';
import { keepEntry, removeEntry } from '../../src/shop/library/records.ts';
import { shapeOf } from '../../src/shop/library/shapes.ts';
import { binary, rectangle, sample, scratchFolder } from './support.ts';

const folder = scratchFolder();
const path = join(folder, 'find.blankwright');
let library: Library;
const drawing = (name: string) => readFileSync(sample('drawings', name));

beforeAll(() => {
  library = openLibrary(path, { create: true });
  for (const name of readdirSync(sample('drawings'))) keepEntry(library, 'carton', name.replace('.svg', ''), { drawing: keepDrawing(library, drawing(name)) });
  keepEntry(library, 'die', '4711', { rack: 'C4', ups: 12, owner: 'Fernhollow', dimensions: '62 x 31 x 118', drawing: keepDrawing(library, drawing('sleeve.svg')) });
  keepEntry(library, 'die', '4712', { rack: 'C5', ups: 9, dimensions: '118x62x31' });
});

const ids = (found: readonly Found[]) => found.map(({ entry }) => `${entry.kind} ${entry.id}`);

describe('by size', () => {
  test.each([
    ['do we have a die for 62 × 31 × 118?', ['die 4711']],
    ['31x62x118', ['die 4711']],
    ['62.8 x 31 x 118 mm', ['die 4711']],
    ['64 x 31 x 118', []],
    ['do we have a die for 80x50x140?', []],
  ])('%s', async (text, expected) => {
    expect(ids(await find(library, { text, within: 1 }))).toEqual(expected);
  });

  // The dimensions that samples/README.md gives; nobody recorded them, the creases tell.
  test.each([
    ['62x38x94', 'reverse-tuck-small'],
    ['80x50x140', 'reverse-tuck-medium'],
    ['110x70x190', 'reverse-tuck-large'],
    ['2x1.25x3in', 'straight-tuck-small'],
    ['90x45x130', 'straight-tuck-medium'],
    ['120x60x210', 'straight-tuck-large'],
    ['95x65x120', 'crash-lock'],
    ['112x32x162', 'sleeve'],
    ['160x110x30', 'tray'],
    ['70x40x120', 'window-carton'],
  ])('%s is told from the creases of %s', async (text, id) => {
    const found = await find(library, { text, kind: 'carton', within: 0.5 });
    expect(found[0].entry.id).toBe(id);
    expect(found[0].by).toMatchObject({ how: 'creases' });
  });
});

describe('by words', () => {
  test.each([
    ['4711', ['die 4711']],
    ['c5', ['die 4712']],
    ['fernhollow C4', ['die 4711']],
    ['tuck small', ['carton reverse-tuck-small', 'carton straight-tuck-small']],
    ['no such thing', []],
  ])('%s', async (text, expected) => {
    expect(ids(await find(library, { text, within: 1 }))).toEqual(expected);
  });
});

describe('what is read of a library of many', () => {
  const many = openLibrary(join(folder, 'many.blankwright'), { create: true });
  many.whole(() => {
    for (let i = 0; i < 2000; i++) keepEntry(many, i % 4 === 0 ? 'customer' : 'sheets', `e${String(i).padStart(4, '0')}`, { note: i % 100 === 0 ? 'Ärmel-Müller & Sohn' : 'nobody', size: i });
  });
  /** The same library, with its rows counted as they are read. */
  function counted() {
    let rows = 0;
    const library: Library = { ...many, rows: ((...asked: Parameters<Library['rows']>) => {
      const read = many.rows(...asked);
      rows += read.length;
      return read;
    }) as Library['rows'] };
    return { library, rows: () => rows };
  }
  const ids = (found: readonly Found[]) => found.map(({ entry }) => entry.id);

  test('a page of all is read alone, whichever it is', async () => {
    const { library: some, rows } = counted();
    const { total, found } = await findPart(some, { kind: 'customer', within: 1 }, 24, 24);
    expect([total, ids(found)[0], found.length]).toEqual([500, 'e0096', 24]);
    expect(ids((await findPart(some, { within: 1 }, 1990, 24)).found)).toHaveLength(10);
    expect(rows()).toBe(24 + 10 + 2);
  });

  test('of words only what may hold them is read, and they mean what they meant', async () => {
    const { library: some, rows } = counted();
    const { total, found } = await findPart(some, { text: 'MÜLLER ärmel-m', within: 1 }, 0, 24);
    expect([total, found.length]).toEqual([20, 20]);
    expect(rows()).toBe(20);
    // A name of a field is no word of an entry.
    expect((await findPart(some, { text: 'note', within: 1 }, 0, 24)).total).toBe(0);
    expect(ids((await findPart(some, { text: '1300 sohn', within: 1 }, 0, 24)).found)).toEqual(['e1300']);
    expect((await findPart(some, { text: '%_"\\', within: 1 }, 0, 24)).total).toBe(0);
  });
});

describe('by shape', () => {
  const shape = async (text: string | Uint8Array) => shapeOf(chooseBlank(await readDrawing(typeof text === 'string' ? Buffer.from(text) : text), undefined));

  test.each(readdirSync(sample('drawings')).filter((name) => name !== 'label-pair.svg'))('%s is found among all, first', async (name) => {
    const found = await find(library, { like: await shape(drawing(name)), kind: 'carton', within: 1 });
    expect(found[0].entry.id).toBe(name.replace('.svg', ''));
    expect(found[0].by).toMatchObject({ how: 'shape', offMm: 0 });
  });

  test('turned, mirrored and 0.8 mm longer, within 1 mm but not within 0.3', async () => {
    const corners = (wider: number) => [[0, 0], [120 + wider, 0], [120 + wider, 45], [50, 45], [50, 130], [0, 130]];
    const svg = (points: number[][]) => `<svg xmlns="http://www.w3.org/2000/svg" width="300mm" height="300mm" viewBox="-150 -150 300 300"><g id="cut" fill="none" stroke="#000"><polygon points="${points.join(' ')}"/></g></svg>`;
    keepEntry(library, 'die', 'ell', { drawing: keepDrawing(library, Buffer.from(svg(corners(0)))) });
    const mirroredAndTurned = corners(0.8).map(([x, y]) => [y, x]);
    const like = await shape(svg(mirroredAndTurned));
    const found = await find(library, { like, within: 1 });
    expect(found).toMatchObject([{ entry: { id: 'ell' }, by: { how: 'shape', mirrored: true } }]);
    expect((found[0].by as { offMm: number }).offMm).toBeCloseTo(0.4, 1);
    expect(await find(library, { like, within: 0.3 })).toEqual([]);
    removeEntry(library, 'die', 'ell');
    expect(await find(library, { like, within: 1 })).toEqual([]);
  });

  test('a die whose drawing changed is found by the new one only; words narrow the answer', async () => {
    const like = await shape(drawing('sleeve.svg'));
    expect(ids(await find(library, { like, kind: 'die', within: 1 }))).toEqual(['die 4711']);
    expect(ids(await find(library, { like, text: 'C5', within: 1 }))).toEqual([]);
    keepEntry(library, 'die', '4711', { drawing: keepDrawing(library, drawing('pillow.svg')) });
    expect(ids(await find(library, { like, kind: 'die', within: 1 }))).toEqual([]);
    expect(ids(await find(library, { like: await shape(drawing('pillow.svg')), kind: 'die', within: 1 }))).toEqual(['die 4711']);
  });
});

test('a customer’s own words for lines decide how the drawings of his cartons are read', async () => {
  const two = '<svg xmlns="http://www.w3.org/2000/svg" width="200mm" height="200mm" viewBox="0 0 200 200"><g fill="none" stroke="#000"><g id="zorg"><rect x="10" y="10" width="150" height="120"/></g><g id="plok"><rect x="20" y="20" width="90" height="70"/></g></g></svg>';
  const place = join(folder, 'customer');
  mkdirSync(place);
  writeFileSync(join(place, 'two.svg'), two);
  // The table of cartons comes before the folder of customers in the order of names.
  writeFileSync(join(place, 'cartons.csv'), 'number,customer,drawing\nours,Zorg & Co,two.svg\n');
  mkdirSync(join(place, 'customers'));
  writeFileSync(join(place, 'customers', 'zorg.json'), JSON.stringify({ id: 'Zorg & Co', roles: ['Cutting=id:plok', 'Legend=id:zorg'] }));
  const run = spawnSync(process.execPath, [binary, 'library', 'add', place, '--library', path], { encoding: 'utf8', cwd: folder });
  expect(run).toMatchObject({ status: 0, stderr: '' });
  const like = shapeOf(chooseBlank(await readDrawing(Buffer.from(rectangle(90, 70))), undefined));
  expect(ids(await find(library, { like, within: 0.1 }))).toEqual(['carton ours']);
});

test('the command: exit code 1 where nothing is found, figures with the answer', () => {
  const run = (...args: string[]) => spawnSync(process.execPath, [binary, 'library', 'find', ...args, '--library', path], { encoding: 'utf8', cwd: folder });
  expect(run('--like', sample('drawings', 'tray.svg'), '--within', '0.5')).toMatchObject({ status: 0, stdout: expect.stringMatching(/^carton {2}tray\s+outline within 0 mm\n$/) });
  expect(JSON.parse(run('90x45x130', '--json', '-').stdout)).toMatchObject({ format: 'blankwright-library-found', found: [{ id: 'straight-tuck-medium', by: { how: 'creases' } }] });
  expect(run('xyz')).toMatchObject({ status: 1, stdout: 'nothing found.\n' });
  expect(run('--within', 'wide')).toMatchObject({ status: 2 });
  writeFileSync(join(folder, 'bad.svg'), '<svg');
  expect(run('--like', 'bad.svg')).toMatchObject({ status: 2 });
});
