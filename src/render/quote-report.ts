import type { Figure as Estimated } from '../estimate/figure.ts';
import { tokensOf } from '../estimate/formula.ts';
import type { QuantityQuote } from '../estimate/quote.ts';
import { foodEntries } from '../press/food.ts';
import { figureInInches, FT2_PER_M2 } from './figure-in-inches.ts';
import { createFormat, type Format } from './format.ts';
import { inkChart } from './ink-chart.ts';
import { englishLanguage } from './messages/english-language.ts';
import type { QuoteWords } from './messages/english-quote.ts';
import type { Language } from './messages/language.ts';
import type { ReportPicture } from './report-html.ts';
import type { QuoteFacts } from './quote-facts.ts';
import type { Figure, Report, ReportSection } from './report.ts';

/** The inside page: every figure with its formula, what is missing, what is to be ordered, what was assumed. */
export function quoteReport(facts: QuoteFacts, language: Language = englishLanguage, format: Format = createFormat(facts.locale)): Report {
  const words = language.quote(facts.product);
  const { headings } = words;
  const sections: ReportSection[] = [
    { id: 'overview', heading: headings.overview, sentences: [], figures: facts.quantities.map((quote) => ({ label: words.quantity(quote.quantity, format), value: words.overview(quote, facts.currency, format) })) },
    { id: 'missing', heading: headings.missing, sentences: facts.missing.map(words.missing), figures: [] },
    ...facts.quantities.map((quote) => quantitySection(quote, facts, words, format)),
    inkSection(facts, words, format),
    { id: 'food', heading: headings.food, ...foodOf(facts, language) },
    { id: 'buying', heading: headings.buying, sentences: buyingSentences(facts, words, format), figures: [] },
    { id: 'die', heading: headings.die, sentences: words.die(facts, format), figures: [] },
    { id: 'layouts', heading: headings.layouts, sentences: [], figures: (facts.layouts ?? []).map((_, index) => words.layout(facts, index, format)) },
    { id: 'assumed', heading: headings.assumed, sentences: assumedIn(facts, words, language, format), figures: [] },
  ];
  return {
    language: language.locale,
    title: words.title(facts, format),
    answer: words.answer(facts, format),
    sections: sections.filter(({ sentences, figures }) => sentences.length + figures.length > 0),
    caution: { heading: headings.caution, text: words.caution },
  };
}

/** What every figure rests on: waste, rates, units, and what was taken for granted. */
export function assumedIn(facts: Pick<QuoteFacts, 'waste' | 'ratesName' | 'anyRates' | 'rateSources' | 'notes'>, words: QuoteWords, { issues }: Language, format: Format): string[] {
  const units = format.unit === 'in' ? [words.unitsOfFormulas(format.number(Number(FT2_PER_M2), 5))] : [];
  return [words.convention(facts), words.rates(facts), ...units, ...facts.notes.map((issue) => issues.sentence(issue, format.unit))];
}

/** The customer's page: prices and terms under the same quote number, no rates. Every price must be known. */
export function customerReport(facts: QuoteFacts, language: Language = englishLanguage, format: Format = createFormat(facts.locale)): Report {
  const words = language.quote(facts.product);
  const { customer, headings } = words;
  const priceOf = ({ quantity, pricePerThousand }: QuantityQuote): Figure => {
    const price = pricePerThousand!.value!;
    return { label: words.quantity(quantity, format), value: customer.price(price, (price * quantity) / 1000, facts.currency, format) };
  };
  const packing = facts.quantities.flatMap((quote) => customer.packed(quote, format));
  return {
    language: language.locale,
    title: customer.title(facts),
    answer: customer.answer(facts),
    sections: [
      { id: 'prices', heading: headings.prices, sentences: [customer.product(facts, format)], figures: facts.quantities.map(priceOf) },
      ...(packing.length > 0 ? [{ id: 'packing', heading: headings.packing, sentences: packing, figures: [] }] : []),
      { id: 'terms', heading: headings.terms, sentences: [customer.tolerance(facts, format), customer.validity(facts)], figures: [] },
    ],
    caution: { heading: customer.cautionHeading, text: customer.caution },
  };
}

