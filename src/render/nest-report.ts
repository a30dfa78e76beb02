import { WASTE_CAUSES } from '../estimate/waste.ts';
import { createFormat, type Format } from './format.ts';
import { englishLanguage } from './messages/english-language.ts';
import type { Language } from './messages/language.ts';
import { cuttingSections, patternFigures } from './cutting-report.ts';
import { sourceName } from './messages/source-name.ts';
import type { NestFacts } from './nest-facts.ts';
import type { Figure, Report, ReportSection } from './report.ts';
import { roundedShares } from './shares.ts';

/** Decimals of a percent in the table of waste. */
const SHARE_DECIMALS = 1;

/** The report of one design on one sheet: the answer, why it is the answer, where the board goes, what was assumed. */
export function nestReport(facts: NestFacts, language: Language = englishLanguage, format: Format = createFormat(language.locale)): Report {
  const words = language.report;
  const sections: ReportSection[] = [
    { id: 'why', heading: words.headings.why(facts.ups), sentences: facts.leastSheet ? [words.leastSheet(facts.leastSheet, format)] : [], figures: whyFigures(facts, language, format) },
    ...strippingSections(facts, language, format),
    ...cuttingSections(facts, language, format),
    { id: 'board', heading: words.headings.board, sentences: [], figures: boardFigures(facts, language, format) },
    { id: 'bleed', heading: words.headings.bleed, sentences: [], figures: bleedFigures(facts, language, format) },
    { id: 'history', heading: words.headings.history, sentences: facts.history.map((step, i) => words.improvement(step, step.ups > (facts.history[i - 1]?.ups ?? 0), format)), figures: [] },
    { id: 'assumed', heading: words.headings.assumed, sentences: facts.assumed.map((issue) => language.issues.sentence(issue, format.unit)), figures: [] },
  ];
  return {
    language: language.locale,
    title: words.title(facts, format),
    answer: [words.answer(facts, format), ...(facts.stripping ? [language.handover.stripping.choice.lead(facts.stripping, facts.ups, format)] : [])].join(' '),
    sections: sections.filter(({ sentences, figures }) => sentences.length + figures.length > 0),
    caution: { heading: words.headings.caution, text: facts.cutting ? language.cutting.caution : words.caution },
  };
}

/** Only where a way of stripping was wished for. */
function strippingSections({ stripping, ups }: NestFacts, { handover: { stripping: { choice } } }: Language, format: Format): ReportSection[] {
  if (!stripping) return [];
  const { wish, broken } = stripping;
  return [{ id: STRIPPING_SECTION, heading: choice.heading, sentences: [choice.asks(wish, format), choice.verdict(broken, wish, format), ...choice.price(stripping, ups, format), choice.limitStays], figures: [] }];
}

export const STRIPPING_SECTION = 'stripping';

/** A limit met below that of the sheet is one under the rule for stripping. */
function stoppedFigures({ stopped, stripping, limit, ups }: NestFacts, { report, handover }: Language): Figure[] {
  if (stopped === undefined) return [];
  const value = stopped === 'limit-met' && stripping && limit && ups < limit.ups ? handover.stripping.choice.limitMet : report.stopped[stopped];
  return [{ label: report.labels.stopped, value }];
}

function limitFigures(limit: NestFacts['limit'], ups: number, { report: words }: Language, format: Format): Figure[] {
  const { labels, bounds, noLimit, difference } = words;
  if (!limit) return [{ label: labels.limit, value: noLimit }];
  return [
    { label: labels.limit, value: `${limit.ups} (${bounds[limit.by].name})`, note: bounds[limit.by].meaning },
    { label: labels.difference, value: difference(ups, limit.ups, format) },
  ];
}

function whyFigures(facts: NestFacts, language: Language, format: Format): Figure[] {
  const { report: words } = language;
  const { limit, ups, design, sheet } = facts;
  const { labels } = words;
  const sheetArea = sheet.width * sheet.height;
  return [
    ...(facts.cutting ? patternFigures(facts.cutting, language) : limitFigures(limit, ups, language, format)),
    ...(facts.cutting ? [] : [{ label: labels.source, value: sourceName(words.sources, facts.source) }, ...stoppedFigures(facts, language)]),
    ...(facts.seconds === undefined ? [] : [{ label: labels.time, value: format.duration(facts.seconds) }]),
    { label: labels.blank, value: `${format.size(design.widthMm, design.heightMm)}, ${format.area(design.areaMm2)}` },
    { label: labels.yield, value: format.percent(facts.yield), formula: `${ups} × ${format.area(design.areaMm2)} ÷ ${format.area(sheetArea, design.areaMm2)}` },
    { label: labels.gap, value: words.gap(facts, format) },
    { label: labels.bleed, value: words.bleed(facts, format) },
    { label: labels.rotations, value: facts.rotations.map((degrees) => `${degrees}°`).join(', ') },
    ...(facts.bestCellDensity === undefined ? [] : [{ label: labels.cell, value: format.percent(facts.bestCellDensity) }]),
    { label: labels.seed, value: String(facts.seed) },
  ];
}

function boardFigures({ waste, sheet, product }: NestFacts, { report: words }: Language, format: Format): Figure[] {
  const names = words.causes(product);
  const shares = roundedShares(WASTE_CAUSES.map((cause) => waste[cause]), SHARE_DECIMALS);
  const figures = WASTE_CAUSES.map((cause, i): Figure => ({ label: names[cause], value: format.percent(shares[i]!), share: shares[i]!, note: format.area(waste[cause]) }));
  const present = figures.filter((_, i) => waste[WASTE_CAUSES[i]!] > 0);
  return [...present, { label: words.labels.sheet, value: format.percent(1), note: format.area(sheet.width * sheet.height) }];
}

/** One row for each width of bleed kept, the narrowest first, then what all other edges keep. */
function bleedFigures({ bleedKept = [], bleed }: NestFacts, { report: words }: Language, format: Format): Figure[] {
  if (bleedKept.length === 0) return [];
  const rows = new Map<string, [number, number][]>();
  for (const { blanks: [a, b], keptMm } of bleedKept.toSorted((one, other) => one.keptMm - other.keptMm)) {
    const width = format.length(keptMm);
    rows.set(width, [...(rows.get(width) ?? []), [a + 1, b + 1]]);
  }
  return [...[...rows].map(([value, pairs]) => ({ label: value, value: words.facing(pairs) })), { label: format.length(bleed), value: words.otherEdges }];
}
