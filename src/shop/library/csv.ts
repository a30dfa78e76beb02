import Papa from 'papaparse';
import { inputError } from '../../base/issue.ts';

/** Columns that hold numbers, and those that hold yes or no. */
const NUMBERS = new Set(['ups', 'strokes', 'yearly', 'blank', 'scale', 'widthIs', 'grammage', 'caliper', 'pricePerTonne']);
const YES_OR_NO = new Set(['live']);

/**
 * Rows of a table as records, the first line naming the fields; comma, semicolon or tab, whichever the file uses. Empty
 * cells are left out. Throws an InputError that names the line.
 */
export function readCsv(text: string, where: string): { readonly line: number; readonly fields: Record<string, unknown> }[] {
  const { data, errors } = Papa.parse<Record<string, string>>(text, { header: true, skipEmptyLines: 'greedy', transformHeader: fieldName });
  const wrong = errors.find(({ code }) => code !== 'UndetectableDelimiter');
  if (wrong) throw inputError('csv-not-valid', { where, facts: { line: (wrong.row ?? 0) + 2, reason: wrong.message } });
  return data.map((row, index) => ({
    line: index + 2,
    fields: Object.fromEntries(Object.entries(row).flatMap(([field, cell]) => (cell.trim() === '' ? [] : [[field, valueOf(field, cell.trim())]]))),
  }));
}

/** `Width is` and `width-is` are `widthIs`. */
function fieldName(header: string): string {
  return header.trim().replace(/^\uFEFF/, '').toLowerCase().replace(/[\s_-]+([a-z])/g, (_, letter: string) => letter.toUpperCase());
}

/** A cell that is no number stays text, so that the schema can name it. Thousands may be set apart by spaces. */
function valueOf(field: string, cell: string): unknown {
  if (YES_OR_NO.has(field)) return /^(yes|true|1)$/i.test(cell) ? true : /^(no|false|0)$/i.test(cell) ? false : cell;
  const number = Number(cell.replace(/[\s\u00a0\u202f]/g, ''));
  return NUMBERS.has(field) && Number.isFinite(number) ? number : cell;
}