function quantitySection(quote: QuantityQuote, { currency, ups }: QuoteFacts, words: QuoteWords, format: Format): ReportSection {
  const { chain } = quote.needed;
  const firstOfCartons = chain.find(({ counts }) => counts === 'cartons')?.into ?? quote.quantity;
  const sheetsOut = Math.ceil(firstOfCartons / ups);
  const shown = [quote.boardWeight, quote.boardCostPerThousand, ...quote.hours, ...quote.materials, ...(quote.packed?.figures ?? []), ...quote.costs, quote.cost, quote.costPerThousand, ...(quote.pricePerThousand ? [quote.pricePerThousand] : [])];
  return {
    id: `q${quote.quantity}`,
    heading: words.quantity(quote.quantity, format),
    sentences: [words.cartonsToSheets(firstOfCartons, ups, sheetsOut, format)],
    figures: [
      ...chain.toReversed().map((need): Figure => ({ label: words.stage(need), value: format.number(need.into, 0), formula: words.stageFormula(need, format) })),
      ...shown.map((one) => shownFigure(one, currency, words, format)),
    ],
  };
}

/** What each ink asks of the zones, as laid and with every blank upright. */
function inkSection({ inkZones }: QuoteFacts, words: QuoteWords, format: Format): ReportSection {
  const inks = inkZones || [];
  return {
    id: 'inks',
    heading: words.headings.inks,
    sentences: inks.slice(0, 1).map(({ zones }) => words.zones(zones, format)),
    figures: inks.map(({ name, zones }) => ({ label: name, value: words.zoneRange(zones, format) })),
  };
}

function foodOf({ food }: QuoteFacts, { food: words }: Language): Pick<ReportSection, 'sentences' | 'figures'> {
  if (food === undefined) return { sentences: [], figures: [] };
  if (typeof food === 'string') return { sentences: [food], figures: [] };
  return { sentences: [], figures: foodEntries(food).map(([field, text]) => ({ label: words[field], value: text })) };
}

/** The bars of every ink, where there are any. */
export function inkPicture({ inkZones, product, locale }: QuoteFacts, language: Language = englishLanguage, format: Format = createFormat(locale)): ReportPicture[] {
  return inkZones && inkZones.length > 0 ? [{ section: 'inks', svg: inkChart(inkZones, language.quote(product).inkChart, format), onPaper: false }] : [];
}

/** The figure with its formula in numbers, and below it the formula in words. */
export function shownFigure(computed: Estimated, currency: string, words: QuoteWords, format: Format): Figure {
  const one = format.unit === 'in' ? figureInInches(computed) : computed;
  const value = one.value === null ? words.open(one.missing) : one.unit === currency ? format.money(one.value, currency) : words.measured(one.value, one.unit, format);
  const formula = (inWords: (name: string) => string) => joined(tokensOf(one.formula).map((token) => (/^\d/.test(token) ? constant(token, format) : inWords(token))));
  const numbers = formula((token) => (Object.hasOwn(one.inputs, token) ? inNumbers(one.inputs[token]!, format) : token));
  return { label: one.label === undefined ? words.named(one.name) : `${words.named(one.name)}, ${one.label}`, value, formula: numbers, note: formula(words.named) };
}

/** A thousand in a formula is that of “a thousand cartons”, written 1000. */
const GROUPED_FROM = 10_000;

/** A number of the formula itself, with the decimal sign of the language. */
function constant(token: string, format: Format): string {
  return token.includes('.') ? format.number(Number(token), 6) : Number(token) < GROUPED_FROM ? token : format.number(Number(token), 0);
}

/** What goes into a formula, with as many decimals as make seven figures: what is shown then comes to what stands beside it. */
function inNumbers(value: number | null, format: Format): string {
  return value === null ? '?' : format.number(value, value === 0 ? 0 : Math.max(0, 6 - Math.floor(Math.log10(Math.abs(value)))));
}

/** Operators stand apart, brackets close. */
function joined(tokens: readonly string[]): string {
  return tokens.join(' ').replace(/([(⌈⌊]) /g, '$1').replace(/ ([)⌉⌋])/g, '$1');
}

function buyingSentences({ purchases, millMinimum, units }: QuoteFacts, words: QuoteWords, format: Format): string[] {
  return [
    ...purchases.flatMap((purchase) => [
      `${words.purchase(purchase, format)}.`,
      ...(units === 'inch' || format.unit === 'in' ? [`${words.purchaseInInches(purchase, format)}.`] : []),
      ...(purchase.reel ? [words.reel(purchase.reel.widthMm, purchase.reel.metres.value!, purchase.reel.kg.value!, format)] : []),
    ]),
    ...(purchases.some(({ sheet }) => sheet.grain === undefined) ? [words.grainOpen] : []),
    ...(millMinimum ? [words.millMinimum(millMinimum.tonnes, millMinimum.cartons, format)] : []),
  ];
}
