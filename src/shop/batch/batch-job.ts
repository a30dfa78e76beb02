import { z } from 'zod';
import { inputError } from '../../base/issue.ts';
import { parseSizeMm } from '../../base/units.ts';
import { turnOfDegrees, type Turn } from '../../geometry/turn.ts';
import type { Effort } from '../../nesting/effort.ts';
import type { LayingSettings } from '../../pipeline/laying.ts';
import { checkFields } from '../../press/known-fields.ts';
import { boardSchema, cutterSchema, pressSchema, readRecord } from '../../press/records.ts';
import { listedCandidates, sheetListSchema, type SheetCandidate } from '../../press/sheet-candidates.ts';
import type { Size } from '../../press/sheet-areas.ts';
import { createRecordReader, type LoadJson } from '../../pipeline/record-reader.ts';

const recordOrFile = z.union([z.string(), z.record(z.string(), z.unknown())]);
const size = z.string().transform((text, context) => {
  const mm = parseSizeMm(text);
  if (mm && mm.width > 0 && mm.height > 0) return mm;
  context.addIssue({ code: 'custom', message: 'a size is wanted, such as "1020x720"' });
  return z.NEVER;
});

/** A batch: many cartons on many sheets. Paths are relative to the job's file. */
export const batchJobSchema = z.strictObject({
  $schema: z.string().optional(),
  name: z.string().max(200).default('batch'),
  cartons: z.union([z.string(), z.array(z.union([z.string(), z.record(z.string(), z.unknown())])).min(1).max(1_000_000)]).describe('"library" for its live cartons; a folder or table; or a list of drawings and records of cartons'),
  sheets: z.union([z.string(), z.array(z.union([z.string(), z.record(z.string(), z.unknown())])).min(1).max(500)]).describe('a file that lists sheets, as for compare; or sizes such as "1020x720" and records of sheets'),
  usualSheet: size.optional().describe('what is bought now for cartons that do not say it; by default the first sheet'),
  yearly: z.int().nonnegative().max(1e12).optional().describe('cartons a year, where a carton does not say it'),
  press: recordOrFile.optional(),
  cutter: recordOrFile.optional(),
  board: recordOrFile.optional(),
  settings: pressSchema.optional().describe('margins, gap, bleed and bar by the names of a press record; they override press and die-cutter'),
  bleedMeeting: z.enum(['apart', 'cut']).optional(),
  rotations: z.array(z.union([z.literal(0), z.literal(90), z.literal(180), z.literal(270)])).min(1).max(4).optional(),
  grain: z.enum(['x', 'y', 'any']).optional(),
  effort: z.enum(['quick', 'normal', 'thorough']).default('quick'),
  seed: z.int().min(0).max(2 ** 31 - 1).default(1),
  grammage: z.number().min(5).max(2000).optional().describe('g/m²; by default that of the board'),
  boardPricePerTonne: z.number().nonnegative().max(1e9).optional(),
  currency: z.string().regex(/^[A-Za-z]{3}$/, 'a currency of three letters is wanted, such as EUR').default('EUR'),
});

export type CartonSource = string | readonly (string | Readonly<Record<string, unknown>>)[];

export interface BatchJob {
  readonly name: string;
  readonly cartons: CartonSource;
  readonly candidates: readonly SheetCandidate[];
  readonly usualSheet: Size | undefined;
  readonly yearly: number | undefined;
  readonly laying: Omit<LayingSettings, 'sheet' | 'sheetGrain'>;
  readonly effort: Effort;
  readonly seed: number;
  readonly grammage: number | undefined;
  readonly pricePerTonne: number | undefined;
  readonly currency: string;
}

/** Takes in a job. Throws an InputError that names file and field. */
export function readBatchJob(json: unknown, where: string, load: LoadJson): BatchJob {
  const job = readRecord(batchJobSchema, json, where);
  const record = createRecordReader(where, load).read;
  const machines = { press: record(pressSchema, job.press, 'press'), cutter: record(cutterSchema, job.cutter, 'cutter'), board: record(boardSchema, job.board, 'board') };
  if (job.settings) checkFields(Object.keys(pressSchema.shape), job.settings, `${where}: settings`);
  const inline = typeof job.sheets === 'string' ? undefined : { sheets: job.sheets.map((one) => (typeof one === 'string' ? { sheet: one } : one)) };
  const list = readRecord(sheetListSchema, inline ?? load(job.sheets as string, 'sheets'), inline ? `${where}: sheets` : (job.sheets as string));
  const candidates = listedCandidates(list, machines);
  if (candidates.length === 0) throw inputError('no-sheets-listed', { where: `${where}: sheets` });
  return {
    name: job.name,
    cartons: job.cartons,
    candidates,
    usualSheet: job.usualSheet,
    yearly: job.yearly,
    laying: { settings: job.settings ?? {}, machines, bleedMeeting: job.bleedMeeting, rotations: job.rotations?.map((degrees) => turnOfDegrees(degrees) as Turn), grain: job.grain },
    effort: job.effort,
    seed: job.seed,
    grammage: job.grammage ?? machines.board?.grammage,
    pricePerTonne: job.boardPricePerTonne ?? machines.board?.pricePerTonne,
    currency: job.currency.toUpperCase(),
  };
}
