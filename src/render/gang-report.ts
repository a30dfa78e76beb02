import { cutPicture } from './cut-picture.ts';
import { cutListFigures } from './cutting-report.ts';
import { createFormat, type Format } from './format.ts';
import type { GangFacts, GangForm } from './gang-facts.ts';
import type { GangWords } from './messages/english-gang.ts';
import { englishLanguage } from './messages/english-language.ts';
import type { Language } from './messages/language.ts';
import { ranges } from './ranges.ts';
import type { Figure, Report, ReportSection } from './report.ts';
import type { ReportPicture } from './report-html.ts';
import { sheetScene } from './sheet-scene.ts';
import { sceneToSvg, type SvgOptions } from './svg.ts';
import { viewOfLayout } from './view-of-layout.ts';

/** The report of a gang run: forms with their counts, what is made too much, what changes between forms. */
export function gangReport(facts: GangFacts, language: Language = englishLanguage, format: Format = createFormat(language.locale)): Report {
  const { gang: words, cutting } = language;
  const { ids, quantities, overs } = facts;
  const forms = facts.forms.map((form, number): ReportSection => ({
    id: formId(number),
    heading: words.form(number + 1, form, format),
    sentences: [...(form.changes === undefined ? [] : [words.changes(form.changes)]), ...(form.cuts ? [words.cuts(form.cuts)] : [])],
    figures: ids.map((id, v) => ({ label: id, value: words.ups(form.counts[v]!), ...stationsOf(id, form, words) })).filter((_, v) => form.counts[v]! > 0).concat(form.cuts ? cutListFigures(form.cuts, cutting, format) : []),
  }));
  const sections: ReportSection[] = [
    ...forms,
    { id: 'overs', heading: words.headings.overs, sentences: [], figures: ids.map((id, v) => ({ label: id, value: words.made(quantities[v]!, quantities[v]! + overs[v]!, overs[v]!, format), ...allowedOf(facts, v, words, format) })) },
    { id: 'separate', heading: words.headings.separate, sentences: words.separate(facts, format), figures: [] },
    { id: 'apart', heading: words.headings.apart, sentences: (facts.apart ?? []).map(words.apart), figures: [] },
    { id: 'assumed', heading: words.headings.assumed, sentences: (facts.notes ?? []).map((issue) => language.issues.sentence(issue, format.unit)), figures: [] },
  ];
  return {
    language: language.locale,
    title: words.title(facts),
    answer: words.answer(facts, format),
    sections: sections.filter(({ sentences, figures }) => sentences.length + figures.length > 0),
    caution: { heading: words.headings.caution, text: facts.forms.some(({ cuts }) => cuts) ? `${words.caution} ${cutting.caution}` : words.caution },
  };
}

function formId(number: number): string {
  return `form-${number + 1}`;
}

/** The limits of overs that were kept. */
function allowedOf({ oversLimits }: GangFacts, version: number, words: GangWords, format: Format): Pick<Figure, 'note'> {
  const limits = oversLimits?.[version];
  return limits && (limits.least > 0 || limits.greatest < Infinity) ? { note: words.allowed(limits, format) } : {};
}

/** Where a design stands on a form of which that is known. */
function stationsOf(id: string, { layout, prints = layout?.placements.map(({ design }) => design) }: GangForm, words: GangWords): Pick<Figure, 'note'> {
  if (!prints) return {};
  return { note: words.stations(ranges(prints.flatMap((printed, station) => (printed === id ? [station + 1] : [])))) };
}

/** The sheet of every form whose layout is known. */
export function gangPictures({ forms }: GangFacts, language: Language = englishLanguage): ReportPicture[] {
  return forms.flatMap((form, number): ReportPicture[] => {
    if (!form.layout) return [];
    const section = formId(number);
    const sheet = { section, svg: formSvg(form, language, { idPrefix: `${section}-`, size: 'fitted' })!, onPaper: true };
    return form.cuts ? [sheet, { section, svg: cutPicture(form.layout, form.cuts, language.cutting, createFormat(language.locale), `${section}-cuts-`), onPaper: true }] : [sheet];
  });
}

/** Undefined where no layout is known. */
export function formSvg({ layout, pressings }: GangForm, { locale, gang: words, picture }: Language = englishLanguage, options?: SvgOptions): string | undefined {
  if (!layout) return undefined;
  const format = createFormat(locale);
  const ups = layout.designs.map(({ id }) => ({ label: id, value: words.ups(layout.placements.filter(({ design }) => design === id).length) })).slice(0, MOST_CELLS);
  const figures = [{ label: words.labels.pressings, value: format.number(pressings, 0) }, { label: words.labels.sheet, value: format.size(layout.sheet.width, layout.sheet.height) }, ...ups];
  return sceneToSvg(sheetScene(viewOfLayout(layout, { figures }), { words: picture, format }), options);
}

/** Designs named in the title block. */
const MOST_CELLS = 6;
