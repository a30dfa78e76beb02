import { extname } from 'node:path';
import type { Dieline } from '../../dieline/dieline.ts';
import { readLayoutFile, writeLayoutFile, type LayoutFile } from '../../layout/layout-file.ts';
import { checkStraightEdges, cutByGuillotine } from '../../pipeline/guillotine.ts';
import { nearMisses } from '../../pipeline/near-misses.ts';
import { leastSheet, type LeastSheet } from '../../pipeline/least-sheet.ts';
import { nest, prepareNest, type NestOutcome, type SearchSettings } from '../../pipeline/nest.ts';
import { WORK_STYLES } from '../../layout/back-up.ts';
import { showNest, type Showing } from '../../pipeline/nest-showing.ts';
import { guillotineSchema, INVENTED_GUILLOTINE } from '../../press/guillotine.ts';
import { readRecord } from '../../press/records.ts';
import type { NearMissFacts } from '../../render/near-miss-facts.ts';
import { nearMissJson } from '../../render/near-miss-section.ts';
import { leastSheetJson, type Improvement, type LimitStep } from '../../render/nest-facts.ts';
import { action, ASKS, DONE, sentence, type RegisterCommand } from '../command.ts';
import { addDrawingOptions } from '../drawing-options.ts';
import { nameOf, readJson, refuseOverwrite, writeAll, type Output } from '../files.ts';
import { LANGUAGE_TAGS, languageValue } from '../language-option.ts';
import { addLeastSheetOptions, readLeastSheetOptions } from '../least-sheet-options.ts';
import { addNearMissOptions, nearMissTerms, readNearMissOptions } from '../near-miss-options.ts';
import { addEffortOptions, addLayingOptions, addStrippingOptions, readNestOptions } from '../nest-options.ts';
import { createOptionReader } from '../option-reader.ts';
import { printReport } from '../print-report.ts';
import { createProgress } from '../progress.ts';
import { readChosenBlank } from '../read-chosen-blank.ts';
import { fileOfRecord, readRecordFile } from '../read-record-file.ts';
import { createStopSignal } from '../stop-signal.ts';
import { styleOfDrawing } from '../style-of-drawing.ts';
import { createWorkerPool, defaultWorkers } from '../worker-pool.ts';

interface Outputs {
  readonly json?: string;
  readonly svg?: string;
  readonly pdf?: string;
  readonly html?: string;
  readonly history?: string;
  readonly explainLimit?: string;
}

export const registerNest: RegisterCommand = (program) => {
  const command = program
    .command('nest')
    .description('Lays one design out on one sheet: the best layout, how good it is, its pictures.')
    .argument('<drawing>', 'dieline drawing (SVG, DXF, PDF)')
    .requiredOption('--sheet <size>', 'sheet size in mm, the first number along the gripper edge: 1020x720, 28x40in');
  addLayingOptions(command);
  addDrawingOptions(command);
  addNearMissOptions(command)
    .option('--rates <file>', 'the shop’s rates (JSON) or demo, for the worth of near misses')
    .option('--currency <code>', 'currency of rates and prices (default EUR)');
  addLeastSheetOptions(command);
  addStrippingOptions(addEffortOptions(command))
    .option('--layouts <n>', 'offer so many truly different layouts', '1')
    .option('--locked <layout>', 'blanks of this layout file stay where they are; the rest is filled')
    .option('--grid <rows x columns>', 'force a regular arrangement: 3x5')
    .option('--cut <how>', 'die: die-cut; guillotine: straight cuts from edge to edge, with a cut list (default die)')
    .option('--guillotine <file>', 'guillotine record (JSON): width, height of a lift, seconds of a cut; else an invented one, named so')
    .option('--back <style>', `how the second side is printed: ${WORK_STYLES.join(', ')}; with the last two the tail is gripped too`)
    .option('--json <file>', 'write the layout file; - is standard output')
    .option('--svg <file>', 'write the picture of the sheet as SVG')
    .option('--pdf <file>', 'write the picture of the sheet as PDF')
    .option('--html <file>', 'write the whole report as one page')
    .option('--history <file>', 'write how the layout was found as JSON, with a chart beside it (.svg)')
    .option('--explain-limit <file>', 'write how the limit is known, so that it can be recomputed')
    .option('--library <file>', 'ask this library first, and keep the answer in it: the same question again is answered at once')
    .option('--language <tag>', `language of report and picture: ${LANGUAGE_TAGS}`, 'en')
    .option('--progress', 'show how the search goes on stderr')
    .addHelpText('after', `
With --cut guillotine --svg also writes the cuts beside the picture: sheet-cuts.svg.
With --layouts the further layouts are written beside the first: sheet.json, sheet-2.json, …
Exit code 0: done; 1: done, but the drawing or an interruption asks for a decision; 2: nothing was done and nothing written.`)
    .action(action(runNest));
};

