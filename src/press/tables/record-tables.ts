import { plainReason } from '../plain-reason.ts';
import { z } from 'zod';
import { InputError, inputError, type Issue } from '../../base/issue.ts';
import { ratesSchema } from '../rates.ts';
import { boardSchema } from '../records.ts';
import { sheetListSchema } from '../sheet-candidates.ts';
import { numberOr, readRows, writeRows, type Row, type Rows } from './rows.ts';

/**
 * The shop's records as tables, one schema each with their JSON. A stock list has one row a sheet, parent, reel or range
 * made to order; boards one row a board; rates one row a rate, machines with a dot: `press.speed`.
 */
export const TABLE_KINDS = ['sheets', 'boards', 'rates'] as const;
export type TableKind = (typeof TABLE_KINDS)[number];

type Json = Record<string, unknown>;

const COLUMNS = {
  sheets: ['kind', 'sheet', 'grain', 'pricePerTonne', 'pricePerThousand', 'width', 'cutOffs', 'least', 'greatest', 'step', 'minimumTonnes', 'toleranceMm'],
  boards: ['name', 'grade', 'grammage', 'caliper', 'pricePerTonne', 'sheetGrain'],
  rates: ['rate', 'value'],
} as const satisfies Record<TableKind, readonly string[]>;

const TEXT_COLUMNS: ReadonlySet<string> = new Set(['kind', 'sheet', 'grain', 'name', 'grade', 'sheetGrain', 'rate']);

/** The JSON of a table of the kind, checked by its schema. Throws an InputError that names line and field. */
export function readTable(kind: 'boards', text: string, where: string): Json[];
export function readTable(kind: TableKind, text: string, where: string): Json | Json[];
export function readTable(kind: TableKind, text: string, where: string): Json | Json[] {
  const rows = readRows(text, where);
  const unknown = rows.head.filter((field) => !(COLUMNS[kind] as readonly string[]).includes(field));
  if (unknown.length > 0) throw new InputError(unknown.map((field): Issue => ({ code: 'csv-column-unknown', severity: 'error', where, facts: { field, known: COLUMNS[kind].join(', ') } })));
  if (kind === 'boards') return rows.rows.map((row) => checked(boardSchema, fieldsOf(row, rows), [], (path) => placed(where, row, path)));
  return kind === 'sheets' ? sheetList(rows, where) : rates(rows, where);
}

function fieldsOf({ cells }: Row, rows: Rows): Json {
  return Object.fromEntries(Object.entries(cells).map(([field, cell]) => [field, TEXT_COLUMNS.has(field) ? cell : numberOr(cell, rows)]));
}

function placed(where: string, { line }: Row, path: readonly PropertyKey[]): string {
  return `${where}: line ${line}, ${path.map(String).join('.') || 'whole row'}`;
}

/** The JSON as given, if the schema takes it; `place` says where a wrong field stands. */
function checked(schema: z.ZodType, json: Json, prefix: readonly PropertyKey[], place: (path: readonly PropertyKey[]) => string): Json {
  const result = schema.safeParse(json);
  if (result.success) return json;
  throw new InputError(result.error.issues.map((issue): Issue => ({ code: 'field-not-valid', severity: 'error', where: place(issue.path.slice(prefix.length)), facts: { reason: plainReason(issue) } })));
}

const LIST_OF_KIND = { stock: 'sheets', parent: 'parents', reel: 'reels', order: 'madeToOrder' } as const;

