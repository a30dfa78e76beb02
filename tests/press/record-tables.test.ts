import fc from 'fast-check';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import type { InputError } from '../../src/base/issue.ts';
import { ratesSchema } from '../../src/press/rates.ts';
import { readRecord } from '../../src/press/records.ts';
import { listedCandidates, listedRanges, sheetListSchema } from '../../src/press/sheet-candidates.ts';
import { readTable, writeTable, type TableKind } from '../../src/press/tables/record-tables.ts';
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
  test.each([['sheets', 'stock.csv'], ['boards', 'boards.csv'], ['rates', 'rates.csv']] as const)('%s', (kind, name) => {
    const json = readTable(kind, sample(name), name);
    expect(readTable(kind, writeTable(kind, json), 'again.csv')).toEqual(json);
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
  ['nothing at all', 'boards', '', 'x.csv, line 1'],
])('%s is refused by line and field', (_, kind, text, message) => expect(refusal(kind, text)).toContain(message));
