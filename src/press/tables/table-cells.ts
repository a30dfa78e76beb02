import { z } from 'zod';
import { numberOr, type Row, type Rows } from './rows.ts';

export type Json = Record<string, unknown>;

const BOOLEANS: Readonly<Record<string, boolean>> = { yes: true, true: true, no: false, false: false };

/**
 * Reads the cells of a row as what its schema takes: text, a number, yes or no, or several numbers set apart by spaces.
 * What fits nowhere stays a number or text, so that the schema can say what is wanted.
 */
export function fieldReader(schema: z.ZodObject, rows: Rows): (row: Row) => Json {
  const shape = schema.shape as Readonly<Record<string, z.ZodType>>;
  return ({ cells }) => Object.fromEntries(Object.entries(cells).map(([field, cell]) => [field, cellValue(cell, shape[field], rows)]));
}

function cellValue(cell: string, field: z.ZodType | undefined, rows: Rows): unknown {
  const plain = numberOr(cell, rows);
  const readings = [plain, cell, BOOLEANS[cell.toLowerCase()], cell.split(/\s+/).map((part) => numberOr(part, rows))];
  return readings.find((reading) => reading !== undefined && field?.safeParse(reading).success) ?? plain;
}