function sheetList(rows: Rows, where: string): Json {
  const list: Json & Record<'sheets' | 'parents' | 'reels', Json[]> = { sheets: [], parents: [], reels: [] };
  for (const row of rows.rows) {
    const { kind = 'stock', toleranceMm, cutOffs, least, greatest, ...fields } = fieldsOf(row, rows) as Json & { kind?: string };
    const name = LIST_OF_KIND[kind as keyof typeof LIST_OF_KIND];
    if (name === undefined) throw inputError('field-not-valid', { where: placed(where, row, ['kind']), facts: { reason: `${Object.keys(LIST_OF_KIND).join(', ')} is wanted` } });
    const range = { ...(least !== undefined && { least: name === 'madeToOrder' ? String(least) : least }), ...(greatest !== undefined && { greatest: name === 'madeToOrder' ? String(greatest) : greatest }) };
    const entry = { ...fields, ...range, ...(cutOffs !== undefined && { cutOffs: String(cutOffs).split(/\s+/).map((cell) => numberOr(cell, rows)) }) };
    const alone = name === 'madeToOrder' ? { madeToOrder: entry } : { [name]: [entry] };
    checked(sheetListSchema, { ...alone, ...(toleranceMm !== undefined && { toleranceMm }) }, [], (path) => placed(where, row, path.filter((key) => key !== name && typeof key !== 'number')));
    if (name === 'madeToOrder') {
      if (list['madeToOrder'] !== undefined) throw inputError('field-not-valid', { where: placed(where, row, ['kind']), facts: { reason: 'one range made to order is wanted, this is the second' } });
      list['madeToOrder'] = entry;
    } else list[name].push(entry);
    if (toleranceMm !== undefined) list['toleranceMm'] = Math.max(Number(list['toleranceMm'] ?? 0), toleranceMm as number);
  }
  return list;
}

function rates(rows: Rows, where: string): Json {
  const found: Json = {};
  const lines = new Map<string, Row>();
  for (const row of rows.rows) {
    const { rate, value } = row.cells;
    if (rate === undefined || value === undefined) throw inputError('field-not-valid', { where: placed(where, row, [rate === undefined ? 'rate' : 'value']), facts: { reason: 'a rate and its value are wanted' } });
    if (lines.has(rate)) throw inputError('field-not-valid', { where: placed(where, row, [rate]), facts: { reason: `given twice, first in line ${lines.get(rate)!.line}` } });
    lines.set(rate, row);
    const [machine, field] = rate.split('.', 2) as [string, string?];
    const read = /(^|\.)name$/.test(rate) ? value : numberOr(value, rows);
    if (field === undefined) found[machine] = read;
    else found[machine] = { ...(found[machine] as Json | undefined), [field]: read };
  }
  const rowOf = (path: readonly PropertyKey[]) => lines.get(path.join('.')) ?? rows.rows.find(({ cells }) => cells['rate']?.split('.')[0] === path[0]);
  return checked(ratesSchema, found, [], (path) => {
    const row = rowOf(path);
    return row ? placed(where, row, path) : `${where}: ${[...lines.keys()].find((rate) => !(rate.split('.')[0]! in ratesSchema.shape)) ?? path.join('.')}`;
  });
}

/** The table of a record that its schema takes. */
export function writeTable(kind: TableKind, json: Json | readonly Json[]): string {
  const columns: readonly string[] = COLUMNS[kind];
  const records = kind === 'boards' ? [json].flat() : kind === 'sheets' ? sheetRows(json as Json) : rateRows(json as Json);
  const used = columns.filter((field) => records.some((record) => (record as Json)[field] !== undefined));
  return writeRows(used, records.map((record) => used.map((field) => cellOf((record as Json)[field]))));
}

function sheetRows(list: Json): Json[] {
  const rowsOf = (kind: keyof typeof LIST_OF_KIND) => [(list[LIST_OF_KIND[kind]] ?? []) as Json | Json[]].flat().map((entry): Json => ({ kind, ...entry }));
  const rows = (Object.keys(LIST_OF_KIND) as (keyof typeof LIST_OF_KIND)[]).flatMap(rowsOf);
  return rows.map((row, i) => (i === 0 && list['toleranceMm'] !== undefined ? { ...row, toleranceMm: list['toleranceMm'] } : row));
}

function rateRows(json: Json): Json[] {
  return Object.entries(json).flatMap(([rate, value]) => (typeof value === 'object' && value !== null ? Object.entries(value).map(([field, inner]) => ({ rate: `${rate}.${field}`, value: inner as unknown })) : [{ rate, value }]));
}

function cellOf(value: unknown): string | number | undefined {
  if (Array.isArray(value)) return value.join(' ');
  return typeof value === 'number' || typeof value === 'string' ? value : undefined;
}
