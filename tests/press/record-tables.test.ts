import fc from 'fast-check';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import type { InputError } from '../../src/base/issue.ts';
import { ratesSchema } from '../../src/press/rates.ts';
import { readRecord } from '../../src/press/records.ts';
import { listedCandidates, listedRanges, sheetListSchema } from '../../src/press/sheet-candidates.ts';
import { readTable, schemaOf, writeTable, type TableKind } from '../../src/press/tables/record-tables.ts';
import { GERMAN_TABLE, wasteTableSchema } from '../../src/press/waste-table.ts';
import { readRows, writeRows } from '../../src/press/tables/rows.ts';
import { english } from '../../src/render/messages/english.ts';

const samples = join(import.meta.dirname, '..', '..', 'samples');
const sample = (name: string) => readFileSync(join(samples, 'tables', name), 'utf8');

function refusal(kind: TableKind, text: string): string {
  try {
    readTable(kind, text, 'x.csv');
  } catch (error) {
    return (error as InputError).issues.map((issue) => english.sentence(issue)).join('\n');
  }
  return 'not refused';
}

describe('tables of the sample house', () => {
  test('stock: prices by tonne and by thousand, parents, a reel and a range made to order', () => {
    const list = readRecord(sheetListSchema, readTable('sheets', sample('stock.csv'), 'stock.csv'), 'stock.csv');
    expect(list.toleranceMm).toBe(1);
    const candidates = listedCandidates(list, {});
    expect(candidates[2]).toMatchObject({ sheet: { width: 1000, height: 700 }, grain: 'x', pricePerThousand: 236 });
    expect(candidates.filter(({ origin }) => origin.kind === 'parent')).toHaveLength(7);
    expect(listedRanges(list, {})).toHaveLength(3);
    expect(list.madeToOrder).toMatchObject({ minimumTonnes: 3, step: 5, greatest: { width: 1020, height: 720 } });
  });

  test('boards with semicolons and decimal commas', () => {
    expect(readTable('boards', sample('boards.csv'), 'boards.csv')[1]).toEqual({ name: 'Folding boxboard 300', grade: 'GC1', grammage: 300, caliper: 0.53, pricePerTonne: 1120, sheetGrain: 'x' });
  });

  test('rates are those of the JSON beside them', () => {
    const json = JSON.parse(readFileSync(join(samples, 'jobs', 'rates-invented.json'), 'utf8')) as object;
    expect(ratesSchema.parse(readTable('rates', sample('rates.csv'), 'rates.csv'))).toEqual(ratesSchema.parse(json));
  });
});

describe('there and back', () => {
  test.each([['sheets', 'stock.csv'], ['boards', 'boards.csv'], ['rates', 'rates.csv'], ['presses', 'presses.csv'], ['cutters', 'cutters.csv'], ['dies', 'dies.csv'], ['waste', 'waste.csv']] as const)('%s', (kind, name) => {
    const json = readTable(kind, sample(name), name);
    expect(readTable(kind, writeTable(kind, json), 'again.csv')).toEqual(json);
  });

  test.each([['presses', 'presses'], ['cutters', 'cutters'], ['guillotines', 'guillotines'], ['packings', 'packings']] as const)('%s of the sample house come back from a table as their schema reads them', (kind, name) => {
    const records = readdirSync(join(samples, name)).map((file) => JSON.parse(readFileSync(join(samples, name, file), 'utf8')) as object);
    const again = readTable(kind, writeTable(kind, records as never), 'again.csv') as object[];
    expect(again.map((record) => schemaOf(kind).parse(record))).toEqual(records.map((record) => readRecord(schemaOf(kind), record, 'x')));
  });

  test('waste tables, the published one too', () => {
    for (const table of [GERMAN_TABLE, wasteTableSchema.parse(JSON.parse(readFileSync(join(samples, 'jobs', 'waste-careful.json'), 'utf8')))]) {
      expect(readTable('waste', writeTable('waste', table as never), 'again.csv')).toEqual(table);
    }
  });

  // RFC 4180: commas, quotes and line ends in cells are quoted, quotes doubled.
  test('any cells, whatever stands in them', () => {
    const cell = fc.string({ unit: fc.constantFrom('a', 'é', ',', ';', '"', '\n', '\r\n', '\t', '7', ' ') }).filter((text) => text.trim() === text && text !== '');
    fc.assert(
      fc.property(fc.array(fc.tuple(cell, cell), { minLength: 1, maxLength: 8 }), (rows) => {
        const read = readRows(writeRows(['first', 'second'], rows), 'x.csv');
        expect(read.rows.map(({ cells }) => [cells['first'], cells['second']])).toEqual(rows);
        const lines = rows.reduce<number[]>((starts, row, i) => [...starts, starts[i]! + 1 + (row.join('').match(/\r\n|\n|\r/g)?.length ?? 0)], [2]);
        expect(read.rows.map(({ line }) => line)).toEqual(lines.slice(0, -1));
      }),
      { numRuns: 300, seed: 7 },
    );
  });

  test('a cell that a spreadsheet would take for a formula is disarmed', () => expect(writeRows(['name'], [['=1+1']])).toContain("'=1+1"));
});

