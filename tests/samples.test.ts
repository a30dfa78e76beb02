import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { boardSchema, cutterSchema, pressSchema, readRecord } from '../src/press/records.ts';
import { nestFigures, readFigures, readSample, SAMPLES, sampleDrawings, type NestFigures, type ReadFigures } from './support/sample-figures.ts';

/**
 * What the samples must give, held from both sides: worse fails, and better fails too until it is written down.
 * UPDATE_SAMPLES=1 writes samples/expected.json anew (and lays out every drawing); nothing else does.
 * ALL_SAMPLES=1 lays out every drawing, not only those that are quickly done.
 */
interface Expected {
  readonly read: Readonly<Record<string, ReadFigures>>;
  readonly nest: Readonly<Record<string, NestFigures>>;
}

const file = join(SAMPLES, 'expected.json');
const updating = process.env['UPDATE_SAMPLES'] === '1';
const all = updating || process.env['ALL_SAMPLES'] === '1';
const expected: Expected = updating ? { read: {}, nest: {} } : (JSON.parse(readFileSync(file, 'utf8')) as Expected);
const found = { read: {} as Record<string, ReadFigures>, nest: {} as Record<string, NestFigures> };

const drawings = sampleDrawings();
const QUICK = ['cup-fan.svg', 'hanging-card.svg', 'label-oval.svg', 'label-rounded.svg', 'label-wrap.svg', 'sleeve.svg'];

test('there are samples, and each has its figures', () => {
  expect(drawings.length).toBeGreaterThanOrEqual(14);
  if (updating) return;
  expect(Object.keys(expected.read)).toEqual(drawings);
  expect(Object.keys(expected.nest)).toEqual(drawings);
});

describe('reading', () => {
  test.each(drawings)('%s', (name) => {
    found.read[name] = readFigures(readSample(name));
    if (!updating) expect(found.read[name]).toEqual(expected.read[name]);
  });
});

describe('laying out on 1020 × 720 at effort quick', () => {
  test.each(all ? drawings : QUICK)('%s', async (name) => {
    const { ups, upperBound } = (found.nest[name] = await nestFigures(name));
    expect(ups).toBeLessThanOrEqual(upperBound);
    if (updating) return;
    const before = expected.nest[name];
    expect(ups, 'fewer ups than before').toBeGreaterThanOrEqual(before.ups);
    expect(upperBound, 'a weaker limit than before').toBeLessThanOrEqual(before.upperBound);
    expect({ ups, upperBound }, 'better than before: tighten samples/expected.json with UPDATE_SAMPLES=1').toEqual(before);
  });
});

afterAll(() => {
  if (updating) writeFileSync(file, `${JSON.stringify(found, null, 1)}\n`);
});

describe('records of the sample house', () => {
  const filesIn = (folder: string) => readdirSync(join(SAMPLES, folder)).map((name) => `${folder}/${name}`);
  const read = (path: string): unknown => JSON.parse(readFileSync(join(SAMPLES, path), 'utf8'));
  const unknownFields = (record: object, schema: { readonly shape: object }) => Object.keys(record).filter((key) => !(key in schema.shape));

  test.each(filesIn('presses'))('%s', (path) => {
    const press = readRecord(pressSchema, read(path), path);
    expect(press.maxSheet!.width).toBeGreaterThan(press.minSheet!.width);
    expect(press.bar).toBeDefined();
    expect(unknownFields(press, pressSchema)).toEqual([]);
  });

  test.each(filesIn('cutters'))('%s', (path) => {
    const cutter = readRecord(cutterSchema, read(path), path);
    expect(cutter.gap).toBeGreaterThan(0);
    expect(unknownFields(cutter, cutterSchema)).toEqual([]);
  });

  test.each(filesIn('boards'))('%s', (path) => {
    const board = readRecord(boardSchema, read(path), path);
    expect(board.grammage).toBeGreaterThan(0);
    expect(unknownFields(board, boardSchema)).toEqual([]);
  });
});
