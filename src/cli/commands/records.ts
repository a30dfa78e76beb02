import { inputError } from '../../base/issue.ts';
import { ratesSchema } from '../../press/rates.ts';
import { boardSchema, readRecord } from '../../press/records.ts';
import { sheetListSchema } from '../../press/sheet-candidates.ts';
import { readTable, TABLE_KINDS, writeTable, type TableKind } from '../../press/tables/record-tables.ts';
import { englishLanguage } from '../../render/messages/english-language.ts';
import { action, DONE, type RegisterCommand } from '../command.ts';
import { readJson, readText, refuseOverwrite, writeAll } from '../files.ts';
import { createOptionReader, oneOf } from '../option-reader.ts';

interface Options extends Record<string, unknown> {
  readonly kind?: string;
  readonly csv?: string;
  readonly json?: string;
}

type Json = Record<string, unknown>;

export const registerRecords: RegisterCommand = (program) => {
  program
    .command('records')
    .description('Checks a stock list, boards or rates, as JSON or as a table (CSV), and writes them as the other.')
    .argument('<file>', 'a table (.csv) or JSON')
    .requiredOption('--kind <kind>', 'what it holds: sheets, boards or rates')
    .option('--csv <file>', 'write a table; - is standard output')
    .option('--json <file>', 'write JSON; - is standard output')
    .addHelpText('after', '\nTables name their fields in the first line; comma, semicolon or tab. Tables may stand wherever these records are named: --sheets stock.csv, --rates rates.csv, --board "boards.csv#Folding boxboard 300".')
    .action(action(runRecords));
};

function runRecords(path: string, raw: Options): number {
  const reader = createOptionReader(raw);
  const kind = reader.read('--kind', oneOf(...TABLE_KINDS), 'sheets, boards or rates is wanted');
  reader.finish();
  refuseOverwrite([path], [raw.csv, raw.json]);
  const json = /\.csv$/i.test(path) ? readTable(kind!, readText(path), path) : checkedJson(kind!, readJson(path), path);
  writeAll([
    ...(raw.csv === undefined ? [] : [{ path: raw.csv, content: writeTable(kind!, json) }]),
    ...(raw.json === undefined ? [] : [{ path: raw.json, content: `${JSON.stringify(json, null, 2)}\n` }]),
  ]);
  if (raw.csv !== '-' && raw.json !== '-') process.stdout.write(`${englishLanguage.issues.sentence({ code: 'records-sound', severity: 'note', where: path, facts: { count: countOf(kind!, json), kind: kind! } })}\n`);
  return DONE;
}

/** Boards may be one or a list. */
function checkedJson(kind: TableKind, json: unknown, path: string): Json | Json[] {
  if (kind === 'boards') {
    const boards = [json].flat() as Json[];
    boards.forEach((board, i) => readRecord(boardSchema, board, Array.isArray(json) ? `${path}: ${i}` : path));
    return boards;
  }
  readRecord(kind === 'sheets' ? sheetListSchema : ratesSchema, json, path);
  if (typeof json !== 'object' || json === null) throw inputError('field-not-valid', { where: path, facts: { reason: 'an object is wanted' } });
  return json as Json;
}

function countOf(kind: TableKind, json: Json | Json[]): number {
  if (Array.isArray(json)) return json.length;
  if (kind === 'rates') return Object.keys(json).length;
  return ['sheets', 'parents', 'reels', 'madeToOrder'].reduce((sum, field) => sum + (json[field] === undefined ? 0 : [json[field]].flat().length), 0);
}
