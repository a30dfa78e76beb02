import { extname } from 'node:path';
import { DEFAULT_READ_OPTIONS } from '../../dieline/options.ts';
import { gangOutlines } from '../../pipeline/gang/outlines.ts';
import { isOutlinesJob, readOutlinesJob, type OutlinesJob } from '../../pipeline/gang/outlines-job.ts';
import { gangVersions } from '../../pipeline/gang/versions.ts';
import { priceRun } from '../../pipeline/gang/price-run.ts';
import { runOfOutlines, runOfVersions } from '../../pipeline/gang/run-of-forms.ts';
import { readQuoteOfRun, readVersionsJob } from '../../pipeline/gang/versions-job.ts';
import type { GangFacts } from '../../render/gang-facts.ts';
import { gangJson } from '../../render/gang-json.ts';
import { formSvg, gangPictures, gangReport } from '../../render/gang-report.ts';
import { withRun } from '../../render/run-report.ts';
import { reportHtml } from '../../render/report-html.ts';
import { action, ASKS, DONE, type RegisterCommand } from '../command.ts';
import { nameOf, refuseOverwrite, writeAll, type Output } from '../files.ts';
import { openJob } from '../job-files.ts';
import { LANGUAGE_TAGS, languageValue } from '../language-option.ts';
import { addEffortOptions, readEffortOptions, type EffortOptions } from '../nest-options.ts';
import { createOptionReader } from '../option-reader.ts';
import { printReport } from '../print-report.ts';
import { readDrawing } from '../read-drawing.ts';
import { createStopSignal } from '../stop-signal.ts';
import { createWorkerPool, defaultWorkers } from '../worker-pool.ts';

interface RawOptions extends Record<string, unknown> {
  readonly json?: string;
  readonly html?: string;
  readonly svg?: string;
  readonly language: string;
}

export const registerGang: RegisterCommand = (program) => {
  const command = program
    .command('gang')
    .description('Several designs or versions and their quantities: how many of each on which forms, how often each form is pressed.')
    .argument('<job>', 'a job file (JSON): versions on equal stations, or drawings on a sheet; paths in it are relative to it');
  addEffortOptions(command)
    .option('--json <file>', 'write the plan as JSON; - is standard output')
    .option('--html <file>', 'write the report as a page')
    .option('--svg <file>', 'write a picture of each form: out.svg becomes out-1.svg, out-2.svg, …')
    .option('--language <tag>', `language of report and pictures: ${LANGUAGE_TAGS}`, 'en')
    .addHelpText('after', '\nEffort, seconds, seed and workers are for drawings; versions on equal stations are worked out exactly.\nExit code 0: done; 1: done, but a drawing is in doubt, a rate of the job’s quote is missing or the run was interrupted; 2: the job cannot be used, or nothing is possible.')
    .action(action(runGang));
};

async function runGang(path: string, raw: RawOptions): Promise<number> {
  const reader = createOptionReader(raw);
  const effort = readEffortOptions(reader);
  reader.finish();
  const language = languageValue(raw.language);
  const files = openJob(path);
  const drawing = (file: string) => readDrawing(files.resolve(file), DEFAULT_READ_OPTIONS);
  const outlines = isOutlinesJob(files.json) ? await readOutlinesJob(files.json, path, { json: files.load, drawing, nameOf }) : undefined;
  const versions = outlines ? undefined : readVersionsJob(files.json, path);
  const quote = versions ? readQuoteOfRun(files.json, path, files.load, versions) : outlines!.quote;
  refuseOverwrite(files.read, [raw.json, raw.html, raw.svg, ...(raw.svg === undefined ? [] : Array.from({ length: outlines?.forms ?? 0 }, (_, form) => numbered(raw.svg!, form)))]);
  const { facts, interrupted } = outlines ? await searched(outlines, effort) : { facts: gangVersions(versions!), interrupted: false };
  const money = quote && (await priceRun(outlines ? runOfOutlines(facts, outlines) : runOfVersions(facts, facts.oversLimits), quote));
  const report = withRun(gangReport(facts, language), money, language);
  const outputs: Output[] = [];
  if (raw.json !== undefined) outputs.push({ path: raw.json, content: gangJson(facts, money) });
  if (raw.html !== undefined) outputs.push({ path: raw.html, content: reportHtml(report, gangPictures(facts, language)) });
  if (raw.svg !== undefined) facts.forms.forEach((form, number) => outputs.push(...[formSvg(form, language)].flatMap((content) => (content === undefined ? [] : [{ path: numbered(raw.svg!, number), content }]))));
  writeAll(outputs);
  if (raw.json !== '-') printReport(report);
  for (const file of outlines?.doubtful ?? []) process.stderr.write(`${file}: the drawing was repaired or is in doubt; blankwright read says how.\n`);
  return interrupted || (outlines?.doubtful.length ?? 0) > 0 || (money?.missing.length ?? 0) > 0 ? ASKS : DONE;
}

async function searched(job: OutlinesJob, { effort, seed, seconds, workers }: EffortOptions): Promise<{ facts: GangFacts; interrupted: boolean }> {
  const stop = createStopSignal(seconds);
  const pool = createWorkerPool(workers ?? defaultWorkers());
  try {
    return { facts: await gangOutlines(job, { effort, seed, runner: pool, stop: stop.reason }), interrupted: stop.reason() === 'interrupted' };
  } finally {
    stop.dispose();
    await pool.close();
  }
}

/** `out.svg` becomes `out-1.svg` for the first form. */
function numbered(path: string, form: number): string {
  const ending = extname(path);
  return `${path.slice(0, path.length - ending.length)}-${form + 1}${ending}`;
}
