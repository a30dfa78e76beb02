import { boardWeight } from '../estimate/board.ts';
import { cartonsForTonnes } from '../estimate/buying.ts';
import { cheapestByQuantity, type Winner } from '../estimate/cheapest.ts';
import type { Priced } from '../estimate/cost-line.ts';
import { quoteQuantity, type QuantityQuote, type QuoteTerms } from '../estimate/quote.ts';
import { sheetsNeeded, type Route } from '../estimate/sheets-needed.ts';
import type { SheetCandidate } from '../press/sheet-candidates.ts';
import { MOST_CARTONS } from './quote-job.ts';

/** What is asked about money, besides the sheets. */
export interface CostTerms extends Omit<QuoteTerms, 'route' | 'board' | 'ownDie' | 'pricePerThousandSheets'> {
  readonly quantities: readonly number[];
  readonly route: Omit<Route, 'ups'>;
  /** g/m²; without it no cost is known. */
  readonly grammage: number | undefined;
}

/** A sheet with its ups, as far as money goes. */
export interface SheetToCost {
  readonly candidate: SheetCandidate;
  readonly ups: number;
  /** The die for this layout stands already. */
  readonly ownDie: boolean;
}

export interface SheetCosts {
  /** One a quantity: cost per thousand; null where a rate is missing or the mill makes no such lot. */
  readonly perThousand: readonly (number | null)[];
  /** Board alone, likewise. */
  readonly boardPerThousand: readonly (number | null)[];
  /** Board bought for a thousand cartons with makeready and running waste, m². */
  readonly boardM2PerThousand: readonly number[];
  readonly sheets: readonly number[];
  /** Fewest cartons for which the mill makes the sheet; undefined where it has no minimum or none is that large. */
  readonly fromCartons: number | undefined;
  readonly missing: readonly string[];
}

/** What decides between the sheets. */
export type Measure = 'money' | 'board';

export interface ComparedCosts {
  readonly measure: Measure;
  /** Parallel to the sheets. */
  readonly sheets: readonly SheetCosts[];
  readonly winners: readonly Winner[];
  /** Rates that nobody gave, of all sheets. */
  readonly missing: readonly string[];
}

/** The sheet that costs least, or takes least board, at each quantity asked. */
export function cheapestAtQuantities(sheets: readonly SheetToCost[], terms: CostTerms): (number | undefined)[] {
  const costs = sheets.map((sheet) => costsOf(sheet, terms));
  const byMoney = costs.some(({ perThousand, missing }) => missing.length === 0 && perThousand.length > 0);
  return terms.quantities.map((quantity, i) => {
    const figures = costs.map(({ perThousand, boardM2PerThousand, fromCartons = 0 }) => (byMoney ? (perThousand[i] ?? Infinity) : quantity < fromCartons ? Infinity : boardM2PerThousand[i]));
    const least = Math.min(...figures);
    return least === Infinity ? undefined : figures.indexOf(least);
  });
}

export function compareCosts(sheets: readonly SheetToCost[], terms: CostTerms): ComparedCosts {
  const costs = sheets.map((sheet) => costsOf(sheet, terms));
  const isKnown = costs.map(({ perThousand, missing }) => missing.length === 0 && perThousand.length > 0);
  const measure: Measure = isKnown.some(Boolean) ? 'money' : 'board';
  const priced = sheets.map((sheet, i): Priced => ({ ups: sheet.ups, costAt: isBeaten(sheets, i) ? () => undefined : costAt(sheet, terms, measure, costs[i].fromCartons, isKnown[i]) }));
  return { measure, sheets: costs, winners: cheapestByQuantity(priced, MOST_CARTONS), missing: [...new Set(costs.flatMap(({ missing }) => missing))] };
}

/**
 * Whether another sheet, bought at the same price and in any quantity, holds at least as many on less board: it costs less
 * at every quantity, since fewer or as many sheets pass the machines and every cost rises with sheets and board.
 */
