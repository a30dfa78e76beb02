import { wasteTableSchema } from '../waste-table.ts';
import { placed, type Faults } from './faults.ts';
import { numberOr, type Row, type Rows } from './rows.ts';
import type { Json } from './table-cells.ts';

/**
 * One row a stage. `printing` without a number of colours holds the set-up of the machine, with one the plates and the
 * running waste from so many colours on; `varnish` holds those of a varnish unit. Name and source stand in any row.
 */
export const WASTE_COLUMNS = ['stage', 'fromColours', 'setUp', 'setUpPerPlate', 'runningPercent', 'name', 'source'];

export function readWaste(rows: Rows, where: string, faults: Faults): Json {
  const json = { printing: {} as Json, stages: {} as Json };
  const colours: Json[] = [];
  /** Which row a field of the JSON came from. */
  const origin = new Map<string, Row>();
  for (const row of rows.rows) {
    const { stage, name, source, ...cells } = row.cells;
    Object.assign(json, name !== undefined && { name }, source !== undefined && { source });
    const { fromColours, setUp, setUpPerPlate, runningPercent } = Object.fromEntries(Object.entries(cells).map(([field, cell]) => [field, numberOr(cell, rows)]));
    const put = (path: readonly string[], into: Json, value: unknown) => {
      const before = origin.get(path.join('.'));
      if (before) faults.field(placed(where, row, ['stage']), `given twice, first in line ${before.line}`);
      origin.set(path.join('.'), row);
      into[path.at(-1)!] = value;
    };
    if (stage === undefined) faults.field(placed(where, row, ['stage']), 'a stage is wanted, such as printing, varnish or die-cutting');
    else if (stage === 'varnish') put(['printing', 'varnish'], json.printing, { setUpPerUnit: setUp, setUpPerPlate, runningPercent });
    else if (stage !== 'printing') put(['stages', stage], json.stages, { setUp, runningPercent });
    else if (fromColours === undefined) put(['printing', 'setUpPerMachine'], json.printing, setUp);
    else {
      origin.set(`printing.colours.${colours.length}`, row);
      colours.push({ fromColours, setUpPerPlate, runningPercent });
    }
  }
  json.printing['colours'] = colours;
  faults.check(wasteTableSchema, json, (path) => {
    const depth = path.length === 0 ? undefined : [3, 2].find((length) => origin.has(path.slice(0, length).join('.')));
    const row = depth === undefined ? undefined : origin.get(path.slice(0, depth).join('.'));
    return row ? placed(where, row, columnOf(path)) : `${where}: ${path.map(String).join('.')}`;
  });
  return json;
}

/** What the JSON calls the set-up of a machine or a unit is the column of set-up. */
function columnOf(path: readonly PropertyKey[]): readonly PropertyKey[] {
  const last = path.at(-1)!;
  return [last === 'setUpPerMachine' || last === 'setUpPerUnit' ? 'setUp' : last];
}

export function wasteRows({ name, source, printing, stages }: Json): Json[] {
  const { setUpPerMachine, colours, varnish } = printing as { setUpPerMachine: number; colours: Json[]; varnish: { setUpPerUnit: number; setUpPerPlate: number; runningPercent: number } };
  const rows: Json[] = [
    { stage: 'printing', setUp: setUpPerMachine },
    ...colours.map((row) => ({ stage: 'printing', ...row })),
    { stage: 'varnish', setUp: varnish.setUpPerUnit, setUpPerPlate: varnish.setUpPerPlate, runningPercent: varnish.runningPercent },
    ...Object.entries(stages as Record<string, Json>).map(([stage, row]) => ({ stage, ...row })),
  ];
  return rows.map((row, i) => (i === 0 ? { ...row, name, source } : row));
}
