import type { Command } from 'commander';
import { inputError } from '../../base/issue.ts';
import { textTable } from '../../render/text-table.ts';
import { english } from '../../render/messages/english.ts';
import { backUp } from '../../shop/library/backup.ts';
import { exportedFiles } from '../../shop/library/export.ts';
import { find, type Found } from '../../shop/library/find.ts';
import { KINDS, kindOf, type Kind } from '../../shop/library/kinds.ts';
import { entriesOf, historyOf, removeEntry, type Entry } from '../../shop/library/records.ts';
import { shapeOf } from '../../shop/library/shapes.ts';
import { offersOf } from '../../shop/library/sources.ts';
import { takeIn, type TakenIn } from '../../shop/library/take-in.ts';
import { action, ASKS, DONE, REFUSED, sentence, type RegisterCommand } from '../command.ts';
import { addDrawingOptions } from '../drawing-options.ts';
import { readInput, readJson, readText, refuseTakenFolder, writeAll, writeFolder } from '../files.ts';
import { addLibraryOption, withLibrary } from '../library-option.ts';
import { toldOf } from '../serving/library-facts.ts';
import { createOptionReader, lengthValue, LENGTH_WANTED } from '../option-reader.ts';
import { readChosenBlank } from '../read-chosen-blank.ts';

interface Options {
  readonly library?: string;
  readonly json?: string;
  readonly as?: string;
}

export const registerLibrary: RegisterCommand = (program) => {
  const library = program.command('library').description('The shop’s memory in one file: presses, die-cutters, boards, sheets, dies, cartons, customers, jobs, layouts and quotes, with their history.');
  const verb = (usage: string, description: string): Command => addLibraryOption(library.command(usage).description(description)).exitOverride();
  verb('add <paths...>', 'Takes in folders, drawings, records (JSON) and tables (CSV); what it cannot use it lists with reasons.')
    .option('--as <kind>', 'what the files hold, where neither their folder nor their field "kind" says it')
    .option('--json <file>', 'write what was taken in and refused as JSON; - is standard output')
    .addHelpText('after', '\nFields that a record does not name stay as they are. Exit code 0: all taken in; 1: some refused or in doubt; 2: none could be used.')
    .action(action(add));
  verb('list [kind]', 'Lists what there is.').option('--json <file>', 'write the list as JSON; - is standard output').action(action(list));
  addDrawingOptions(
    verb('find [words...]', 'Answers questions: do we have a die for 62 x 31 x 118? Which dies fit this drawing within 1 mm?')
      .option('--like <drawing>', 'outlines like the one of this drawing, turned by quarters and mirrored as well')
      .option('--within <mm>', 'tolerance of sizes and shapes (default 1)')
      .option('--kind <kind>', 'only of this kind, such as die')
      .option('--json <file>', 'write what was found as JSON; - is standard output'),
  ).action(action(search));
  verb('show <kind> <id>', 'Shows a record and its history.').option('--json <file>', 'write all revisions as JSON; - is standard output').action(action(show));
  verb('remove <kind> <id>', 'Takes a record out of the lists; its history stays.').action(action(remove));
  verb('backup <file>', 'Copies the library as it is now, while others go on working.').action(action(backup));
  verb('export <folder>', 'Writes everything as files that library add takes in again.').action(action(exportAll));
};

function kindGiven(word: string, where: string): Kind {
  const kind = kindOf(word);
  if (!kind) throw inputError('library-kind-not-valid', { where: `${where} ${word}`, facts: { known: Object.keys(KINDS).join(', ') } });
  return kind;
}

function say(code: string, where: string, facts: Readonly<Record<string, string | number>> = {}): void {
  process.stdout.write(`${english.sentence({ code, severity: 'note', where, facts })}\n`);
}

async function add(paths: readonly string[], { library: path, as, json }: Options): Promise<number> {
  const kind = as === undefined ? undefined : kindGiven(as, '--as');
  const offers = offersOf(paths, kind, { bytes: readInput, text: readText, json: readJson });
  return withLibrary(path, { create: true }, async (library) => {
    const { counts, refused, doubtful } = await takeIn(library, offers);
    const listed = (told: typeof refused) => told.map(({ where, issues }) => ({ where, reasons: issues.map((issue) => english.sentence(issue)) }));
    if (json !== undefined) writeAll([{ path: json, content: jsonText({ format: 'blankwright-taken-in', version: 1, ...counts, refused: listed(refused), doubtful: listed(doubtful) }) }]);
    tellReasons(refused);
    tellDoubts(doubtful);
    if (json !== '-') say('library-kept', library.path, { ...counts, refused: refused.length });
    const taken = counts.new + counts.changed + counts.unchanged;
    return taken === 0 && refused.length > 0 ? REFUSED : refused.length + doubtful.length > 0 ? ASKS : DONE;
  });
}

type Told = TakenIn['refused'];

function tellReasons(told: Told): void {
  for (const { where, issues } of told) process.stderr.write(`${where}\n${issues.map((issue) => `  ${sentence(issue)}\n`).join('')}`);
}

