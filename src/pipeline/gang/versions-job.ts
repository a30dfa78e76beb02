import { z } from 'zod';
import { inputError, InputError, type Issue } from '../../base/issue.ts';
import type { VersionsTask } from '../../estimate/gang/plan-versions.ts';
import { readNoted } from '../../press/known-fields.ts';
import { currencyField, MOST_CARTONS, readQuoteJob, type QuoteJob } from '../quote-job.ts';
import { recordOrFile, type LoadJson, type RecordOrFile } from '../record-reader.ts';

const MOST_STATIONS = 400;
const MOST_VERSIONS = 400;

const wholeOvers = `whole copies from 0 to ${MOST_CARTONS} are wanted`;
const wanted = `a whole quantity from 1 to ${MOST_CARTONS} is wanted`;
export const quantityField = z.int(wanted).min(1, wanted).max(MOST_CARTONS, wanted);
const money = z.number().min(0, 'an amount from 0 up is wanted').max(1e9);

export const gangCosts = z.strictObject({ form: money, pressing: money });

const count = z.int(wholeOvers).min(0, wholeOvers).max(MOST_CARTONS, wholeOvers);
/** Copies beyond the quantity, least and greatest. */
export const oversField = z.strictObject({ least: count.default(0), greatest: count.optional() }).refine(({ least, greatest }) => greatest === undefined || greatest >= least, 'the greatest overs are under the least').optional();

export function oversLimits(overs: z.output<typeof oversField>): { least: number; greatest: number } {
  return { least: overs?.least ?? 0, greatest: overs?.greatest ?? Infinity };
}

const schema = z.looseObject({
  stations: z.int().min(1).max(MOST_STATIONS),
  versions: z.array(z.looseObject({ id: z.string().min(1), quantity: quantityField, overs: oversField })).min(1).max(MOST_VERSIONS),
  forms: z.int().min(1).max(50),
  costs: gangCosts.optional(),
  currency: currencyField.optional(),
  /** Terms to price the run on: fields of a quote job, or the file of one. */
  quote: recordOrFile.optional(),
  /** For versions that name none of their own. */
  overs: oversField,
});

export interface VersionsJob {
  readonly ids: readonly string[];
  readonly task: VersionsTask;
  readonly currency: string | undefined;
  /** Fields left aside. */
  readonly notes: readonly Issue[];
}

/** Versions on equal stations. Throws an InputError that names file and field. */
export function readVersionsJob(json: unknown, where: string): VersionsJob {
  const { record, notes } = readNoted(schema, json, where);
  const { stations, versions, forms, costs, overs } = record;
  const ids = versions.map(({ id }) => id);
  checkDistinct(ids, where);
  if (versions.length > forms * stations) throw inputError('versions-over-stations', { where, facts: { versions: versions.length, forms, stations, needed: Math.ceil(versions.length / stations) } });
  const limits = versions.map((version) => oversLimits(version.overs ?? overs));
  const isLimited = limits.some(({ least, greatest }) => least > 0 || greatest < Infinity);
  return { ids, currency: record.currency, task: { stations, quantities: versions.map(({ quantity }) => quantity), forms, costs, ...(isLimited && { oversLimits: limits }) }, notes };
}

/** The terms on which the run is priced, its stations and quantities put in; undefined where the job names none. */
export function readQuoteOfRun(json: unknown, where: string, load: LoadJson, { task }: VersionsJob): QuoteJob | undefined {
  return readTerms((json as { quote?: RecordOrFile }).quote, where, load, () => ({ ups: task.stations, quantities: task.quantities }));
}

/** A quote that stands in a job or beside it, with what the job settles put in. */
export function readTerms(quote: RecordOrFile, where: string, load: LoadJson, settled: (terms: Readonly<Record<string, unknown>>, where: string) => { readonly quantities: readonly number[] }): QuoteJob | undefined {
  if (quote === undefined) return undefined;
  const isFile = typeof quote === 'string';
  const terms = (isFile ? load(quote) : quote) as Readonly<Record<string, unknown>>;
  const at = isFile ? quote : `${where}: quote`;
  const { quantities, ...more } = settled(terms, at);
  return readQuoteJob({ ...terms, ...more, quantities: [...new Set(quantities)] }, at, load);
}

export function checkDistinct(ids: readonly string[], where: string): void {
  const twice = ids.filter((id, i) => ids.indexOf(id) < i);
  if (twice.length > 0) throw new InputError(twice.map((id) => ({ code: 'id-twice', severity: 'error', where, facts: { id } })));
}
