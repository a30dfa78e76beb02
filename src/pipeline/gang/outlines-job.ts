import { camelCase } from '../../base/camel-case.ts';
import { z } from 'zod';
import { inFields, inputError, type Issue } from '../../base/issue.ts';
import { chooseBlank } from '../../dieline/choose-blank.ts';
import type { Dieline } from '../../dieline/dieline.ts';
import { turnOfDegrees, type Turn } from '../../geometry/turn.ts';
import { preparePart, type Prepared } from '../../layout/part.ts';
import { guillotineSchema, INVENTED_GUILLOTINE, type Guillotine } from '../../press/guillotine.ts';
import type { Size } from '../../press/sheet-areas.ts';
import { boardSchema, cutterSchema, pressSchema, readRecord, type PressRecord } from '../../press/records.ts';
import { checkStraightEdges } from '../guillotine.ts';
import { allowedTurns, checkFits, prepareSheet, type LayingSettings, type PreparedSheet } from '../laying.ts';
import { currencyField, readSize, type QuoteJob } from '../quote-job.ts';
import { createRecordReader, recordOrFile, type LoadJson } from '../record-reader.ts';
import { groupDesigns, inksOf, SHARED_FIELDS, type Grouped, type Sharing } from './may-share.ts';
import { checkDistinct, gangCosts, oversField, oversLimits, quantityField, readTerms } from './versions-job.ts';

const MOST_DESIGNS = 24;
const MOST_FORMS = 12;
const text = z.string().min(1).max(200);
const degrees = z.number().refine((value) => turnOfDegrees(value) !== undefined, 'quarter turns are wanted: 0, 90, 180, 270');
const MARGINS = ['gripper', 'tail', 'sideMargins', 'inkGripper', 'inkTail', 'inkSides', 'bar', 'lay', 'gap', 'bleed'] as const;
const margins = Object.fromEntries(MARGINS.map((field) => [field, z.unknown().optional()]));
const shared = { sheetGrain: z.enum(['x', 'y', 'long', 'short']).optional(), coating: text.optional(), foodClass: text.optional(), delivery: text.optional() };

const design = z.strictObject({
  ...shared,
  file: z.string().min(1),
  id: text.optional(),
  quantity: quantityField,
  rotations: z.array(degrees).min(1).optional(),
  /** Which of several blanks of the drawing. */
  blank: z.int().positive().optional(),
  /** Side of the drawing along which the fibres must run. */
  grain: z.enum(['x', 'y', 'any']).optional(),
  board: text.optional(),
  inks: z.array(text).max(20).default([]),
  overs: oversField,
});

const schema = z.strictObject({
  ...margins,
  ...shared,
  sheet: z.string(),
  designs: z.array(design).min(1, 'at least one design is wanted').max(MOST_DESIGNS),
  forms: z.int().min(1).max(MOST_FORMS),
  costs: gangCosts.optional(),
  currency: currencyField.optional(),
  cut: z.enum(['die', 'guillotine']).default('die'),
  guillotine: recordOrFile.optional(),
  bleedMeeting: z.enum(['apart', 'cut']).optional(),
  press: recordOrFile.optional(),
  cutter: recordOrFile.optional(),
  board: recordOrFile.optional(),
  /** Terms to price the run on: fields of a quote job, or the file of one. */
  quote: recordOrFile.optional(),
});

/** Several outlines and their quantities on the forms of one sheet size. */
export interface OutlinesJob {
  readonly ids: readonly string[];
  readonly quantities: readonly number[];
  readonly overs: readonly { readonly least: number; readonly greatest: number }[];
  readonly prepared: readonly Prepared[];
  readonly sheet: PreparedSheet;
  readonly grouped: Grouped;
  readonly forms: number;
  readonly costs: { readonly form: number; readonly pressing: number } | undefined;
  readonly currency: string | undefined;
  /** Where the sheets are cut apart by straight cuts. */
  readonly guillotine: Guillotine | undefined;
  /** Fields of the records that were left aside. */
  readonly notes: readonly Issue[];
  /** Drawings that ask for a decision. */
  readonly doubtful: readonly string[];
  /** Names of each design's inks, in the order of the ids. */
  readonly inks: readonly (readonly string[])[];
  /** The terms on which the run is priced, where the job names any. */
  readonly quote: QuoteJob | undefined;
}

/** What reading a job needs from outside. `drawing` gets the path as the job names it. */
export interface JobFiles {
  readonly json: LoadJson;
  readonly drawing: (file: string) => Promise<Dieline>;
  readonly nameOf: (file: string) => string;
}

export function isOutlinesJob(json: unknown): boolean {
  return typeof json === 'object' && json !== null && 'designs' in json;
}

