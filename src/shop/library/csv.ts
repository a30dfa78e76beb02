import { numberOr, readRows, type Rows } from '../../press/tables/rows.ts';
import { fieldReader } from '../../press/tables/table-cells.ts';
import { KINDS, type NamedKind } from './kinds.ts';

/** Columns that hold numbers, and those that hold yes or no. */
const NUMBERS = new Set(['ups', 'strokes', 'yearly', 'blank', 'page', 'closeGaps', 'scale', 'widthIs', 'grammage', 'caliper', 'pricePerTonne']);
const YES_OR_NO = new Set(['live']);

/**
 * Rows of a table as records; presses, die-cutters and boards as everywhere else they stand in tables. Empty cells are left
 * out. Throws an InputError that names the line.
 */
export function readCsv(text: string, where: string, kind?: NamedKind): { readonly line: number; readonly fields: Record<string, unknown> }[] {
  const rows = readRows(text, where);
  if (kind) {
    const fieldsOf = fieldReader(KINDS[kind].schema, rows);
    // What a record is called stays as written: 007 is not 7.
    return rows.rows.map((row) => ({ line: row.line, fields: { ...fieldsOf(row), ...textsOf(row.cells, ['number', 'id']) } }));
  }
  return rows.rows.map(({ line, cells }) => ({ line, fields: Object.fromEntries(Object.entries(cells).map(([field, cell]) => [field, valueOf(field, cell, rows)])) }));
}

/** A cell that is no number stays text, so that the schema can name it. */
function valueOf(field: string, cell: string, rows: Rows): unknown {
  if (YES_OR_NO.has(field)) return /^(yes|true|1)$/i.test(cell) ? true : /^(no|false|0)$/i.test(cell) ? false : cell;
  return NUMBERS.has(field) ? numberOr(cell, rows) : cell;
}

function textsOf(cells: Readonly<Record<string, string>>, fields: readonly string[]): Record<string, string> {
  return Object.fromEntries(Object.entries(cells).filter(([field]) => fields.includes(field)));
}
