import { sheetListSchema } from '../sheet-candidates.ts';
import { placed, type Faults } from './faults.ts';
import { numberOr, type Rows } from './rows.ts';
import type { Json } from './table-cells.ts';

/** One row a sheet, parent, reel or range made to order. */
export const SHEET_COLUMNS = ['kind', 'sheet', 'grain', 'pricePerTonne', 'pricePerThousand', 'width', 'cutOffs', 'least', 'greatest', 'step', 'packet', 'pallet', 'minimumTonnes', 'leadDays', 'toleranceMm'];
const TEXT_COLUMNS: ReadonlySet<string> = new Set(['kind', 'sheet', 'grain']);

const LIST_OF_KIND = { stock: 'sheets', parent: 'parents', reel: 'reels', order: 'madeToOrder' } as const;

export function readSheetList(rows: Rows, where: string, faults: Faults): Json {
  const list: Json & Record<'sheets' | 'parents' | 'reels', Json[]> = { sheets: [], parents: [], reels: [] };
  for (const row of rows.rows) {
    const cells = Object.fromEntries(Object.entries(row.cells).map(([field, cell]) => [field, TEXT_COLUMNS.has(field) ? cell : numberOr(cell, rows)])) as Json & { kind?: string };
    const { kind = 'stock', toleranceMm, cutOffs, least, greatest, ...fields } = cells;
    const name = LIST_OF_KIND[kind as keyof typeof LIST_OF_KIND];
    if (name === undefined) {
      faults.field(placed(where, row, ['kind']), `${Object.keys(LIST_OF_KIND).join(', ')} is wanted`);
      continue;
    }
    const range = { ...(least !== undefined && { least: name === 'madeToOrder' ? String(least) : least }), ...(greatest !== undefined && { greatest: name === 'madeToOrder' ? String(greatest) : greatest }) };
    const entry = { ...fields, ...range, ...(cutOffs !== undefined && { cutOffs: String(cutOffs).split(/\s+/).map((cell) => numberOr(cell, rows)) }) };
    const alone = name === 'madeToOrder' ? { madeToOrder: entry } : { [name]: [entry] };
    const isGood = faults.check(sheetListSchema, { ...alone, ...(toleranceMm !== undefined && { toleranceMm }) }, (path) => placed(where, row, path.filter((key) => key !== name && typeof key !== 'number')));
    if (name === 'madeToOrder') {
      if (list['madeToOrder'] !== undefined) faults.field(placed(where, row, ['kind']), 'one range made to order is wanted, this is the second');
      list['madeToOrder'] = entry;
    } else list[name].push(entry);
    if (isGood && toleranceMm !== undefined) list['toleranceMm'] = Math.max(Number(list['toleranceMm'] ?? 0), toleranceMm as number);
  }
  return list;
}

export function sheetRows(list: Json): Json[] {
  const rowsOf = (kind: keyof typeof LIST_OF_KIND) => [(list[LIST_OF_KIND[kind]] ?? []) as Json | Json[]].flat().map((entry): Json => ({ kind, ...entry }));
  const rows = (Object.keys(LIST_OF_KIND) as (keyof typeof LIST_OF_KIND)[]).flatMap(rowsOf);
  return rows.map((row, i) => (i === 0 && list['toleranceMm'] !== undefined ? { ...row, toleranceMm: list['toleranceMm'] } : row));
}
