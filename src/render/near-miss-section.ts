import { createFormat, type Format } from './format.ts';
import type { NearMissWords } from './messages/english-near-miss.ts';
import type { Language } from './messages/language.ts';
import type { NearMiss, NearMissFacts } from './near-miss-facts.ts';
import type { ReportSection, Table } from './report.ts';
import { roundTo } from './rounded.ts';
import { sheetThumbnails } from './sheet-thumbnails.ts';

export const NEAR_MISS_SECTION = 'near-misses';

/** The section of a report: which single change brings the next up, and what it is worth. */
export function nearMissSection(facts: NearMissFacts, { locale, nearMiss: words }: Pick<Language, 'locale' | 'nearMiss'>, format: Format = createFormat(locale)): ReportSection {
  const counts = words.counts(facts, format);
  const sentences = [
    words.best(facts, format),
    ...(facts.tried < facts.changes ? [words.stopped(facts)] : []),
    ...(facts.notFound.length > 0 ? [words.notFound(facts, format)] : []),
    words.searched(facts, format),
    ...(counts === undefined ? [] : [counts]),
    ...(facts.found.length > 0 ? [words.caution] : []),
  ];
  return { id: NEAR_MISS_SECTION, heading: words.heading, sentences, figures: [], ...(facts.found.length > 0 && { table: tableOf(facts, words, format) }) };
}

function tableOf({ found, currency }: NearMissFacts, words: NearMissWords, format: Format): Table {
  const { head } = words;
  const some = (figure: (miss: NearMiss) => number | undefined) => found.some((miss) => figure(miss) !== undefined);
  const whole = (value: number | undefined) => (value === undefined ? '' : format.number(value, 0));
  const columns: [string, (miss: NearMiss) => string][] = [
    [head.change, (miss) => words.change(miss, format)],
    [head.ups, ({ ups }) => String(ups)],
    [head.board(format), ({ saved }) => format.bareBoard(saved.m2PerThousand, 2)],
    ...(some(({ saved }) => saved.m2PerYear) ? [[head.m2(format), ({ saved }: NearMiss) => (saved.m2PerYear === undefined ? '' : format.bareBoard(saved.m2PerYear, 0))] as [string, (miss: NearMiss) => string]] : []),
    ...(some(({ saved }) => saved.kgPerYear) ? [[head.kg, ({ saved }: NearMiss) => whole(saved.kgPerYear)] as [string, (miss: NearMiss) => string]] : []),
    ...(some(({ saved }) => saved.moneyPerYear) ? [[head.money(currency), ({ saved }: NearMiss) => whole(saved.moneyPerYear)] as [string, (miss: NearMiss) => string]] : []),
  ];
  return { head: columns.map(([title]) => title), rows: found.map((miss) => columns.map(([, cell]) => cell(miss))), wordColumns: 1, marked: [0] };
}

/** The judged layouts behind the claims, small and at one scale; undefined where there is none. */
export function nearMissPicture({ found }: NearMissFacts, { locale, nearMiss: words }: Pick<Language, 'locale' | 'nearMiss'>, format: Format = createFormat(locale)): string | undefined {
  return found.length === 0 ? undefined : sheetThumbnails(words.picture, found.map((miss) => ({ layout: miss.layout, caption: words.thumbnail(miss, format), marked: false })));
}

/** For JSON: figures with two decimals, each claim with its layout. */
export function nearMissJson({ ups, yearly, currency, found, notFound, stepMm }: NearMissFacts): object {
  const given = (value: number | undefined) => (value === undefined ? null : roundTo(value, 2));
  return {
    ups,
    yearly: yearly ?? null,
    stepMm,
    found: found.map(({ thing, from, to, ups: more, saved, layout }) => ({
      thing,
      ...(from !== undefined && { from, to }),
      ups: more,
      savedM2PerThousand: roundTo(saved.m2PerThousand, 3),
      savedM2PerYear: given(saved.m2PerYear),
      savedKgPerYear: given(saved.kgPerYear),
      savedPerYear: given(saved.moneyPerYear),
      currency,
      layout,
    })),
    notFound,
  };
}