type RawOptions = Record<string, unknown> & Outputs & { readonly locked?: string; readonly press?: string; readonly cutter?: string; readonly board?: string; readonly guillotine?: string; readonly rates?: string; readonly library?: string; readonly progress?: boolean; readonly language: string };

async function runNest(path: string, raw: RawOptions): Promise<number> {
  const outputs = [raw.json, raw.svg, raw.pdf, raw.html, raw.history, raw.explainLimit];
  refuseOverwrite([path, raw.locked, raw.press, raw.cutter, raw.board, raw.guillotine, raw.rates].flatMap((input) => (input === undefined ? [] : [fileOfRecord(input)])), outputs);
  const language = languageValue(raw.language);
  const options = readNestOptions(raw);
  const reader = createOptionReader(raw);
  const near = readNearMissOptions(raw, reader);
  const besideNear = raw.locked !== undefined ? '--locked' : raw['grid'] !== undefined ? '--grid' : options.cut === 'die' ? undefined : '--cut guillotine';
  if (near.wanted && besideNear !== undefined) reader.fault({ code: 'options-contradict', facts: { first: '--near-misses', second: besideNear, reason: 'near misses are searched for a die on the whole sheet' } });
  const wish = readLeastSheetOptions(raw, reader);
  reader.finish();
  const { dieline, blank } = await readChosenBlank(path, raw, options.drawnFrom);
  const locked = raw.locked === undefined ? undefined : readLayoutFile(readJson(raw.locked), raw.locked);

  const asked = { ...options, id: nameOf(path), blank, drawing: dieline, locked };
  const machine = options.cut === 'die' ? undefined : raw.guillotine === undefined ? INVENTED_GUILLOTINE : readRecord(guillotineSchema, readRecordFile(raw.guillotine, 'guillotines'), raw.guillotine);
  if (machine) checkStraightEdges(prepareNest(asked).problem.parts[0]!);

  const stop = createStopSignal(options.seconds);
  const pool = createWorkerPool(options.workers ?? defaultWorkers());
  const progress = createProgress(raw.progress === true, stop.elapsed);
  const history: Improvement[] = [];
  const limits: LimitStep[] = [];
  // Limits found under a rule for stripping are none of the sheet's.
  let startedAnew = false;
  try {
    const search: SearchSettings = {
      effort: options.effort,
      seed: options.seed,
      runner: pool,
      stop: stop.reason,
      onImprovement: (event) => {
        progress.show(event);
        const moment = { work: event.work, seconds: stop.elapsed() / 1000 };
        if (event.kind === 'layout') history.push({ ...moment, ups: event.ups, source: event.source });
        else if (!startedAnew) limits.push({ ...moment, ups: event.limit.ups });
      },
      onStartAnew: () => {
        startedAnew = true;
        history.splice(0);
      },
    };
    const least = wish && (await leastSheet(asked, wish, search));
    const job = least?.job ?? asked;
    const dieCut = raw.library === undefined ? await nest(job, search) : await (await import('../nest-from-library.ts')).nestFromLibrary(raw.library, job, search);
    progress.end();
    const { outcome, cutting } = machine ? cutByGuillotine(dieCut, { machine, caliper: options.machines.board?.caliper, seed: options.seed }) : { outcome: dieCut, cutting: undefined };
    const found = cutting ? [] : history;
    const seconds = stop.elapsed() / 1000;
    const standing = { job, problem: outcome.problem, placements: outcome.layouts[0]!.ranked.placements, style: near.wanted ? styleOfDrawing(path, blank) : undefined };
    const misses = near.wanted ? await nearMisses(standing, nearMissTerms(near, raw.rates, options.machines), { seed: options.seed, runner: pool, stop: stop.reason }) : undefined;
    const occasion = { name: nameOf(path), seed: options.seed, seconds, history: found, limits, cutting, leastSheet: least };
    const showings = outcome.layouts.map((layout, index) => showNest(outcome, layout, { ...occasion, nearMisses: index === 0 ? misses : undefined }, language));
    writeAll(await outputFiles(raw, outcome, showings, history, misses, least));
    if (raw.json !== '-') sayAll(dieline, outcome, showings);
    const asks = dieline.issues.some(({ severity }) => severity !== 'note') || outcome.solution.stopped === 'interrupted';
    return asks ? ASKS : DONE;
  } finally {
    stop.dispose();
    await pool.close();
  }
}

