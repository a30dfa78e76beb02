import { InputError, inputError } from '../../base/issue.ts';
import { candidateOfDie, compareSheets, nearMissesOf } from '../../pipeline/compare.ts';
import { factsOfComparison, showComparison } from '../../pipeline/compare-showing.ts';
import { readNoted } from '../../press/known-fields.ts';
import { listedCandidates, listedRanges, sheetListSchema, squareMetres, type SheetCandidate, type SheetList } from '../../press/sheet-candidates.ts';
import { compareJson } from '../../render/compare-json.ts';
import { action, ASKS, DONE, sentence, type RegisterCommand } from '../command.ts';
import { addCostOptions, costTerms, readCostOptions, readStandingDie } from '../cost-options.ts';
import { addDrawingOptions } from '../drawing-options.ts';
import { nameOf, refuseOverwrite, writeAll, type Output } from '../files.ts';
import { LANGUAGE_TAGS, languageValue } from '../language-option.ts';
import { addNearMissOptions, nearMissTerms, readNearMissOptions } from '../near-miss-options.ts';
import { addEffortOptions, addLayingOptions, addStrippingOptions, readEffortOptions, readLayingOptions, readMachines, readStrippingOptions } from '../nest-options.ts';
import { createOptionReader, lengthValue, LENGTH_WANTED, sizeValue } from '../option-reader.ts';
import { printReport } from '../print-report.ts';
import { readChosenBlank } from '../read-chosen-blank.ts';
import { fileOfRecord, readRecordFile } from '../read-record-file.ts';
import { createStopSignal } from '../stop-signal.ts';
import { styleOfDrawing } from '../style-of-drawing.ts';
import { createWorkerPool, defaultWorkers } from '../worker-pool.ts';

interface RawOptions extends Record<string, unknown> {
  readonly sheets: string;
  readonly json?: string;
  readonly svg?: string;
  readonly html?: string;
  readonly press?: string;
  readonly cutter?: string;
  readonly board?: string;
  readonly rates?: string;
  readonly waste?: string;
  readonly quantities?: string;
  readonly die?: string;
  readonly language: string;
}

export const registerCompare: RegisterCommand = (program) => {
  const command = program
    .command('compare')
    .description('Lays one design out on every sheet that could be bought: which saves board, which saves money, from what quantity.')
    .argument('<drawing>', 'dieline drawing (SVG, DXF, PDF)')
    .requiredOption('--sheets <list>', 'sizes such as 1020x720,1000x700, or a list (JSON or CSV) of sheets, parents, reels and sizes made to order; the first is the usual one')
    .option('--tolerance <mm>', 'how much shorter than ordered a sheet may come (default: that of the list, or 0)')
    .option('--die <file>', 'a die that stands, with its layout (record or layout file): compared without the price of a die');
  addLayingOptions(command);
  addDrawingOptions(command);
  addCostOptions(command);
  addNearMissOptions(command);
  addStrippingOptions(addEffortOptions(command))
    .option('--json <file>', 'write the comparison as JSON; - is standard output')
    .option('--svg <file>', 'write the charts: cost over quantity, board by sheet')
    .option('--html <file>', 'write the whole comparison as one page, with pictures of the sheets')
    .option('--language <tag>', `language of report, page and charts: ${LANGUAGE_TAGS}`, 'en')
    .addHelpText('after', '\nEvery sheet gets a quick look with regular patterns; the usual one and the best are then searched as `nest` does.\nNear misses are those of the sheet that wins at the largest quantity.\nExit code 0: done; 1: done, but the drawing or a missing rate asks for a decision; 2: nothing was done and nothing written.')
    .action(action(runCompare));
};

function readList(path: string): SheetList {
  const { record, notes } = readNoted(sheetListSchema, readRecordFile(path, 'sheets'), path);
  for (const issue of notes) process.stderr.write(`${sentence(issue)}\n`);
  return record;
}

