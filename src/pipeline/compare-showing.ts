import type { Issue } from '../base/issue.ts';
import { strippingWish } from '../press/stripping.ts';
import { boardChart, costChart, stackedCharts } from '../render/compare-charts.ts';
import { winnerAt, type CompareFacts, type ComparedSheetFacts } from '../render/compare-facts.ts';
import { compareReport } from '../render/compare-report.ts';
import { createFormat } from '../render/format.ts';
import { englishLanguage } from '../render/messages/english-language.ts';
import type { Language } from '../render/messages/language.ts';
import type { NearMissFacts } from '../render/near-miss-facts.ts';
import { reportHtml } from '../render/report-html.ts';
import { sheetThumbnails } from '../render/sheet-thumbnails.ts';
import type { CompareJob, Comparison } from './compare.ts';
import { quoteOfSheet, boardM2PerThousand as boardAt } from './compare-costs.ts';
import { nearMissPictures, withNearMisses } from './nest-showing.ts';
import { strippingNotes } from './stripping-choice.ts';

/** Points of a curve of cost over quantity. */
const CURVE_POINTS = 48;
/** The chart goes on beyond the quantities asked by this factor, both ways. */
const BEYOND = 2;
/** And on to the last change of the winner with a little more, but no further than so many times the largest quantity. */
const BEYOND_CHANGE = 1.5;
const FARTHEST = 100;
/** Sheets pictured: the usual one, the winners, then those with least board. */
const PICTURED = 12;

/** What of a job the facts are made from; without machines nothing is said of stripping again. */
type ShownJob = Pick<CompareJob, 'terms' | 'toleranceMm'> & Partial<Pick<CompareJob, 'standingDie' | 'stripping' | 'machines'>>;

export function factsOfComparison(name: string, job: ShownJob, comparison: Comparison, notes: readonly Issue[]): CompareFacts {
  const { terms, standingDie, toleranceMm } = job;
  const lastChange = comparison.winners.at(-1)?.fromQuantity ?? 0;
  return {
    name,
    quantities: terms.quantities,
    currency: terms.currency,
    ratesName: terms.rates.name,
    measure: comparison.measure,
    sheets: comparison.compared.map((sheet, i): ComparedSheetFacts => {
      const { candidate, ups, upperBound, searched, boardM2PerThousand, leastSheet, sheetToOrder, layout, ownDie } = sheet;
      const costs = comparison.sheets[i];
      return {
        sheet: candidate.sheet,
        grain: candidate.grain,
        origin: candidate.origin,
        ups,
        upperBound,
        searched,
        boardM2PerThousand,
        leastSheet,
        sheetToOrder,
        layout,
        die: ownDie && standingDie ? { number: standingDie.number } : undefined,
        boardM2WithWaste: costs.boardM2PerThousand,
        sheetsToOrder: costs.sheets,
        costPerThousand: costs.perThousand,
        boardCostPerThousand: costs.boardPerThousand,
        fromCartons: costs.fromCartons,
        boardCurve: curveOf(terms.quantities, lastChange, costs.fromCartons, (quantity) => boardAt({ candidate, ups }, quantity, terms)).map(({ quantity, cost }) => ({ quantity, m2: cost })),
        curve: costs.missing.length > 0 || terms.grammage === undefined ? [] : curveOf(terms.quantities, lastChange, costs.fromCartons, (quantity) => quoteOfSheet(quantity, sheet, terms, terms.grammage!).costPerThousand.value!),
      };
    }),
    winners: comparison.winners,
    leastBoard: comparison.leastBoard,
    skipped: comparison.skipped.length,
    missing: comparison.missing,
    toleranceMm,
    route: terms.route,
    wasteTable: terms.waste.name,
    notes: [...notes, ...strippingNotes(strippingWish(job.stripping, job.machines?.cutter))],
  };
}

/** Quantities in even steps of their logarithm. */
function curveOf(quantities: readonly number[], lastChange: number, fromCartons = 1, costAt: (quantity: number) => number): ComparedSheetFacts['curve'] {
  if (quantities.length === 0) return [];
  const least = Math.max(1, Math.min(...quantities) / BEYOND);
  const largest = Math.max(...quantities);
  const most = Math.max(BEYOND * largest, Math.min(BEYOND_CHANGE * lastChange, FARTHEST * largest));
  const steps = Array.from({ length: CURVE_POINTS }, (_, i) => Math.round(least * (most / least) ** (i / (CURVE_POINTS - 1))));
  return [...new Set(steps)].filter((quantity) => quantity >= fromCartons).map((quantity) => ({ quantity, cost: costAt(quantity) }));
}

/** The charts as one SVG, and the page with pictures of the sheets. */
export function showComparison(facts: CompareFacts, misses?: NearMissFacts, language: Language = englishLanguage, format = createFormat(language.locale)) {
  const words = language.compare;
  const report = withNearMisses(compareReport(facts, language, format), misses, language);
  const cost = costChart(facts, words, format);
  const board = boardChart(facts, words, format);
  const wanted = [...new Set([0, ...facts.quantities.map((quantity) => winnerAt(facts, quantity)), facts.leastBoard, ...facts.winners.map(({ candidate }) => candidate), ...byBoard(facts)])];
  const pictured = wanted.filter((index) => index !== undefined).slice(0, PICTURED);
  const marked = new Set([...facts.quantities.map((quantity) => winnerAt(facts, quantity)), ...(facts.quantities.length === 0 ? [facts.leastBoard] : [])]);
  const thumbnails = () => sheetThumbnails(words.chart.pictures, pictured.map((index) => ({ layout: facts.sheets[index].layout, caption: words.thumbnail(facts.sheets[index], format), marked: marked.has(index) })));
  return {
    report,
    svg: () => stackedCharts(words.title(facts), [...(cost === undefined ? [] : [cost]), board]),
    html: () =>
      reportHtml(report, [
        ...(cost === undefined ? [] : [{ section: 'costs', svg: cost, onPaper: false }]),
        { section: 'sheets', svg: board, onPaper: false },
        { section: 'pictures', svg: thumbnails(), onPaper: false },
        ...nearMissPictures(misses, language),
      ]),
  };
}

function byBoard({ sheets }: CompareFacts): number[] {
  return [...sheets.keys()].toSorted((a, b) => sheets[a].boardM2PerThousand - sheets[b].boardM2PerThousand);
}
