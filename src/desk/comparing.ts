import type { Desk } from './desk.ts';
import type { CompareAnswer, QuoteAsk } from './engine/protocol.ts';
import { layoutFromFile, samePlacements } from './job/layouts.ts';
import { quoteOf } from './job/quote-of.ts';
import { answered } from './reading.ts';
import { searchOf } from './searching.ts';

/** The quote's terms for sheets in general; undefined while a money field cannot be read. */
export function termsOnDesk(desk: Desk): QuoteAsk | undefined {
  const { laying, job, records } = desk;
  if ('faults' in laying.value) return undefined;
  const asked = quoteOf(job.value, records.value, { ups: 1, sheet: laying.value.laying.sheet });
  return 'job' in asked ? { job: asked.job, inventedRates: job.value.money.inventedRates } : undefined;
}

/** Every sheet of the lists, the one on the desk first. */
export async function compareAllSheets(desk: Desk): Promise<void> {
  const ask = searchOf(desk);
  const quote = termsOnDesk(desk);
  const inputs = desk.inputs.value;
  if (!ask || !quote || inputs === undefined) return;
  desk.comparison.value = { kind: 'waiting' };
  desk.helper.tell('begin');
  const sheets = joinedLists(desk);
  const answer = await answered(() => desk.helper.ask('compare', { job: ask.job, sheets, effort: 'quick', quote }));
  desk.comparison.value = { ...answer, inputs };
}

/** One list of all that are known: stock sheets, parents and reels each together, the last range of sizes made to order. */
function joinedLists(desk: Desk): object {
  const lists = desk.records.value.sheets.map(({ record }) => record);
  const all = (field: string) => lists.flatMap((list) => (Array.isArray(list[field]) ? (list[field] as unknown[]) : []));
  const madeToOrder = lists.findLast((list) => list['madeToOrder'] !== undefined)?.['madeToOrder'];
  return { sheets: all('sheets'), parents: all('parents'), reels: all('reels'), ...(madeToOrder !== undefined && { madeToOrder }) };
}

/** Puts a compared sheet on the desk, with the layout found for it. */
export function takeSheet(desk: Desk, { facts }: CompareAnswer, index: number): void {
  const { sheet, grain, layout, ups } = facts.sheets[index]!;
  const size = `${sheet.width}x${sheet.height}`;
  const kept = layoutFromFile(layout, 'not judged', String(layout.result?.['source'] ?? ''));
  desk.change((job) => {
    const isKnown = job.layouts.some((one) => samePlacements(one.file, layout));
    return { ...job, sheet: { ...job.sheet, size, ...(grain && job.sheet.sheetGrain !== '' && { sheetGrain: grain }) }, layouts: isKnown || ups === 0 ? job.layouts : [...job.layouts, kept] };
  });
}
