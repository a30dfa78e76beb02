import { ratesSchema } from '../rates.ts';
import { placed, type Faults } from './faults.ts';
import { numberOr, type Row, type Rows } from './rows.ts';
import type { Json } from './table-cells.ts';

/** One row a rate, machines with a dot: `press.speed`. */
export function readRates(rows: Rows, where: string, faults: Faults): Json {
  const found: Json = {};
  const lines = new Map<string, Row>();
  for (const row of rows.rows) {
    const { rate, value } = row.cells;
    if (rate === undefined || value === undefined) {
      faults.field(placed(where, row, [rate === undefined ? 'rate' : 'value']), 'a rate and its value are wanted');
      continue;
    }
    const first = lines.get(rate);
    if (first) faults.field(placed(where, row, [rate]), `given twice, first in line ${first.line}`);
    lines.set(rate, row);
    const [machine, field] = rate.split('.', 2) as [string, string?];
    const read = /(^|\.)name$/.test(rate) ? value : numberOr(value, rows);
    if (field === undefined) found[machine] = read;
    else found[machine] = { ...(found[machine] as Json | undefined), [field]: read };
  }
  const rowOf = (path: readonly PropertyKey[]) => lines.get(path.join('.')) ?? rows.rows.find(({ cells }) => cells['rate']?.split('.')[0] === path[0]);
  faults.check(ratesSchema, found, (path) => {
    const row = rowOf(path);
    return row ? placed(where, row, path) : `${where}: ${[...lines.keys()].find((rate) => !(rate.split('.')[0]! in ratesSchema.shape)) ?? path.join('.')}`;
  });
  return found;
}

export function rateRows(json: Json): Json[] {
  return Object.entries(json).flatMap(([rate, value]) => (typeof value === 'object' && value !== null ? Object.entries(value).map(([field, inner]) => ({ rate: `${rate}.${field}`, value: inner as unknown })) : [{ rate, value }]));
}