/** More than a screen of drawings in doubt is looked at in the JSON. */
const [DOUBTS_TOLD, REASONS_TOLD] = [20, 5];

function tellDoubts(doubtful: Told): void {
  if (doubtful.length === 0) return;
  const note = (code: string, count: number) => process.stderr.write(`${english.sentence({ code, severity: 'note', facts: { count } })}\n`);
  note('library-in-doubt', doubtful.length);
  tellReasons(doubtful.slice(0, DOUBTS_TOLD).map(({ where, issues }) => ({ where, issues: issues.slice(0, REASONS_TOLD) })));
  if (doubtful.length > DOUBTS_TOLD) note('library-more-in-doubt', doubtful.length - DOUBTS_TOLD);
}

function list(word: string | undefined, { library: path, json }: Options): Promise<number> {
  const kind = word === undefined ? undefined : kindGiven(word, 'library list');
  return withLibrary(path, { create: false }, (library) => showEntries(entriesOf(library, kind), json));
}

function showEntries(entries: readonly Entry[], json: string | undefined): number {
  if (json !== undefined) writeAll([{ path: json, content: jsonText({ format: 'blankwright-library-list', version: 1, entries }) }]);
  if (json !== '-') print(entries.map(line));
  return DONE;
}

function print(rows: readonly (readonly string[])[]): void {
  process.stdout.write(rows.length === 0 ? `${english.sentence({ code: 'library-empty', severity: 'note' })}\n` : `${textTable(rows).join('\n')}\n`);
}

function line({ kind, id, content }: Entry): string[] {
  const told = toldOf(content).map(([field, value]) => (field === 'yearly' ? `${value} a year` : field === 'ups' ? `${value} up` : String(value)));
  return [kind, id, told.join(' · ')];
}

interface SearchOptions extends Options, Readonly<Record<string, unknown>> {
  readonly like?: string;
  readonly kind?: string;
}

async function search(words: readonly string[], raw: SearchOptions): Promise<number> {
  const reader = createOptionReader(raw);
  const within = reader.read('--within', lengthValue, LENGTH_WANTED) ?? 1;
  reader.finish();
  const kind = raw.kind === undefined ? undefined : kindGiven(raw.kind, '--kind');
  const like = raw.like === undefined ? undefined : shapeOf((await readChosenBlank(raw.like, raw, 'printed')).blank);
  return withLibrary(raw.library, { create: false }, async (library) => {
    const found = await find(library, { text: words.join(' '), like, kind, within });
    if (raw.json !== undefined) writeAll([{ path: raw.json, content: jsonText({ format: 'blankwright-library-found', version: 1, found: found.map(({ entry, by }) => ({ ...entry, by })) }) }]);
    if (raw.json !== '-') print(found.map(({ entry, by }) => [...line(entry), why(by)]));
    return found.length > 0 ? DONE : ASKS;
  });
}

function why(by: Found['by']): string {
  if (by.how === 'words') return '';
  const facts = { off: by.offMm, ...(by.how === 'shape' && { turned: by.rotation === 0 ? '' : `, turned by ${by.rotation}°`, mirrored: by.mirrored ? ', mirrored' : '' }) };
  return english.sentence({ code: `found-by-${by.how}`, severity: 'note', facts });
}

function show(word: string, id: string, { library: path, json }: Options): Promise<number> {
  const kind = kindGiven(word, 'library show');
  return withLibrary(path, { create: false }, (library) => {
    const revisions = historyOf(library, kind, id);
    if (revisions.length === 0) throw inputError('library-no-such', { where: `${kind} ${id}`, facts: { kind } });
    if (json !== undefined) writeAll([{ path: json, content: jsonText({ format: 'blankwright-library-history', version: 1, revisions }) }]);
    if (json === '-') return DONE;
    const dates = revisions.map(({ revision, at, removed }) => [`revision ${revision}`, at, removed ? 'removed' : '']);
    process.stdout.write(`${kind} ${id}\n${JSON.stringify(revisions[0].content, null, 2)}\n${textTable(dates).join('\n')}\n`);
    return DONE;
  });
}

function remove(word: string, id: string, { library: path }: Options): Promise<number> {
  const kind = kindGiven(word, 'library remove');
  return withLibrary(path, { create: false }, (library) => {
    if (!removeEntry(library, kind, id)) throw inputError('library-no-such', { where: `${kind} ${id}`, facts: { kind } });
    say('library-removed', library.path, { kind, id });
    return DONE;
  });
}

function backup(file: string, { library: path }: Options): Promise<number> {
  return withLibrary(path, { create: false }, (library) => {
    backUp(library, file);
    say('library-backed-up', file);
    return DONE;
  });
}

function exportAll(folder: string, { library: path }: Options): Promise<number> {
  refuseTakenFolder(folder);
  return withLibrary(path, { create: false }, (library) => {
    say('library-exported', folder, { count: writeFolder(folder, exportedFiles(library)) });
    return DONE;
  });
}

function jsonText(content: unknown): string {
  return `${JSON.stringify(content, null, 2)}\n`;
}
