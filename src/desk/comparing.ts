import type { ComparedSheetFacts } from '../render/compare-facts.ts';
import type { Desk } from './desk.ts';
import type { KeptLayout } from './job/job.ts';
import type { CompareAnswer, CompareAsk, QuoteAsk } from './engine/protocol.ts';
import { layoutFromFile, samePlacements } from './job/layouts.ts';
import { sameButSheet } from './job/inputs.ts';
import { quoteOf } from './job/quote-of.ts';
import { sheetLists } from './job/records.ts';
import { answered } from './reading.ts';
import { searchOf } from './searching.ts';

/** The quote's terms for sheets in general; undefined while a money field cannot be read. */
export function termsOnDesk(desk: Desk): QuoteAsk | undefined {
  const { laying, job, records } = desk;
  if ('faults' in laying.value) return undefined;
  const asked = quoteOf(job.value, records.value, { ups: 1, sheet: laying.value.laying.sheet });
  return 'job' in asked ? asked : undefined;
}

/** The gap that holds on the desk, mm. */
export function gapOnDesk({ frame }: Desk): number | undefined {
  return frame.value.kind === 'answer' ? frame.value.answer.gap : undefined;
}

/** Every sheet of the lists, the one on the desk first. */
export async function compareAllSheets(desk: Desk): Promise<void> {
  const ask = compareAskOf(desk);
  const inputs = desk.inputs.value;
  if (!ask || inputs === undefined) return;
  desk.comparison.value = { kind: 'waiting' };
  const answer = await latestOf(desk, ask);
  if (answer) desk.comparison.value = { ...answer, inputs, quote: ask.quote, gap: gapOnDesk(desk) };
}

/** The same sheets with another gap, laid out anew. Only the last gap asked for is answered; where it cannot be, the old answer stays. */
export async function compareWithGap(desk: Desk, gap: number): Promise<void> {
  const ask = compareAskOf(desk);
  const inputs = desk.inputs.value;
  if (!ask || inputs === undefined) return;
  const answer = await latestOf(desk, { ...ask, job: { ...ask.job, settings: { ...ask.job.settings, gap } } });
  if (!answer) return;
  desk.comparison.value = answer.kind === 'answer' ? { ...answer, inputs, quote: ask.quote, gap } : { ...desk.comparison.value, next: { gap, issues: answer.issues } };
}

function compareAskOf(desk: Desk): CompareAsk | undefined {
  const ask = searchOf(desk);
  const quote = termsOnDesk(desk);
  return ask && quote && { job: ask.job, sheets: joinedLists(desk), lists: sheetLists(desk.records.value), effort: 'quick', quote };
}

let asked = 0;
let underWay: Promise<unknown> = Promise.resolve();

/** Ends what is under way, then asks; undefined when something later was asked meanwhile. */
async function latestOf({ helper }: Desk, ask: CompareAsk) {
  const number = ++asked;
  helper.tell('stop');
  await underWay;
  if (number !== asked) return undefined;
  helper.tell('begin');
  const asking = answered(() => helper.ask('compare', ask));
  underWay = asking.catch(() => undefined);
  const answer = await asking;
  return number === asked ? answer : undefined;
}

/** One list of all that are known: stock sheets, parents and reels each together, the last range of sizes made to order. */
function joinedLists(desk: Desk): object {
  const lists = sheetLists(desk.records.value).map(({ record }) => record);
  const all = (field: string) => lists.flatMap((list) => (Array.isArray(list[field]) ? (list[field] as unknown[]) : []));
  const madeToOrder = lists.findLast((list) => list['madeToOrder'] !== undefined)?.['madeToOrder'];
  return { sheets: all('sheets'), parents: all('parents'), reels: all('reels'), ...(madeToOrder !== undefined && { madeToOrder }) };
}

/** What came onto the desk with a sheet; gap and bleed only where they changed. */
export interface Taken {
  readonly sheet: { readonly width: number; readonly height: number };
  readonly gap?: number;
  readonly bleed?: number;
}

/** Puts a compared sheet on the desk, with the layout found for it, and the gap it was found with. */
export function takeSheet(desk: Desk, { facts }: CompareAnswer, index: number): Taken {
  const { sheet, grain, layout, ups } = facts.sheets[index]!;
  const size = `${sheet.width}x${sheet.height}`;
  const { gap } = desk.comparison.value;
  const otherGap = gap !== undefined && gap !== gapOnDesk(desk);
  const bleedBefore = desk.frame.value.kind === 'answer' ? desk.frame.value.answer.bleed : undefined;
  const kept = layoutFromFile(layout, 'not judged', String(layout.result?.['source'] ?? ''));
  desk.change((job) => {
    const isKnown = job.layouts.some((one) => samePlacements(one.file, layout));
    return { ...job, ...(otherGap && { limits: { ...job.limits, gap: String(gap) } }), sheet: { ...job.sheet, size, ...(grain && job.sheet.sheetGrain !== '' && { sheetGrain: grain }) }, layouts: isKnown || ups === 0 ? job.layouts : [...job.layouts, kept] };
  });
  if (!otherGap) return { sheet };
  // The comparison is about the gap that now lies on the desk.
  desk.comparison.value = { ...desk.comparison.value, inputs: desk.inputs.value };
  const { bleed } = layout.rules;
  return { sheet, gap, ...(bleedBefore !== undefined && bleed !== bleedBefore && { bleed }) };
}

/** Most ups on a compared sheet, by the best that was proved for it with these settings: by the comparison, or by a search on the desk. */
export function limitOnDesk(desk: Desk, { sheet, upperBound }: Pick<ComparedSheetFacts, 'sheet' | 'upperBound'>): number {
  const { inputs } = desk.comparison.value;
  // One without a limit may come from a file, made with settings that nobody knows.
  const isSame = ({ file, inputs: made, limit }: KeptLayout) => limit !== undefined && file.sheet.width === sheet.width && file.sheet.height === sheet.height && sameButSheet(made, inputs);
  const proved = desk.comparison.value.gap === gapOnDesk(desk) ? desk.job.value.layouts.filter(isSame).flatMap(({ limit }) => limit?.ups ?? []) : [];
  return Math.min(upperBound, ...proved);
}