/** Throws an InputError that names file and field. */
export async function readOutlinesJob(json: unknown, where: string, files: JobFiles): Promise<OutlinesJob> {
  const job = readRecord(schema, json, where);
  const { settings, press, notes } = settingsOf(job, json, where, files.json);
  const ids = job.designs.map(({ id, file }) => id ?? files.nameOf(file));
  checkDistinct(ids, where);
  const sheet = prepareSheet(settings);
  const doubtful: string[] = [];
  const prepared: Prepared[] = [];
  for (const [index, { file, blank, rotations, grain, sheetGrain = job.sheetGrain }] of job.designs.entries()) {
    const drawing = await files.drawing(file);
    if (drawing.issues.some(({ severity }) => severity !== 'note')) doubtful.push(file);
    const turns = allowedTurns({ ...settings, grain, sheetGrain: grain && sheetGrain, rotations: rotations && [...new Set(rotations.map((value) => turnOfDegrees(value) as Turn))] }, drawing.grain);
    const one = preparePart(await inFields(`${where}: designs[${index}]`, () => chooseBlank(drawing, blank)), { id: ids[index]!, turns, fingerprint: drawing.fingerprint });
    checkFits(one.part, sheet.frame);
    prepared.push(one);
  }
  const board = settings.machines.board?.name ?? (typeof job.board === 'string' ? job.board : undefined);
  const sharing = job.designs.map((one, d): Sharing => ({
    id: ids[d]!, inks: one.inks,
    ...Object.fromEntries(SHARED_FIELDS.map((field) => [field, one[field] ?? (field === 'board' ? board : job[field])])),
  }));
  checkUnits(sharing, press, where);
  if (job.cut === 'die' && job.guillotine !== undefined) throw inputError('options-contradict', { where, facts: { first: '"guillotine"', second: '"cut": "die"', reason: 'a guillotine cuts only with "cut": "guillotine"' } });
  if (job.cut === 'guillotine') for (const { part } of prepared) checkStraightEdges(part);
  const grouped = groupDesigns(sharing, press?.units);
  if (grouped.groups.length > job.forms) throw inputError('groups-over-forms', { where, facts: { groups: grouped.groups.length, forms: job.forms } });
  return {
    ids,
    quantities: job.designs.map(({ quantity }) => quantity),
    overs: job.designs.map(({ overs }) => oversLimits(overs)),
    inks: job.designs.map(({ inks }) => inks),
    quote: readQuote(job, where, files.json),
    prepared, sheet, grouped, forms: job.forms, costs: job.costs, currency: job.currency, doubtful, notes,
    guillotine: job.cut === 'die' ? undefined : (createRecordReader(where, files.json).read(guillotineSchema, job.guillotine, 'guillotine') ?? INVENTED_GUILLOTINE),
  };
}

/** Margins, gap and bleed stand in the job under the names they have in a press record. */
function settingsOf(job: z.output<typeof schema>, json: unknown, where: string, load: LoadJson): { settings: LayingSettings; press: PressRecord | undefined; notes: readonly Issue[] } {
  const records = createRecordReader(where, load);
  const record = records.read;
  const press = record(pressSchema, job.press, 'press');
  const cutter = record(cutterSchema, job.cutter, 'cutter');
  const board = record(boardSchema, job.board, 'board');
  const given = readRecord(pressSchema, pick(json as Record<string, unknown>), where);
  const settings: LayingSettings = { sheet: readSize(job.sheet, `${where}: sheet`), settings: given, machines: { press, cutter, board }, bleedMeeting: job.bleedMeeting, sheetGrain: job.sheetGrain };
  return { settings, press, notes: records.notes };
}

/** The job's sheet, and its machines and board where the quote names none. Which inks a form takes is checked against those of the quote. */
function readQuote(job: z.output<typeof schema>, where: string, load: LoadJson): QuoteJob | undefined {
  const { sheet, press, cutter, board, designs } = job;
  const quote = readTerms(job.quote, where, load, (terms, at) => {
    const given = terms['sheet'];
    if (typeof given === 'string' && !isSameSize(readSize(given, `${at}: sheet`), readSize(sheet, `${where}: sheet`))) throw inputError('options-contradict', { where: at, facts: { first: `"sheet": "${given}"`, second: `"sheet": "${sheet}"`, reason: 'the forms are priced on the sheet that they lie on' } });
    return { press, cutter, board, ...terms, sheet, ups: 1, quantities: designs.map(({ quantity }) => quantity) };
  });
  if (job.cut === 'guillotine' && quote?.terms.route.stages.includes('die-cutting')) throw inputError('options-contradict', { where, facts: { first: '"cut": "guillotine"', second: 'the stage die-cutting of the quote', reason: 'sheets that a guillotine cuts want no die' } });
  const known = quote?.inks?.map(({ name }) => name);
  designs.forEach(({ inks }, index) => {
    const foreign = known && inks.find((ink) => !known.includes(ink));
    if (foreign !== undefined) throw inputError('field-not-valid', { where: `${where}: designs[${index}].inks`, facts: { reason: `the quote has no ink "${foreign}"; its inks are ${known!.join(', ')}` } });
  });
  return quote;
}

function isSameSize(a: Size, b: Size): boolean {
  return a.width === b.width && a.height === b.height;
}

function pick(job: Readonly<Record<string, unknown>>): Record<string, unknown> {
  return Object.fromEntries(Object.entries(job).filter(([key]) => MARGINS.some((field) => field === camelCase(key))));
}

function checkUnits(designs: readonly Sharing[], press: PressRecord | undefined, where: string): void {
  for (const one of designs) {
    const inks = inksOf([one]).size;
    if (press?.units !== undefined && inks > press.units) throw inputError('inks-over-units', { where: `${where}: ${one.id}`, facts: { inks, units: press.units, press: press.name ?? 'the press' } });
  }
}
