import Papa from 'papaparse';
import { inputError, type Issue } from '../../base/issue.ts';

/** A row below the heads. Cells are trimmed; empty ones are left out. */
export interface Row {
  /** Counts from 1; where a cell runs over several lines, the first. */
  readonly line: number;
  readonly cells: Readonly<Record<string, string>>;
}

export interface Rows {
  /** Names of the columns, as fields. */
  readonly head: readonly string[];
  readonly rows: readonly Row[];
  /** Where commas part the cells, a comma is no decimal sign. */
  readonly partedByCommas: boolean;
}

/**
 * A table as RFC 4180 has it, the first line naming the fields; comma, semicolon or tab, whichever the file uses. Rows that
 * are none go to `faults` with their line, or are thrown as an InputError where nobody gathers faults; so is a table
 * without heads.
 */
export function readRows(text: string, where: string, faults?: { add(issues: readonly Issue[]): void }): Rows {
  const fault = (facts: NonNullable<Issue['facts']>) => {
    const error = inputError('csv-not-valid', { where, facts });
    if (!faults) throw error;
    faults.add(error.issues);
  };
  const read: { line: number; cells: string[] }[] = [];
  let from = 0;
  let line = 1;
  let delimiter = ',';
  const plain = text.replace(/^\uFEFF/, '');
  Papa.parse<string[]>(plain, {
    skipEmptyLines: 'greedy',
    delimitersToGuess: [',', ';', '\t'],
    step: ({ data, errors, meta }) => {
      // Empty lines that were passed over stand before the row.
      const started = from + /^\s*/.exec(plain.slice(from))![0].length;
      line += lineEnds(plain.slice(from, started));
      const wrong = errors.find(({ code }) => code !== 'UndetectableDelimiter');
      if (wrong) fault({ line, reason: wrong.message });
      else read.push({ line, cells: data.map((cell) => cell.trim()) });
      line += lineEnds(plain.slice(started, meta.cursor));
      from = meta.cursor;
      delimiter = meta.delimiter;
    },
  });
  const [first, ...rest] = read;
  if (!first) throw inputError('csv-not-valid', { where, facts: { line: 1, reason: 'there is nothing in it' } });
  const head = first.cells.map(fieldName);
  const twice = head.find((field, i) => head.indexOf(field) !== i);
  if (twice !== undefined) throw inputError('csv-not-valid', { where, facts: { line: first.line, reason: `the column ${twice} is there twice` } });
  const rows = rest.map(({ line: at, cells }): Row => {
    if (cells.length > head.length) fault({ line: at, reason: `${cells.length} cells, but ${head.length} columns` });
    return { line: at, cells: Object.fromEntries(head.flatMap((field, i) => (cells[i] ? [[field, cells[i]]] : []))) };
  });
  return { head, rows, partedByCommas: delimiter === ',' };
}

function lineEnds(text: string): number {
  return text.match(/\r\n|\n|\r/g)?.length ?? 0;
}

/** `Price per tonne`, `price-per-tonne` and `PRICE_PER_TONNE` are `pricePerTonne`. */
function fieldName(head: string): string {
  const name = (/[a-z]/.test(head) ? head : head.toLowerCase()).replace(/[\s_-]+(\w)/g, (_, letter: string) => letter.toUpperCase());
  return name.charAt(0).toLowerCase() + name.slice(1);
}

const GROUPED = /^-?\d{1,3}([\s\u00a0\u202f]\d{3})+([.,]\d+)?$/;

/** Thousands may be set apart by spaces, decimals by a comma where that parts no cells. What is no number stays text, so that the schema can name it. */
export function numberOr(cell: string, { partedByCommas }: Rows): number | string {
  // Other spaces set numbers apart from one another.
  const closed = GROUPED.test(cell) ? cell.replace(/[\s\u00a0\u202f]/g, '') : cell;
  const figures = partedByCommas ? closed : closed.replace(/^(-?\d+),(\d+)$/, '$1.$2');
  return figures !== '' && Number.isFinite(Number(figures)) ? Number(figures) : cell;
}

/** Lines end as RFC 4180 has it; cells that a spreadsheet would take for a formula are disarmed. */
export function writeRows(head: readonly string[], rows: readonly (readonly (string | number | undefined)[])[]): string {
  return `${Papa.unparse({ fields: [...head], data: rows.map((row) => [...row]) }, { escapeFormulae: true })}\r\n`;
}
