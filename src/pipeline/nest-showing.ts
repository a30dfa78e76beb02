import { toMillimetres } from '../base/units.ts';
import { ringArea } from '../geometry/point.ts';
import { bleedKept } from '../estimate/bleed-kept.ts';
import { wasteOf } from '../estimate/waste.ts';
import { createFormat, type Format } from '../render/format.ts';
import { historyChart } from '../render/history-chart.ts';
import { englishLanguage } from '../render/messages/english-language.ts';
import type { LayoutFile } from '../layout/layout-file.ts';
import type { CuttingFacts } from '../render/cutting-facts.ts';
import { cutPicture } from '../render/cut-picture.ts';
import type { Language } from '../render/messages/language.ts';
import type { Improvement, NestFacts, StrippingFacts } from '../render/nest-facts.ts';
import type { NearMissFacts } from '../render/near-miss-facts.ts';
import { NEAR_MISS_SECTION, nearMissPicture, nearMissSection } from '../render/near-miss-section.ts';
import { nestReport, STRIPPING_SECTION } from '../render/nest-report.ts';
import type { Report } from '../render/report.ts';
import { reportHtml, type ReportPicture } from '../render/report-html.ts';
import type { Scene } from '../render/scene.ts';
import { sheetScene } from '../render/sheet-scene.ts';
import { sceneToSvg } from '../render/svg.ts';
import { titleFigures } from '../render/title-figures.ts';
import { viewOfLayout } from '../render/view-of-layout.ts';
import type { NestedLayout, NestOutcome } from './nest.ts';
import type { StrippingAnswer } from './solve-with-stripping.ts';

/** What the host knows besides the outcome: what blanks are called, how long it took. */
export interface Occasion {
  readonly name: string;
  readonly seed: number;
  readonly seconds?: number | undefined;
  /** Improvements with the moments at which they came. */
  readonly history: readonly Improvement[];
  /** Limits with the moments from which they were known. */
  readonly limits?: NestFacts['limits'];
  readonly cutting?: CuttingFacts | undefined;
  readonly leastSheet?: NestFacts['leastSheet'];
  /** Near misses of the first layout, where they were asked for. */
  readonly nearMisses?: NearMissFacts | undefined;
}

/** One layout of an outcome as facts for the report. */
export function factsOf({ problem, limit, notes, solution, design, stripping }: NestOutcome, { file, ranked }: NestedLayout, { name, seed, seconds, history, limits, cutting, leastSheet }: Occasion): NestFacts {
  const [part] = problem.parts;
  const areaMm2 = ringArea(part!.outline) / 1e6;
  const [widthMm, heightMm] = [0, 1].map((axis) => Math.max(...design.outline.map((point) => point[axis]!)));
  const { sheet, rules } = file;
  const ups = file.placements.length;
  return {
    design: { name, widthMm: widthMm!, heightMm: heightMm!, areaMm2 },
    product: 'blank',
    sheet,
    ups,
    limit: { ups: limit.ups, by: limit.by },
    yield: (areaMm2 * ups) / (sheet.width * sheet.height),
    gap: rules.gap,
    ...(rules.commonKnife && { ruleSavedMm: toMillimetres(ranked.figures.sharedRule) }),
    bleed: rules.bleed,
    bleedMeeting: rules.bleedMeeting,
    rotations: design.rotations,
    source: String(file.result?.['source'] ?? ''),
    stopped: solution.stopped,
    seed,
    ...(seconds !== undefined && { seconds }),
    ...(solution.bestCell && { bestCellDensity: solution.bestCell.density }),
    waste: wasteOf(file),
    assumed: notes,
    ...(rules.bleedMeeting === 'cut' && { bleedKept: bleedKept(file) }),
    history,
    ...(limits && { limits }),
    ...(leastSheet && { leastSheet }),
    cutting,
    ...(stripping && { stripping: strippingFacts(stripping, file) }),
  };
}

/** Each layout says itself what it breaks. */
function strippingFacts({ wish, other, limit, ...first }: StrippingAnswer, { result }: LayoutFile): StrippingFacts {
  const { broken } = (result?.['stripping'] as Pick<StrippingAnswer, 'broken'> | undefined) ?? first;
  return { wish, broken, ...(other && { other: { ups: other.file.placements.length, broken: other.broken } }), ...(limit && { limit: limit.ups }) };
}

/** The other layout beside the answer: what the rule costs, or how it could be kept. */
function strippingPictures({ stripping, sheetGrain }: NestOutcome, { handover, picture }: Language, format: Format): ReportPicture[] {
  const other = stripping?.other;
  if (!other) return [];
  const title = handover.stripping.choice.other(other.file.placements.length, other.broken.length === 0);
  const view = viewOfLayout(other.file, { grain: sheetGrain, figures: [{ label: handover.stripping.choice.heading, value: title }] });
  return [{ section: STRIPPING_SECTION, svg: sceneToSvg(sheetScene(view, { words: picture, format })), onPaper: true }];
}

/** The section stands before what was assumed. */
export function withNearMisses(report: Report, facts: NearMissFacts | undefined, language: Language): Report {
  if (!facts) return report;
  const at = report.sections.findIndex(({ id }) => id === 'assumed');
  return { ...report, sections: report.sections.toSpliced(at < 0 ? report.sections.length : at, 0, nearMissSection(facts, language)) };
}

export function nearMissPictures(facts: NearMissFacts | undefined, language: Language): ReportPicture[] {
  const svg = facts && nearMissPicture(facts, language);
  return svg === undefined ? [] : [{ section: NEAR_MISS_SECTION, svg, onPaper: false }];
}

export interface Showing {
  readonly report: Report;
  readonly scene: Scene;
  readonly svg: string;
  /** Undefined when there is nothing to chart. */
  readonly chart: string | undefined;
  /** The cuts on the sheet, where it is guillotined. */
  readonly cuts: string | undefined;
  readonly html: () => string;
}

/** Report and picture of one layout. */
export function showNest(outcome: NestOutcome, layout: NestedLayout, occasion: Occasion, language: Language = englishLanguage): Showing {
  const format = createFormat(language.locale);
  const facts = factsOf(outcome, layout, occasion);
  const report = withNearMisses(nestReport(facts, language, format), occasion.nearMisses, language);
  const view = viewOfLayout(layout.file, { grain: outcome.sheetGrain, figures: titleFigures(facts, language.report, format) });
  const scene = sheetScene(view, { words: language.picture, format });
  const svg = sceneToSvg(scene);
  const chart = historyChart(facts, language.report, format);
  const cuts = facts.cutting && cutPicture(layout.file, facts.cutting, language.cutting, format);
  const pictures = [
    { section: 'answer', svg, onPaper: true },
    ...strippingPictures(outcome, language, format),
    ...(cuts === undefined ? [] : [{ section: 'cutting', svg: cuts, onPaper: true }]),
    ...(chart === undefined ? [] : [{ section: 'history', svg: chart, onPaper: false }]),
    ...nearMissPictures(occasion.nearMisses, language),
  ];
  return { report, scene, svg, chart, cuts, html: () => reportHtml(report, pictures) };
}
