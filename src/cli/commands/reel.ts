import { dirname, resolve } from 'node:path';
import { z } from 'zod';
import { inFields, type Issue } from '../../base/issue.ts';
import { chooseBlank } from '../../dieline/choose-blank.ts';
import { DEFAULT_READ_OPTIONS } from '../../dieline/options.ts';
import { degreesOf, turnOfDegrees, type Turn } from '../../geometry/turn.ts';
import { writeLayoutFile } from '../../layout/layout-file.ts';
import { layReel, type ReelJob, type ReelOutcome } from '../../pipeline/reel.ts';
import { readNoted } from '../../press/known-fields.ts';
import { createFormat } from '../../render/format.ts';
import type { Language } from '../../render/messages/language.ts';
import type { ReelFacts } from '../../render/reel-facts.ts';
import { reelReport, reelTitleFigures } from '../../render/reel-report.ts';
import { reportHtml } from '../../render/report-html.ts';
import type { Report } from '../../render/report.ts';
import { sheetScene } from '../../render/sheet-scene.ts';
import { sceneToSvg } from '../../render/svg.ts';
import { viewOfLayout } from '../../render/view-of-layout.ts';
import { action, ASKS, DONE, sentence, type RegisterCommand } from '../command.ts';
import { nameOf, readJson, refuseOverwrite, writeAll, type Output } from '../files.ts';
import { LANGUAGE_TAGS, languageValue } from '../language-option.ts';
import { addEffortOptions, readEffortOptions } from '../nest-options.ts';
import { createOptionReader } from '../option-reader.ts';
import { readDrawing } from '../read-drawing.ts';
import { printReport } from '../print-report.ts';
import { createStopSignal } from '../stop-signal.ts';
import { createWorkerPool, defaultWorkers } from '../worker-pool.ts';

interface RawOptions extends Record<string, unknown> {
  readonly json?: string;
  readonly svg?: string;
  readonly pdf?: string;
  readonly html?: string;
  readonly language: string;
}

export const registerReel: RegisterCommand = (program) => {
  const command = program
    .command('reel')
    .description('Lays a given set of blanks on a reel of given width: the shortest cut-off.')
    .argument('<job>', 'job file (JSON): {"width": 720, "gap": 4, "designs": [{"file": "a.svg", "ups": 3, "rotations": [0, 180]}]}');
  addEffortOptions(command)
    .option('--json <file>', 'write the layout file; - is standard output')
    .option('--svg <file>', 'write the picture as SVG')
    .option('--pdf <file>', 'write the picture as PDF')
    .option('--html <file>', 'write the whole report as one page')
    .option('--language <tag>', `language of report and picture: ${LANGUAGE_TAGS}`, 'en')
    .addHelpText('after', '\nLengths are mm; files are looked for beside the job. The cut-off runs along the machine direction, the first number of the sheet.')
    .action(action(runReel));
};

/** A reel, its cut-off and every blank stay within what geometry holds, mm. */
const MAX_MM = 16_000;
const MOST_UPS = 2000;

const jobSchema = z.looseObject({
  width: z.number().positive().max(MAX_MM),
  gap: z.number().nonnegative().max(MAX_MM),
  bleed: z.number().nonnegative().max(MAX_MM).default(0),
  designs: z
    .array(
      z.looseObject({
        file: z.string(),
        ups: z.int().positive().max(MOST_UPS),
        rotations: z.array(z.number().refine((degrees) => turnOfDegrees(degrees) !== undefined, 'quarter turns are wanted: 0, 90, 180, 270')).min(1).default([0, 180]),
        blank: z.int().positive().optional(),
      }),
    )
    .min(1)
    .max(200),
});