function isBeaten(sheets: readonly SheetToCost[], index: number): boolean {
  const beaten = sheets[index];
  const area = ({ sheet }: SheetCandidate) => sheet.width * sheet.height;
  return sheets.some(({ candidate, ups, ownDie }) => {
    const sameTerms = candidate.pricePerTonne === beaten.candidate.pricePerTonne && candidate.pricePerThousand === beaten.candidate.pricePerThousand && candidate.minimumTonnes === undefined;
    const lessBoard = candidate.boughtM2 < beaten.candidate.boughtM2 && area(candidate) < area(beaten.candidate);
    return sameTerms && lessBoard && ups >= beaten.ups && (ownDie || !beaten.ownDie);
  });
}

/** The quote of one sheet at one quantity. */
export function quoteOfSheet(quantity: number, { candidate, ups, ownDie }: SheetToCost, terms: CostTerms, grammage: number): QuantityQuote {
  const { sheet, pricePerTonne, pricePerThousand } = candidate;
  return quoteQuantity(quantity, {
    ...terms,
    route: { ...terms.route, ups },
    board: { widthMm: sheet.width, heightMm: sheet.height, grammage },
    pricePerTonne: pricePerTonne ?? terms.pricePerTonne,
    pricePerThousandSheets: pricePerThousand,
    ownDie,
  });
}

function costsOf(sheet: SheetToCost, terms: CostTerms): SheetCosts {
  const { grammage, quantities } = terms;
  const needed = quantities.map((quantity) => sheetsFor(quantity, sheet, terms));
  const board = { sheets: needed, boardM2PerThousand: needed.map((count, i) => (count * sheet.candidate.boughtM2 * 1000) / quantities[i]) };
  const open = quantities.map(() => null);
  if (grammage === undefined) return { ...board, perThousand: open, boardPerThousand: open, fromCartons: undefined, missing: ['grammage'] };
  const quotes = quantities.map((quantity) => quoteOfSheet(quantity, sheet, terms, grammage));
  const fromCartons = millMinimum(sheet, terms, grammage);
  const isMade = quantities.map((quantity) => quantity >= fromCartons);
  return {
    ...board,
    perThousand: quotes.map(({ costPerThousand }, i) => (isMade[i] ? costPerThousand.value : null)),
    boardPerThousand: quotes.map(({ boardCostPerThousand }, i) => (isMade[i] ? boardCostPerThousand.value : null)),
    fromCartons: sheet.candidate.minimumTonnes === undefined ? undefined : fromCartons,
    missing: [...new Set(quotes.flatMap(({ cost }) => cost.missing))],
  };
}

/** Board bought for a thousand of so many, with makeready and running waste, m². */
export function boardM2PerThousand(sheet: Pick<SheetToCost, 'candidate' | 'ups'>, quantity: number, terms: CostTerms): number {
  return (sheetsFor(quantity, sheet, terms) * sheet.candidate.boughtM2 * 1000) / quantity;
}

function sheetsFor(quantity: number, { ups }: Pick<SheetToCost, 'ups'>, { route, waste }: CostTerms): number {
  return sheetsNeeded(quantity, { ...route, ups }, waste).sheets;
}

/** 1 where the mill has no minimum, one more than any order where none reaches it. */
function millMinimum(sheet: SheetToCost, terms: CostTerms, grammage: number): number {
  const { candidate } = sheet;
  if (candidate.minimumTonnes === undefined) return 1;
  const board = { widthMm: candidate.sheet.width, heightMm: candidate.sheet.height, grammage };
  return cartonsForTonnes(candidate.minimumTonnes, (quantity) => boardWeight(sheetsFor(quantity, sheet, terms), board).value!, MOST_CARTONS) ?? MOST_CARTONS + 1;
}

function costAt(sheet: SheetToCost, terms: CostTerms, measure: Measure, fromCartons = 1, isKnown: boolean): Priced['costAt'] {
  if (measure === 'board') return (quantity) => (quantity < fromCartons ? undefined : sheetsFor(quantity, sheet, terms) * sheet.candidate.boughtM2);
  if (!isKnown) return () => undefined;
  return (quantity) => (quantity < fromCartons ? undefined : quoteOfSheet(quantity, sheet, terms, terms.grammage!).cost.value!);
}
