import type { CompareFacts, ComparedSheetFacts } from './compare-facts.ts';
import { winnerAt } from './compare-facts.ts';
import { createFormat, type Format } from './format.ts';
import type { CompareWords } from './messages/english-compare.ts';
import { ROUTE_ASSUMED } from './messages/compare-figures.ts';
import { englishLanguage } from './messages/english-language.ts';
import type { Language } from './messages/language.ts';
import type { Report, ReportSection, Table } from './report.ts';

/** The sheets side by side: the sentence for sales, which wins from how many on, every sheet, what was assumed. */
export function compareReport(facts: CompareFacts, language: Language = englishLanguage, format: Format = createFormat(language.locale)): Report {
  const words = language.compare;
  const { headings } = words;
  const withQuantities = facts.quantities.length > 0;
  const section = (id: string, heading: string, sentences: readonly string[], more: Partial<ReportSection> = {}): ReportSection => ({ id, heading, sentences, figures: [], ...more });
  const sections = [
    section('winners', headings.winners, [], { figures: withQuantities ? facts.winners.map((_, index) => words.winner(facts, index, format)) : [] }),
    section('costs', headings.costs, [], costTable(facts, words, format)),
    section('sheets', headings.sheets, [], { table: sheetTable(facts, words, format) }),
    section('pictures', headings.pictures, []),
    section('missing', headings.missing, withQuantities ? facts.missing.map(words.missing) : []),
    section('assumed', headings.assumed, assumed(facts, language, format)),
  ];
  const isShown = ({ id, sentences, figures, table }: ReportSection) => id === 'pictures' || table !== undefined || sentences.length + figures.length > 0;
  return {
    language: language.locale,
    title: words.title(facts),
    answer: words.sentence(facts, format),
    sections: sections.filter(isShown),
    caution: { heading: headings.caution, text: words.caution },
  };
}

/** Sheets from the cheapest on, at the largest quantity asked; only where some cost is known. */
function costTable(facts: CompareFacts, words: CompareWords, format: Format): { table?: Table } {
  const { sheets, quantities, currency } = facts;
  if (facts.measure !== 'money' || quantities.length === 0) return {};
  const last = ({ costPerThousand }: ComparedSheetFacts) => costPerThousand.at(-1) ?? Infinity;
  const order = [...sheets.keys()].toSorted((a, b) => last(sheets[a]!) - last(sheets[b]!));
  const winning = new Set(quantities.map((quantity) => winnerAt(facts, quantity)));
  const cost = (sheet: ComparedSheetFacts, i: number) => {
    const value = sheet.costPerThousand[i]!;
    if (value !== null) return format.money(value, currency).replace(` ${currency}`, '');
    return isMade(sheet, quantities[i]!) ? words.open : words.notMade;
  };
  const origin = (index: number) => {
    const bought = originOf(facts, index, words, format);
    return quantities.every((quantity) => isMade(sheets[index]!, quantity)) ? bought : `${bought} ${words.madeFrom(sheets[index]!.fromCartons!, format)}`;
  };
  const head = [words.head.sheet(format), words.head.origin, words.head.ups, ...quantities.map((quantity) => words.head.quantity(quantity, format))];
  return {
    table: {
      head: head.map((title, i) => (i === 3 ? `${currency}/1000 ${title}` : title)),
      rows: order.map((index) => [words.size(sheets[index]!, format), origin(index), String(sheets[index]!.ups), ...quantities.map((_, i) => cost(sheets[index]!, i))]),
      wordColumns: 2,
      marked: order.flatMap((index, row) => (winning.has(index) ? [row] : [])),
    },
  };
}

/** A mill makes a size to order from some quantity on. */
function isMade({ fromCartons = 0 }: ComparedSheetFacts, quantity: number): boolean {
  return quantity >= fromCartons;
}

function sheetTable(facts: CompareFacts, words: CompareWords, format: Format): Table {
  const { sheets, leastBoard } = facts;
  const order = [...sheets.keys()].toSorted((a, b) => sheets[a]!.boardM2PerThousand - sheets[b]!.boardM2PerThousand);
  const { head } = words;
  const anyLooked = sheets.some(mayHoldMore);
  return {
    head: [head.sheet(format), head.origin, head.ups, head.limit, head.board(format), head.toOrder(format), ...(anyLooked ? [head.search] : [])],
    rows: order.map((index) => {
      const sheet = sheets[index]!;
      const { sheetToOrder, boardM2PerThousand, ups, upperBound, searched } = sheet;
      const toOrder = `${sideToOrder(sheetToOrder.width, format)} × ${sideToOrder(sheetToOrder.height, format)}`;
      return [words.size(sheet, format), originOf(facts, index, words, format), String(ups), words.limit(upperBound), format.bareBoard(boardM2PerThousand, 2), toOrder, ...(anyLooked ? [ups >= upperBound ? words.limitReached : words.searched[searched]] : [])];
    }),
    wordColumns: 2,
    marked: [order.indexOf(leastBoard)],
  };
}

/** Sheets are cut to a tenth of a millimetre, or to thousandths of an inch. */
function sideToOrder(mm: number, format: Format): string {
  return format.unit === 'mm' ? format.number(mm, 1).replace(' ', '') : format.bareLength(mm);
}

/** A look that comes up to the limit is as good as a search. */
function mayHoldMore({ searched, ups, upperBound }: ComparedSheetFacts): boolean {
  return searched !== 'full' && ups < upperBound;
}

function originOf({ sheets }: CompareFacts, index: number, words: CompareWords, format: Format): string {
  const origin = words.origin(sheets[index]!, format);
  return index === 0 ? `${origin}, ${words.usual}` : origin;
}

function assumed(facts: CompareFacts, { compare: words, issues }: Language, format: Format): string[] {
  const { sheets, toleranceMm, winners, quantities } = facts;
  const named = new Set([0, facts.leastBoard, ...winners.map(({ candidate }) => candidate)]);
  const isTight = ({ sheet, sheetToOrder }: ComparedSheetFacts) => toleranceMm > 0 && (sheetToOrder.width > sheet.width || sheetToOrder.height > sheet.height);
  return [
    ...[...named].filter((index) => isTight(sheets[index]!) && !sheets[index]!.die).map((index) => words.tooTight(sheets[index]!, facts, format)),
    words.leastToOrder(facts, format),
    ...(sheets.some((sheet) => mayHoldMore(sheet) && !sheet.die) ? [words.looks] : []),
    ...(quantities.length === 0 ? [] : [words.route(facts), words.rates(facts) ?? '', ...(winners.length > 1 ? [words.breakEven] : [])].filter(Boolean)),
    ...(facts.skipped > 0 ? [words.skipped(facts.skipped)] : []),
    // What was assumed of the route stands in the sentence on it.
    ...facts.notes.filter(({ code }) => code !== ROUTE_ASSUMED).map((issue) => issues.sentence(issue, format.unit)),
  ];
}