async function runReel(path: string, raw: RawOptions): Promise<number> {
  const reader = createOptionReader(raw);
  const effort = readEffortOptions(reader);
  reader.finish();
  const language = languageValue(raw.language);
  const { job, files, doubtful, notes } = await readReelJob(path);
  for (const issue of notes) process.stderr.write(`${sentence(issue)}\n`);
  refuseOverwrite([path, ...files], [raw.json, raw.svg, raw.pdf, raw.html]);
  const stop = createStopSignal(effort.seconds);
  const pool = createWorkerPool(effort.workers ?? defaultWorkers());
  try {
    const outcome = await layReel(job, { effort: effort.effort, seed: effort.seed, runner: pool, stop: stop.reason });
    const facts = factsOf(nameOf(path), outcome, job, { seed: effort.seed, seconds: stop.elapsed() / 1000 });
    const report = reelReport(facts, language);
    writeAll(await outputsOf(raw, outcome, facts, report, language));
    if (raw.json !== '-') printReport(report);
    return doubtful || outcome.solution.stopped === 'interrupted' ? ASKS : DONE;
  } finally {
    stop.dispose();
    await pool.close();
  }
}

async function readReelJob(path: string): Promise<{ job: ReelJob; files: readonly string[]; doubtful: boolean; notes: readonly Issue[] }> {
  const { record, notes } = readNoted(jobSchema, readJson(path), path);
  const { width, gap, bleed, designs } = record;
  const taken = new Map<string, number>();
  const files = designs.map(({ file }) => resolve(dirname(path), file));
  const drawings = await Promise.all(files.map((file) => readDrawing(file, DEFAULT_READ_OPTIONS)));
  const read = await Promise.all(designs.map(async ({ ups, rotations, blank: number }, index) => {
    const drawing = drawings[index]!;
    const turns = [...new Set(rotations.map((degrees) => turnOfDegrees(degrees) as Turn))];
    return { id: uniqueName(files[index]!, taken), blank: await inFields(`${path}: designs[${index}]`, () => chooseBlank(drawing, number)), drawing, ups, turns };
  }));
  const doubtful = read.some(({ drawing }) => drawing.issues.some(({ severity }) => severity !== 'note'));
  return { job: { width, gap, bleed, designs: read }, files, doubtful, notes };
}

/** The same drawing may be listed twice, with other rotations. */
function uniqueName(file: string, taken: Map<string, number>): string {
  const name = nameOf(file);
  const count = (taken.get(name) ?? 0) + 1;
  taken.set(name, count);
  return count === 1 ? name : `${name}-${count}`;
}

function factsOf(name: string, { layout, solution, lengthMm, lengthLowerBoundMm }: ReelOutcome, job: ReelJob, run: Pick<ReelFacts, 'seed' | 'seconds'>): ReelFacts {
  return {
    name,
    reelWidth: job.width,
    cutOff: lengthMm,
    leastCutOff: Math.min(lengthMm, lengthLowerBoundMm),
    designs: job.designs.map(({ id, ups, blank: { box }, turns }) => ({ id, ups, widthMm: box.maxX - box.minX, heightMm: box.maxY - box.minY, rotations: turns.map(degreesOf) })),
    gap: job.gap,
    bleed: job.bleed,
    yield: Number(layout.result?.['yield']),
    stopped: solution.stopped,
    ...run,
  };
}

async function outputsOf(raw: RawOptions, { layout }: ReelOutcome, facts: ReelFacts, report: Report, language: Language): Promise<Output[]> {
  const outputs: Output[] = [];
  const scene = sheetScene(viewOfLayout(layout, { figures: reelTitleFigures(facts, language) }), { words: language.picture, format: createFormat(language.locale) });
  const svg = sceneToSvg(scene);
  if (raw.json !== undefined) outputs.push({ path: raw.json, content: writeLayoutFile(layout) });
  if (raw.svg !== undefined) outputs.push({ path: raw.svg, content: svg });
  if (raw.pdf !== undefined) outputs.push({ path: raw.pdf, content: await (await import('../../render/pdf.ts')).sceneToPdf(scene) });
  if (raw.html !== undefined) outputs.push({ path: raw.html, content: reportHtml(report, [{ section: 'answer', svg, onPaper: true }]) });
  return outputs;
}
