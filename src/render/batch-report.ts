import type { BatchCarton, BatchCell, BatchFacts } from './batch-facts.ts';
import { createFormat, type Format } from './format.ts';
import type { BatchWords } from './messages/english-batch.ts';
import { englishLanguage } from './messages/english-language.ts';
import type { Language } from './messages/language.ts';
import type { Report, ReportSection, Table } from './report.ts';

/** How much a reader wants to see: a terminal less than a page. */
export interface BatchDetail {
  /** Cartons in the table; those that save most come first. */
  readonly mostCartons: number;
  /** Cartons that get a picture, each in a section of its own called `carton-N`, N its place in `facts.cartons`. */
  readonly pictured: readonly number[];
}

/** Places in `facts.cartons`, those that save most first, those without a known saving last. */
export function bySaving({ cartons }: BatchFacts): number[] {
  const worth = (index: number) => cartons[index]!.saving?.money ?? cartons[index]!.saving?.boardM2 ?? -Infinity;
  return [...cartons.keys()].toSorted((a, b) => worth(b) - worth(a) || a - b);
}

/** Savings a year by carton and by sheet; what was refused or set aside, with reasons. */
export function batchReport(facts: BatchFacts, { mostCartons, pictured }: BatchDetail, language: Language = englishLanguage, format: Format = createFormat(language.locale)): Report {
  const { batch: words } = language;
  const { headings } = words;
  const order = bySaving(facts);
  const hidden = order.length - mostCartons;
  const size = (cell: Pick<BatchCell, 'sheet'>) => words.size(cell.sheet, format);
  const listed = (id: string, heading: string, sentences: readonly string[]): ReportSection[] => (sentences.length === 0 ? [] : [{ id, heading, sentences: [...sentences.slice(0, mostCartons), ...(sentences.length > mostCartons ? [words.more(sentences.length - mostCartons, format)] : [])], figures: [] }]);
  const sections: ReportSection[] = [
    ...(order.length === 0 ? [] : [{ id: 'cartons', heading: headings.cartons, sentences: hidden > 0 ? [words.more(hidden, format)] : [], figures: [], table: cartonTable(facts, order.slice(0, mostCartons), words, format) }]),
    ...(order.length === 0 ? [] : [{ id: 'sheets', heading: headings.sheets, sentences: [words.sheetsNote], figures: [], table: sheetTable(facts, words, format) }]),
    ...pictured.map((index): ReportSection => ({ id: `carton-${index}`, heading: words.pictured(facts.cartons[index]!, facts.currency, format), sentences: [], figures: [] })),
    ...listed('changed', headings.changed, facts.changed.map(({ carton, sheet, before, ups, engine }) => words.changed(carton, size({ sheet }), before, ups, engine))),
    ...listed('set-aside', headings.setAside, facts.setAside.map(({ carton, sheet, message }) => words.setAside(carton, size({ sheet }), message))),
    ...listed('doubtful', words.doubtful(facts.doubtful.length, format), facts.doubtful.map(({ id, issues }) => words.refused(id, issues.map((issue) => language.issues.sentence(issue, format.unit)).join(' ')))),
    ...listed('refused', headings.refused, facts.refused.map(({ id, issues }) => words.refused(id, issues.map((issue) => language.issues.sentence(issue, format.unit)).join(' ')))),
  ];
  return { language: language.locale, title: words.title(facts, format), answer: words.answer(facts, format), sections, caution: { heading: headings.caution, text: words.caution } };
}

const BOARD_DECIMALS = 2;
/** In every language. */
const UNKNOWN = '–';

function wholeBoard(m2: number | undefined, format: Format): string {
  return m2 === undefined ? UNKNOWN : format.bareBoard(m2, 0);
}

function cartonTable({ cartons, currency, total }: BatchFacts, order: readonly number[], words: BatchWords, format: Format): Table {
  const withMoney = total.money !== undefined;
  const whole = (value: number | undefined) => (value === undefined ? UNKNOWN : format.number(value, 0));
  const row = ({ id, name, yearly, cells, usual, best, saving }: BatchCarton): string[] => {
    const cell = (index: number | undefined) => (index === undefined ? undefined : cells[index]);
    const size = (one: BatchCell | undefined) => (one ? words.size(one.sheet, format) : words.none);
    const area = (one: BatchCell | undefined) => (one ? format.bareBoard(one.boardM2PerThousand!, BOARD_DECIMALS) : UNKNOWN);
    const [from, to] = [cell(usual), cell(best)];
    return [name ?? id, size(from), size(to), whole(yearly), whole(from?.ups), whole(to?.ups), whole(to?.upperBound), area(from), area(to), wholeBoard(saving?.boardM2, format), ...(withMoney ? [saving?.money === undefined ? UNKNOWN : format.number(saving.money, 0)] : [])];
  };
  const gaining = order.flatMap((index, place) => ((cartons[index]!.saving?.boardM2 ?? 0) > 0 ? [place] : []));
  return { head: words.cartonHead(currency, withMoney, format), rows: order.map((index) => row(cartons[index]!)), wordColumns: 3, marked: gaining };
}

function sheetTable({ sheets, currency, total }: BatchFacts, words: BatchWords, format: Format): Table {
  const withMoney = total.money !== undefined;
  const whole = (value: number | undefined) => (value === undefined ? UNKNOWN : format.number(value, 0));
  const order = [...sheets.keys()].toSorted((a, b) => sheets[b]!.saving.boardM2 - sheets[a]!.saving.boardM2 || a - b);
  return {
    head: words.sheetHead(currency, withMoney, format),
    rows: order.map((index) => {
      const { sheet, bestFor, saving } = sheets[index]!;
      return [words.size(sheet, format), whole(bestFor), wholeBoard(saving.boardM2, format), whole(saving.boardKg), ...(withMoney ? [whole(saving.money)] : [])];
    }),
    wordColumns: 1,
  };
}
