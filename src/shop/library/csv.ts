import { numberOr, readRows, type Rows } from '../../press/tables/rows.ts';

/** Columns that hold numbers, and those that hold yes or no. */
const NUMBERS = new Set(['ups', 'strokes', 'yearly', 'blank', 'page', 'closeGaps', 'scale', 'widthIs', 'grammage', 'caliper', 'pricePerTonne']);
const YES_OR_NO = new Set(['live']);

/** Rows of a table as records. Empty cells are left out. Throws an InputError that names the line. */
export function readCsv(text: string, where: string): { readonly line: number; readonly fields: Record<string, unknown> }[] {
  const rows = readRows(text, where);
  return rows.rows.map(({ line, cells }) => ({ line, fields: Object.fromEntries(Object.entries(cells).map(([field, cell]) => [field, valueOf(field, cell, rows)])) }));
}

/** A cell that is no number stays text, so that the schema can name it. */
function valueOf(field: string, cell: string, rows: Rows): unknown {
  if (YES_OR_NO.has(field)) return /^(yes|true|1)$/i.test(cell) ? true : /^(no|false|0)$/i.test(cell) ? false : cell;
  return NUMBERS.has(field) ? numberOr(cell, rows) : cell;
}
