import { dirname } from 'node:path';
import { batchJson } from '../../render/batch-json.ts';
import { batchReport, bySaving } from '../../render/batch-report.ts';
import { english } from '../../render/messages/english.ts';
import type { Language } from '../../render/messages/language.ts';
import { reportHtml } from '../../render/report-html.ts';
import { engineVersion } from '../../shop/answers/engine.ts';
import { readBatchJob } from '../../shop/batch/batch-job.ts';
import { cartonsOf } from '../../shop/batch/cartons.ts';
import { checkedExecutor } from '../../shop/batch/checked-executor.ts';
import type { Executor } from '../../shop/batch/executor.ts';
import { batchPictures } from '../../shop/batch/pictures.ts';
import { runBatch } from '../../shop/batch/run-batch.ts';
import { summaryOf } from '../../shop/batch/summary.ts';
import { startThreads, threadExecutor } from '../../shop/batch/threads.ts';
import type { Library } from '../../shop/library/open-library.ts';
import { keepEntry } from '../../shop/library/records.ts';
import { createBatchProgress } from '../batch-progress.ts';
import { action, ASKS, DONE, REFUSED, type RegisterCommand } from '../command.ts';
import { readInput, readJson, readText, refuseOverwrite, writeAll, type Output } from '../files.ts';
import { openJob } from '../job-files.ts';
import { LANGUAGE_TAGS, languageValue } from '../language-option.ts';
import { addLibraryOption, withLibrary } from '../library-option.ts';
import { createOptionReader, wholeNumber } from '../option-reader.ts';
import { printReport } from '../print-report.ts';
import { addQueueOptions, openQueue, queueAddress, type QueueOptions } from '../queue-option.ts';

interface Options extends QueueOptions, Readonly<Record<string, unknown>> {
  readonly library?: string;
  readonly json?: string;
  readonly html?: string;
  readonly progress?: boolean;
  readonly language: string;
}

/** Rows of the table in a terminal, and pictures on the page. */
const ROWS_PRINTED = 40;
const PICTURES = 24;

export const registerBatch: RegisterCommand = (program) => {
  const command = program
    .command('batch')
    .description('Many cartons on many sheets: who saves what in a year. Answers are kept in the library; run again, it goes on where it was.')
    .argument('<job>', 'a job file (JSON); paths in it are relative to it');
  addQueueOptions(addLibraryOption(command))
    .option('--workers <n>', 'threads on this machine (default: one per core)')
    .option('--json <file>', 'write the results as JSON; - is standard output')
    .option('--html <file>', 'write the table and pictures of those that save most as one page')
    .option('--language <tag>', `language of report and pictures: ${LANGUAGE_TAGS}`, 'en')
    .option('--progress', 'show how far it is on stderr, also where that is no terminal')
    .addHelpText('after', '\nExit code 0: done; 1: done, but cartons were refused, drawings are in doubt or tasks set aside, or it was interrupted; 2: nothing could be laid out.')
    .action(action(runBatchCommand));
};

async function runBatchCommand(path: string, raw: Options): Promise<number> {
  const reader = createOptionReader(raw);
  const workers = reader.read('--workers', wholeNumber(1, 256), 'a whole number from 1 to 256 is wanted');
  reader.finish();
  const language = languageValue(raw.language);
  const files = openJob(path);
  const job = readBatchJob(files.json, path, files.load);
  refuseOverwrite(files.read, [raw.json, raw.html]);
  return withLibrary(raw.library, { create: true }, async (library) => {
    const offers = cartonsOf(job.cartons, { folder: dirname(path), library, where: path, read: { bytes: readInput, text: readText, json: readJson } });
    const executor = await executorFor(raw, workers);
    const { results, complete } = await interruptible(executor, raw.progress === true, (signal, onProgress) => runBatch(job, offers, { library, executor, signal, onProgress }));
    const facts = summaryOf(job, results, complete);
    if (complete) keepEntry(library, 'batch', job.name, JSON.parse(batchJson(facts, engineVersion())));
    writeAll(outputs(raw, facts, library, language));
    if (raw.json !== '-') printReport(batchReport(facts, { mostCartons: ROWS_PRINTED, pictured: [] }, language));
    if (facts.cartons.length === 0) return REFUSED;
    return complete && facts.refused.length + facts.doubtful.length + facts.setAside.length === 0 ? DONE : ASKS;
  });
}

/** Threads of this machine, or a queue where one is named. */
async function executorFor(raw: Options, workers: number | undefined): Promise<Executor> {
  const address = queueAddress(raw);
  if (address === undefined) return threadExecutor(startThreads(workers));
  const { connection, keepsTasks } = await openQueue(address, raw);
  const { queueExecutor } = await import('../../shop/queue/queue-executor.ts');
  const note = (code: string, reason = '') => process.stderr.write(`${english.sentence({ code, severity: 'note', where: connection.name, facts: { engine: engineVersion(), reason } })}\n`);
  if (keepsTasks === false) note('queue-not-kept');
  const said = new Set<string>();
  const queue = queueExecutor(connection, (news) => {
    if (news === 'no-machine' && said.has(news)) return;
    said.add(news);
    note(`queue-${news}`);
  });
  return checkedExecutor(queue, startThreads(workers), (reason) => note('queue-answer-refused', reason));
}

type Progress = ReturnType<typeof createBatchProgress>['show'];

/** Ctrl-C or a polite kill ends the run with what there is; a second one ends the process as usual. */
async function interruptible<Result>(executor: Executor, wanted: boolean, work: (signal: AbortSignal, onProgress: Progress) => Promise<Result>): Promise<{ results: Result; complete: boolean }> {
  const abort = new AbortController();
  const interrupt = () => abort.abort();
  process.once('SIGINT', interrupt);
  process.once('SIGTERM', interrupt);
  const progress = createBatchProgress(wanted);
  try {
    const results = await work(abort.signal, progress.show);
    return { results, complete: !abort.signal.aborted };
  } finally {
    progress.end();
    process.off('SIGINT', interrupt);
    process.off('SIGTERM', interrupt);
    await executor.close();
  }
}

function outputs({ json, html }: Options, facts: ReturnType<typeof summaryOf>, library: Library, language: Language): Output[] {
  const pictured = html === undefined ? [] : bySaving(facts).slice(0, PICTURES).filter((place) => facts.cartons[place]!.best !== undefined);
  return [
    ...(json === undefined ? [] : [{ path: json, content: batchJson(facts, engineVersion()) }]),
    ...(html === undefined ? [] : [{ path: html, content: reportHtml(batchReport(facts, { mostCartons: facts.cartons.length + facts.refused.length + facts.changed.length, pictured }, language), batchPictures(library, facts, pictured, language)) }]),
  ];
}