test.each<[string, TableKind, string, string]>([
  ['a size that is none, after an empty line', 'sheets', 'sheet,grain\n1020x720,x\n\nlarge,x\n', 'x.csv: line 4, sheet: a size is wanted'],
  ['a grain that is none', 'sheets', 'sheet,grain\n1020x720,z\n', 'x.csv: line 2, grain'],
  ['a negative price', 'sheets', 'sheet,pricePerTonne\n1020x720,-3\n', 'x.csv: line 2, pricePerTonne'],
  ['a kind that is none', 'sheets', 'kind,sheet\npile,1020x720\n', 'x.csv: line 2, kind: stock, parent, reel, order is wanted'],
  ['two ranges made to order', 'sheets', 'kind,least,greatest\norder,700x500,1020x720\norder,700x500,1020x720\n', 'x.csv: line 3, kind'],
  ['a column that is none', 'sheets', 'sheet,colour\n1020x720,red\n', 'the column colour is not known'],
  ['words for a number', 'boards', 'name,grammage\nboard,heavy\n', 'x.csv: line 2, grammage'],
  ['grammage of zero', 'boards', 'name;grammage\na;300\nb;0\n', 'x.csv: line 3, grammage'],
  ['a rate that is none', 'rates', 'rate,value\npress.speed,9000\npostage,3\n', 'postage'],
  ['a speed of zero', 'rates', 'rate,value\nplatePrice,17\npress.speed,0\n', 'x.csv: line 3, press.speed'],
  ['a rate given twice', 'rates', 'rate,value\nplatePrice,17\nplatePrice,18\n', 'given twice, first in line 2'],
  ['a rate without value', 'rates', 'rate,value\nplatePrice,\n', 'x.csv: line 2, value'],
  ['a cell too many', 'boards', 'name,grammage\na,300,9\n', 'x.csv, line 2'],
  ['an open quote', 'boards', 'name,grammage\n"a,300\n', 'x.csv, line 2'],
  ['a press with a gripper of words', 'presses', 'name,gripper,units\na,wide,6\n', 'x.csv: line 2, gripper: a length in mm'],
  ['a column of another kind', 'cutters', 'name,units\na,6\n', 'the column units is not known'],
  ['half an up on a die', 'dies', 'number,ups\nD-1,10.5\n', 'x.csv: line 2, ups'],
  ['a stage that is none', 'waste', 'stage,set up,running percent,name\nprinting,30,,t\nironing,3,1,\n', 'ironing'],
  ['a stage given twice', 'waste', 'stage,set up,running percent,name\ngluing,0,1,t\ngluing,0,2,\n', 'x.csv: line 3, stage: given twice, first in line 2'],
  ['more waste than goes in', 'waste', 'stage,from colours,set up,set up per plate,running percent,name\nprinting,,30,,,t\nprinting,1,,15,90,\nvarnish,,0,10,0.1,\n', 'x.csv: line 3, runningPercent: must be at most 50'],
  ['a long side of a square', 'sheets', 'sheet,grain\n700x700,long\n', 'x.csv: line 2, grain: a square has no longer side'],
  ['nothing at all', 'boards', '', 'x.csv, line 1'],
])('%s is refused by line and field', (_, kind, text, message) => expect(refusal(kind, text)).toContain(message));

test('every fault of a table is named in one go, the first twenty of many', () => {
  expect(refusal('sheets', 'sheet,grain\nlarge,x\n1020x720,z\n1020x720,x\nsmall,y\n').split('\n')).toHaveLength(3);
  const many = refusal('boards', `name,grammage\n${Array.from({ length: 25 }, (_, i) => `b${i},0`).join('\n')}\n`).split('\n');
  expect(many).toHaveLength(21);
  expect(many[19]).toContain('line 21, grammage');
  expect(many[20]).toContain('5 more faults');
});

test('grain words mean the same everywhere: x along the first figure; long and short by the sides; both and any either way', () => {
  const grains = (grain: string, sheet: string) => listedCandidates(readRecord(sheetListSchema, { sheets: [{ sheet, grain }] }, 'x'), {}).map((one) => one.grain);
  expect([grains('long', '1020x720'), grains('short', '1020x720'), grains('long', '720x1020')]).toEqual([['x'], ['y'], ['y']]);
  expect([grains('both', '1020x720'), grains('any', '1020x720')]).toEqual([['x', 'y'], ['x', 'y']]);
  const ordered = listedRanges(readRecord(sheetListSchema, { madeToOrder: { least: '500x400', greatest: '1000x1000', grain: 'short' } }, 'x'), {})[0]!;
  expect([ordered.candidateOf({ width: 900, height: 600 }).grain, ordered.candidateOf({ width: 500, height: 700 }).grain]).toEqual(['y', 'x']);
});

// bvdm/ZFA, Grundlagen der Kalkulation von Druckerzeugnissen 4.1: 70 × 100 with the fibres along its longer side, halved, is
// 50 × 70 with the fibres along its shorter side.
test('grain after halving a parent', () => {
  const halves = listedCandidates(readRecord(sheetListSchema, { parents: [{ sheet: '1000x700', grain: 'long' }] }, 'x'), {}).filter(({ sheet }) => sheet.width === 700 && sheet.height === 500);
  expect(halves.map(({ grain }) => grain)).toEqual(['y']);
});
