import { inputError } from '../../base/issue.ts';
import { compareSheets, type ComparedSheet, type Comparison } from '../../pipeline/compare.ts';
import { readRecord } from '../../press/records.ts';
import { listedCandidates, sheetListSchema, squareMetres, type SheetCandidate } from '../../press/sheet-candidates.ts';
import { english } from '../../render/messages/english.ts';
import { action, ASKS, DONE, type RegisterCommand } from '../command.ts';
import { addDrawingOptions } from '../drawing-options.ts';
import { nameOf, readJson, refuseOverwrite, writeAll } from '../files.ts';
import { addEffortOptions, addLayingOptions, readEffortOptions, readLayingOptions, readMachines } from '../nest-options.ts';
import { createOptionReader, sizeValue } from '../option-reader.ts';
import { readChosenBlank } from '../read-chosen-blank.ts';
import { createStopSignal } from '../stop-signal.ts';
import { createWorkerPool, defaultWorkers } from '../worker-pool.ts';

interface RawOptions extends Record<string, unknown> {
  readonly sheets: string;
  readonly json?: string;
  readonly press?: string;
  readonly cutter?: string;
  readonly board?: string;
}

export const registerCompare: RegisterCommand = (program) => {
  const command = program
    .command('compare')
    .description('Lays one design out on every sheet that could be bought: which saves board, and how much.')
    .argument('<drawing>', 'dieline drawing (SVG)')
    .requiredOption('--sheets <list>', 'sizes such as 1020x720,1000x700, or a JSON list of sheets, parents, reels and sizes made to order; the first is the usual one');
  addLayingOptions(command);
  addDrawingOptions(command);
  addEffortOptions(command)
    .option('--json <file>', 'write the comparison as JSON; - is standard output')
    .addHelpText('after', '\nEvery sheet gets a quick look with regular patterns; the usual one and the best are then searched as `nest` does.')
    .action(action(runCompare));
};

async function runCompare(path: string, raw: RawOptions): Promise<number> {
  const isFile = sizeList(raw.sheets) === undefined;
  refuseOverwrite([path, raw.press, raw.cutter, raw.board, isFile ? raw.sheets : undefined].filter((input) => input !== undefined), [raw.json]);
  const reader = createOptionReader(raw);
  const laying = readLayingOptions(raw, reader);
  const effort = readEffortOptions(reader);
  reader.finish();
  const machines = readMachines(raw);
  const { dieline, blank } = await readChosenBlank(path, raw, laying.drawnFrom);
  const list = isFile ? readRecord(sheetListSchema, readJson(raw.sheets), raw.sheets) : undefined;
  const candidates = list ? listedCandidates(list, machines) : sizeList(raw.sheets)!;
  if (candidates.length === 0 && !list?.madeToOrder) throw inputError('no-sheets-listed', { where: raw.sheets });
  const order = list?.madeToOrder;
  const madeToOrder = order && { ...order, grain: order.grain === 'both' ? undefined : order.grain };

  const stop = createStopSignal(effort.seconds);
  const pool = createWorkerPool(effort.workers ?? defaultWorkers());
  try {
    const job = { ...laying, machines, id: nameOf(path), blank, drawing: dieline, candidates, madeToOrder };
    const comparison = await compareSheets(job, { effort: effort.effort, seed: effort.seed, runner: pool, stop: stop.reason });
    if (raw.json !== undefined) writeAll([{ path: raw.json, content: comparisonJson(comparison) }]);
    if (raw.json !== '-') process.stdout.write(comparisonText(comparison));
    return dieline.issues.some(({ severity }) => severity !== 'note') || stop.reason() === 'interrupted' ? ASKS : DONE;
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

function comparisonJson(comparison: Comparison): string {
  const { sheets, leastBoard } = comparison;
  const content = {
    format: 'blankwright-comparison',
    version: 1,
    candidates: sheets.map(({ candidate, ups, upperBound, boardM2PerThousand, searched, leastSheet }) => ({
      sheet: { ...candidate.sheet, grain: candidate.grain ?? null },
      ups,
      upperBound,
      boardM2PerThousand: rounded(boardM2PerThousand, 3),
      costPerThousand: [null],
      origin: candidate.origin,
      searched,
      leastSheet,
    })),
    winners: [{ fromQuantity: 0, candidate: leastBoard }],
    sentence: sentenceOf(comparison),
  };
  return `${JSON.stringify(content, null, 2)}\n`;
}

/** One true sentence for sales: the sheet that takes least board against the usual one. */
function sentenceOf({ sheets, leastBoard }: Comparison): string {
  const [usual, best] = [sheets[0], sheets[leastBoard]];
  const facts = { best: sizeText(best), usual: sizeText(usual), ups: best.ups, usualUps: usual.ups, percent: rounded((1 - best.boardM2PerThousand / usual.boardM2PerThousand) * 100, 1) };
  return english.sentence({ code: facts.percent > 0 ? 'compare-saves' : 'compare-usual-best', severity: 'note', facts });
}

function comparisonText(comparison: Comparison): string {
  const { sheets, leastBoard, skipped } = comparison;
  const rows = sheets.map((sheet, index) => [
    index === leastBoard ? '→' : ' ',
    sizeText(sheet),
    originText(sheet.candidate),
    String(sheet.ups),
    `≤ ${sheet.upperBound}`,
    sheet.boardM2PerThousand.toFixed(2),
    `${rounded(sheet.leastSheet.width, 1)} × ${rounded(sheet.leastSheet.height, 1)}`,
    sheet.searched === 'full' ? '' : 'quick look',
  ]);
  const table = [['', 'sheet, mm', 'bought as', 'ups', 'limit', 'm²/1000', 'least sheet that holds them', ''], ...rows];
  const widths = table[0].map((_, column) => Math.max(...table.map((row) => row[column].length)));
  const lines = table.map((row) => row.map((cell, column) => (column < 3 ? cell.padEnd(widths[column]) : cell.padStart(widths[column]))).join('  ').trimEnd());
  const missing = skipped.length === 0 ? [] : [english.sentence({ code: 'compare-skipped', severity: 'note', facts: { count: skipped.length } })];
  return `${[sentenceOf(comparison), '', ...lines, ...missing].join('\n')}\n`;
}

function sizeText({ candidate: { sheet, grain } }: ComparedSheet): string {
  const mark = (axis: 'x' | 'y') => (grain === axis ? ' (M)' : '');
  return `${rounded(sheet.width, 1)}${mark('x')} × ${rounded(sheet.height, 1)}${mark('y')}`;
}

function originText({ origin }: SheetCandidate): string {
  switch (origin.kind) {
    case 'parent':
      return `${origin.parent.width} × ${origin.parent.height} in ${origin.parts}`;
    case 'reel':
      return `reel ${origin.width}`;
    case 'made-to-order':
      return 'made to order';
    case 'stock':
      return 'stock';
  }
}

function rounded(value: number, decimals: number): number {
  return Math.round(value * 10 ** decimals) / 10 ** decimals;
}
