import { camelCase } from '../../base/camel-case.ts';
import type { z } from 'zod';
import { guillotineSchema } from '../guillotine.ts';
import { packingSchema } from '../packing.ts';
import { ratesSchema } from '../rates.ts';
import { boardSchema, cutterSchema, dieSchema, pressSchema } from '../records.ts';
import { sheetListSchema } from '../sheet-candidates.ts';
import { wasteTableSchema } from '../waste-table.ts';
import { collectFaults, placed, type Faults } from './faults.ts';
import { readRates, rateRows } from './rate-rows.ts';
import { readRows, writeRows, type Rows } from './rows.ts';
import { readSheetList, SHEET_COLUMNS, sheetRows } from './sheet-rows.ts';
import { fieldReader, type Json } from './table-cells.ts';
import { readWaste, WASTE_COLUMNS, wasteRows } from './waste-rows.ts';

/** Records of which a table holds one a row, its columns named as their fields. */
const LISTS = { boards: boardSchema, presses: pressSchema, cutters: cutterSchema, dies: dieSchema, guillotines: guillotineSchema, packings: packingSchema } as const;
/** Records that are a whole table. */
const WHOLES = { sheets: sheetListSchema, rates: ratesSchema, waste: wasteTableSchema } as const;

type ListKind = keyof typeof LISTS;
export type TableKind = ListKind | keyof typeof WHOLES;
/** The shop's records as tables, one schema each with their JSON. */
export const TABLE_KINDS = [...Object.keys(WHOLES), ...Object.keys(LISTS)] as readonly TableKind[];

export function isList(kind: TableKind): kind is ListKind {
  return Object.hasOwn(LISTS, kind);
}

export function schemaOf(kind: TableKind): z.ZodObject {
  return isList(kind) ? LISTS[kind] : WHOLES[kind];
}

/** The kind of table in which records of the schema stand. */
export function kindOf(schema: z.ZodType): TableKind | undefined {
  return TABLE_KINDS.find((kind) => schemaOf(kind) === schema);
}

/** What tells one record of a list from another. */
export function nameIn(record: Json): string | undefined {
  const name = record['name'] ?? record['number'];
  return name === undefined ? undefined : String(name);
}

/** The JSON of a table of the kind, checked by its schema. Throws an InputError that names line and field of every fault. */
export function readTable(kind: ListKind, text: string, where: string): Json[];
export function readTable(kind: TableKind, text: string, where: string): Json | Json[];
export function readTable(kind: TableKind, text: string, where: string): Json | Json[] {
  const faults = collectFaults(where);
  const rows = readRows(text, where, faults);
  const known = columnsOf(kind);
  for (const field of rows.head) if (!known.includes(field)) faults.add([{ code: 'csv-column-unknown', severity: 'error', where, facts: { field, known: known.join(', ') } }]);
  faults.finishIfAny();
  const json = read(kind, rows, where, faults);
  faults.finishIfAny();
  return json;
}

function read(kind: TableKind, rows: Rows, where: string, faults: Faults): Json | Json[] {
  if (isList(kind)) return readList(LISTS[kind], rows, where, faults);
  if (kind === 'sheets') return readSheetList(rows, where, faults);
  return kind === 'rates' ? readRates(rows, where, faults) : readWaste(rows, where, faults);
}

function readList(schema: z.ZodObject, rows: Rows, where: string, faults: Faults): Json[] {
  const fieldsOf = fieldReader(schema, rows);
  return rows.rows.map((row) => {
    const json = fieldsOf(row);
    faults.check(schema, json, (path) => placed(where, row, path));
    return json;
  });
}

/** Names of the columns that a table of the kind may have. */
export function columnsOf(kind: TableKind): readonly string[] {
  if (kind === 'sheets') return SHEET_COLUMNS;
  if (kind === 'rates') return ['rate', 'value'];
  return kind === 'waste' ? WASTE_COLUMNS : Object.keys(schemaOf(kind).shape);
}

/** The table of a record that its schema takes. */
export function writeTable(kind: TableKind, json: Json | readonly Json[]): string {
  const records = isList(kind) ? ([json].flat() as Json[]).map(camelFields) : kind === 'sheets' ? sheetRows(json as Json) : kind === 'rates' ? rateRows(json as Json) : wasteRows(json as Json);
  const used = columnsOf(kind).filter((field) => records.some((record) => record[field] !== undefined));
  return writeRows(used, records.map((record) => used.map((field) => cellOf(record[field]))));
}

/** Columns go by the names of the schema, whichever way the record writes them. */
function camelFields(record: Json): Json {
  return Object.fromEntries(Object.entries(record).map(([field, value]) => [camelCase(field), value]));
}

function cellOf(value: unknown): string | number | undefined {
  if (Array.isArray(value)) return value.join(' ');
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  return typeof value === 'number' || typeof value === 'string' ? value : undefined;
}
