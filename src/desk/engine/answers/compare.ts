import { inputError } from '../../../base/issue.ts';
import { compareSheets, type CompareJob } from '../../../pipeline/compare.ts';
import { compareCosts, type CostTerms } from '../../../pipeline/compare-costs.ts';
import { factsOfComparison, showComparison } from '../../../pipeline/compare-showing.ts';
import { readRecord } from '../../../press/records.ts';
import { listedCandidates, listedRanges, offers, sheetListSchema } from '../../../press/sheet-candidates.ts';
import type { CompareFacts } from '../../../render/compare-facts.ts';
import { nameOfRecord, type NamedRecord } from '../../job/records.ts';
import type { Host } from '../host.ts';
import type { CompareAnswer, CompareAsk, Person, QuoteAsk, RecostAnswer, RecostAsk } from '../protocol.ts';
import { wordsFor } from './language-of.ts';
import { machinesOf } from './machines-of.ts';
import { quoteJobOf } from './quote.ts';

/** Lays the design out on every sheet of the list; the sheet on the desk is the usual one. */
export async function compare({ job, sheets, lists, effort, quote }: CompareAsk, { control, pool }: Host<'compare'>): Promise<CompareAnswer> {
  const { sheet, sheetGrain, ...laying } = job;
  const machines = machinesOf(job.machines);
  const list = readRecord(sheetListSchema, sheets, 'sheets');
  const grain = sheetGrain === 'x' || sheetGrain === 'y' ? sheetGrain : undefined;
  const isUsual = (one: CompareJob['candidates'][number]) => one.sheet.width === sheet.width && one.sheet.height === sheet.height && (grain === undefined || one.grain === grain);
  const listed = listedCandidates(list, machines);
  const usual = listed.find(isUsual) ?? ({ sheet, grain, origin: { kind: 'stock' }, boughtM2: (sheet.width * sheet.height) / 1e6 } as const);
  const candidates = [usual, ...listed.filter((one) => one !== usual)];
  if (candidates.length === 0) throw inputError('no-sheets-listed', { where: 'sheets' });
  const compareJob: CompareJob = { ...laying, machines, candidates, ranges: listedRanges(list, machines), terms: termsOf(quote), toleranceMm: list.toleranceMm ?? 0 };
  const comparison = await compareSheets(compareJob, { effort, seed: 1, runner: pool, stop: () => (control.stopped() ? 'interrupted' : undefined) });
  const facts = factsOfComparison(job.id, compareJob, comparison, []);
  return { comparison, facts, lists: lists.map((one) => listedIn(one, facts)) };
}

function listedIn(list: NamedRecord, { sheets }: CompareFacts): CompareAnswer['lists'][number] {
  const read = readRecord(sheetListSchema, list.record, list.id);
  return { id: list.id, name: nameOfRecord(list), sheets: sheets.flatMap((sheet, index) => (offers(read, sheet) ? [index] : [])) };
}

export function recost(ask: RecostAsk, person: Person): RecostAnswer {
  const facts = recounted(ask);
  const { language, format } = wordsFor(person);
  return { facts, brief: language.compare.brief(facts, format), verdict: language.compare.sentence(facts, format) };
}

/** Sentence, charts, tables and the sheets drawn, as one file. */
export function comparePage(ask: RecostAsk, person: Person): string {
  const { language, format } = wordsFor(person);
  return showComparison(recounted(ask), undefined, language, format).html();
}

function recounted({ name, comparison, notes, quote }: RecostAsk): CompareFacts {
  const terms = termsOf(quote);
  return factsOfComparison(name, { terms, toleranceMm: 0 }, { ...comparison, ...compareCosts(comparison.compared, terms) }, notes);
}

/** The money panel's terms, ups and sheet left out; the grammage may be open here, then board decides. */
export function termsOf({ job }: QuoteAsk): CostTerms {
  const board = (job['board'] ?? {}) as { grammage?: number };
  const grammage = (job['grammage'] as number | undefined) ?? board.grammage;
  const read = quoteJobOf({ job: { ...job, grammage: grammage ?? LEAST_GRAMMAGE } });
  const { route, caliperMm, pricePerTonne, currency, waste, rates } = read.terms;
  return { quantities: read.quantities, route, grammage, caliperMm, pricePerTonne, currency, waste, rates };
}

/** A quote wants a grammage; this one enters into nothing. */
const LEAST_GRAMMAGE = 5;