async function outputFiles(raw: Outputs, outcome: NestOutcome, showings: readonly Showing[], history: readonly Improvement[], misses: NearMissFacts | undefined, least: LeastSheet | undefined): Promise<Output[]> {
  const files: Output[] = [];
  for (const [index, showing] of showings.entries()) {
    const named = (path: string) => (index === 0 ? path : numbered(path, index + 1));
    const layout = outcome.layouts[index]!;
    if (raw.json === '-' && index > 0) continue;
    if (raw.json !== undefined) files.push({ path: named(raw.json), content: writeLayoutFile(index === 0 ? withResult(layout.file, misses, least) : layout.file) });
    if (raw.svg !== undefined) files.push({ path: named(raw.svg), content: showing.svg });
    if (raw.svg !== undefined && showing.cuts !== undefined) files.push({ path: `${raw.svg.slice(0, raw.svg.length - extname(raw.svg).length)}-cuts.svg`, content: showing.cuts });
    if (raw.pdf !== undefined) {
      // The library takes longer to load than a quick search takes to think.
      const { sceneToPdf } = await import('../../render/pdf.ts');
      files.push({ path: named(raw.pdf), content: await sceneToPdf(showing.scene) });
    }
    if (raw.html !== undefined) files.push({ path: named(raw.html), content: showing.html() });
  }
  if (raw.history !== undefined) {
    files.push({ path: raw.history, content: `${JSON.stringify({ format: 'blankwright-history', version: 1, improvements: history }, null, 2)}\n` });
    const chart = showings[0]?.chart;
    if (chart !== undefined) files.push({ path: withEnding(raw.history, '.svg'), content: chart });
  }
  if (raw.explainLimit !== undefined) {
    const { limit } = outcome;
    files.push({ path: raw.explainLimit, content: `${JSON.stringify({ format: 'blankwright-limit', version: 1, ...limit }, null, 2)}\n` });
  }
  return files;
}

function withResult(file: LayoutFile, misses: NearMissFacts | undefined, least: LeastSheet | undefined): LayoutFile {
  if (!misses && !least) return file;
  return { ...file, result: { ...file.result, ...(misses && { nearMisses: nearMissJson(misses) }), ...(least && { leastSheet: leastSheetJson(least) }) } };
}

/** `sheet.json` → `sheet-2.json` */
function numbered(path: string, number: number): string {
  const ending = extname(path);
  return `${path.slice(0, path.length - ending.length)}-${number}${ending}`;
}

function withEnding(path: string, ending: string): string {
  return path.slice(0, path.length - extname(path).length) + ending;
}

/** What the drawing asks about on stderr, the reports on stdout. */
function sayAll(dieline: Dieline, outcome: NestOutcome, showings: readonly Showing[]): void {
  for (const issue of dieline.issues) if (issue.severity !== 'note') process.stderr.write(`${sentence(issue)}\n`);
  const [first, ...others] = showings;
  printReport(first!.report);
  others.forEach(({ report }, index) => process.stdout.write(`\n${index + 2}. ${report.answer}\n   ${String(outcome.layouts[index + 1]!.file.result?.['source'])}\n`));
}
