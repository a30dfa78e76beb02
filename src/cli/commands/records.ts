import { InputError, type Issue } from '../../base/issue.ts';
import { readNoted } from '../../press/known-fields.ts';
import { collectFaults } from '../../press/tables/faults.ts';
import { isList, readTable, schemaOf, TABLE_KINDS, writeTable, type TableKind } from '../../press/tables/record-tables.ts';
import type { Json } from '../../press/tables/table-cells.ts';
import { englishLanguage } from '../../render/messages/english-language.ts';
import { action, DONE, sentence, type RegisterCommand } from '../command.ts';
import { readJson, readText, refuseOverwrite, writeAll } from '../files.ts';
import { createOptionReader, oneOf } from '../option-reader.ts';

const KINDS = `${TABLE_KINDS.slice(0, -1).join(', ')} or ${TABLE_KINDS.at(-1)}`;

interface Options extends Record<string, unknown> {
  readonly kind?: string;
  readonly csv?: string;
  readonly json?: string;
}

export const registerRecords: RegisterCommand = (program) => {
  program
    .command('records')
    .description('Checks the shop’s records, as JSON or as a table (CSV), and writes them as the other.')
    .argument('<file>', 'a table (.csv) or JSON')
    .requiredOption('--kind <kind>', `what it holds: ${KINDS}`)
    .option('--csv <file>', 'write a table; - is standard output')
    .option('--json <file>', 'write JSON; - is standard output')
    .addHelpText('after', '\nTables name their fields in the first line; comma, semicolon or tab. Tables may stand wherever these records are named: --sheets stock.csv, --rates rates.csv, --board "boards.csv#Folding boxboard 300", --press "presses.csv#Press 1".\nGrain everywhere: x runs along the gripper edge, y across it, long and short along the longer or shorter side; in a stock list both (or any) stands for either.\nEvery fault is named by line and field, the first 20 of them.')
    .action(action(runRecords));
};

function runRecords(path: string, raw: Options): number {
  const reader = createOptionReader(raw);
  const kind = reader.read('--kind', oneOf(...TABLE_KINDS), `${KINDS} is wanted`);
  reader.finish();
  refuseOverwrite([path], [raw.csv, raw.json]);
  const json = /\.csv$/i.test(path) ? readTable(kind!, readText(path), path) : checkedJson(kind!, readJson(path), path);
  writeAll([
    ...(raw.csv === undefined ? [] : [{ path: raw.csv, content: writeTable(kind!, json) }]),
    ...(raw.json === undefined ? [] : [{ path: raw.json, content: `${JSON.stringify(json, null, 2)}\n` }]),
  ]);
  if (raw.csv !== '-' && raw.json !== '-') process.stdout.write(`${englishLanguage.issues.sentence(soundIssue(kind!, json, path))}\n`);
  return DONE;
}

function soundIssue(kind: TableKind, json: Json | Json[], where: string): Issue {
  const count = countOf(kind, json);
  return count === 1 ? { code: 'record-sound', severity: 'note', where } : { code: 'records-sound', severity: 'note', where, facts: { count, kind } };
}

/** Of a kind of which there are many, one or a list. Every fault is named. */
function checkedJson(kind: TableKind, json: unknown, path: string): Json | Json[] {
  const faults = collectFaults(path);
  const check = (record: unknown, where: string) => {
    try {
      for (const issue of readNoted(schemaOf(kind), record, where).notes) process.stderr.write(`${sentence(issue)}\n`);
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      faults.add(error.issues);
    }
  };
  const isMany = isList(kind) && Array.isArray(json);
  if (isMany) json.forEach((record, i) => check(record, `${path}: ${i}`));
  else check(json, path);
  faults.finishIfAny();
  return isList(kind) ? ([json].flat() as Json[]) : (json as Json);
}

function countOf(kind: TableKind, json: Json | Json[]): number {
  if (Array.isArray(json)) return json.length;
  if (kind === 'rates') return Object.keys(json).length;
  if (kind === 'waste') return 1;
  return ['sheets', 'parents', 'reels', 'madeToOrder'].reduce((sum, field) => sum + (json[field] === undefined ? 0 : [json[field]].flat().length), 0);
}