async function runCompare(path: string, raw: RawOptions): Promise<number> {
  const isFile = sizeList(raw.sheets) === undefined;
  const inputs = [path, raw.press, raw.cutter, raw.board, raw.rates, raw.waste, raw.die, isFile ? raw.sheets : undefined];
  refuseOverwrite(inputs.flatMap((input) => (input === undefined ? [] : [fileOfRecord(input)])), [raw.json, raw.svg, raw.html]);
  const language = languageValue(raw.language);
  const reader = createOptionReader(raw);
  const laying = readLayingOptions(raw, reader);
  const effort = readEffortOptions(reader);
  const stripping = readStrippingOptions(raw, reader);
  const cost = readCostOptions(raw, reader);
  const near = readNearMissOptions(raw, reader);
  const tolerance = reader.read('--tolerance', lengthValue, LENGTH_WANTED);
  reader.finish();
  const machines = readMachines(raw);
  const { terms, notes } = costTerms(cost, raw, machines);
  const standing = raw.die === undefined ? undefined : readStandingDie(raw.die);
  const { dieline, blank } = await readChosenBlank(path, raw, laying.drawnFrom);
  const list = isFile ? readList(raw.sheets) : undefined;
  const candidates = list ? listedCandidates(list, machines) : sizeList(raw.sheets)!;
  const ranges = list ? listedRanges(list, machines) : [];
  if (candidates.length === 0 && ranges.length === 0) throw inputError('no-sheets-listed', { where: raw.sheets });
  const standingDie = standing && { ...standing, candidate: candidateOfDie(standing.layout, terms.pricePerTonne) };

  const stop = createStopSignal(effort.seconds);
  const pool = createWorkerPool(effort.workers ?? defaultWorkers());
  try {
    const job = { ...laying, machines, stripping, id: nameOf(path), blank, drawing: dieline, candidates, ranges, terms, standingDie, toleranceMm: tolerance ?? list?.toleranceMm ?? 0 };
    const comparison = await compareSheets(job, { effort: effort.effort, seed: effort.seed, runner: pool, stop: stop.reason }).catch(sayOfList);
    const misses = near.wanted ? await nearMissesOf(job, comparison, nearMissTerms(near, raw.rates, machines), { seed: effort.seed, runner: pool, stop: stop.reason }, styleOfDrawing(path, blank)) : undefined;
    const facts = factsOfComparison(nameOf(path), job, comparison, notes);
    const showing = showComparison(facts, misses, language);
    const files: Output[] = [
      ...(raw.json === undefined ? [] : [{ path: raw.json, content: compareJson(facts, misses) }]),
      ...(raw.svg === undefined ? [] : [{ path: raw.svg, content: showing.svg() }]),
      ...(raw.html === undefined ? [] : [{ path: raw.html, content: showing.html() }]),
    ];
    writeAll(files);
    for (const issue of dieline.issues) if (issue.severity !== 'note') process.stderr.write(`${sentence(issue)}\n`);
    if (raw.json !== '-') printReport(showing.report);
    const isOpen = raw.rates !== undefined && comparison.missing.length > 0;
    return isOpen || dieline.issues.some(({ severity }) => severity !== 'note') || stop.reason() === 'interrupted' ? ASKS : DONE;
  } finally {
    stop.dispose();
    await pool.close();
  }
}

/** `1020x720,1000x700` as stock sheets of unknown grain; undefined when it is not a list of sizes. */
function sizeList(text: string): SheetCandidate[] | undefined {
  const sizes = text.split(',').map(sizeValue);
  if (sizes.includes(undefined)) return undefined;
  return sizes.map((sheet) => ({ sheet: sheet!, grain: undefined, origin: { kind: 'stock' }, boughtM2: squareMetres(sheet!) }));
}

/** One size of the list is laid out as by `nest`; here its option is called otherwise. */
function sayOfList(error: unknown): never {
  if (!(error instanceof InputError)) throw error;
  throw new InputError(error.issues.map((issue) => (issue.where === '--sheet' ? { ...issue, where: '--sheets' } : issue)));
}
