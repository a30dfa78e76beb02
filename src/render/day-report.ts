import type { DayFacts, DayFormFacts } from './day-facts.ts';
import { createFormat, type Format } from './format.ts';
import { crewTicket } from './handover-pages.ts';
import type { DayWords } from './messages/english-day.ts';
import { foodText } from './messages/english-food.ts';
import { englishLanguage } from './messages/english-language.ts';
import type { Language } from './messages/language.ts';
import type { Figure, Report, ReportSection } from './report.ts';

/** The order of the day, changeover by cause and, for the page, a crew ticket for every form. */
export function dayReport(facts: DayFacts, { tickets }: { readonly tickets: boolean }, language: Language = englishLanguage, format: Format = createFormat(language.locale)): Report {
  const { day: words } = language;
  const { headings } = words;
  const sections: ReportSection[] = [
    { id: 'order', heading: headings.order, sentences: [], figures: facts.forms.map((form, i) => ({ label: `${i + 1} ${form.id}`, value: words.timing(form, format), note: words.changes(form.changes, format) })) },
    { id: 'causes', heading: headings.causes, sentences: [], figures: causeFigures(facts, words, format) },
    { id: 'missing', heading: headings.missing, sentences: facts.missing.map(words.missing), figures: [] },
    { id: 'assumed', heading: headings.assumed, sentences: [...words.assumed(facts), ...facts.notes.map((issue) => language.issues.sentence(issue, format.unit))], figures: [] },
    ...(tickets ? facts.forms.map((form, i) => ticket(form, i, language, format)) : []),
  ];
  return {
    language: language.locale,
    title: words.title(facts),
    answer: words.answer(facts, format),
    sections: sections.filter(({ sentences, figures }) => sentences.length + figures.length > 0),
    caution: { heading: headings.caution, text: words.caution },
  };
}

function causeFigures({ byCause, changeover }: DayFacts, words: DayWords, format: Format): Figure[] {
  if (changeover === 0) return [];
  const row = (label: string, minutes: number): Figure => ({ label, value: words.span(minutes, format), share: minutes / changeover });
  return [...byCause.map(([cause, minutes]) => row(words.cause(cause), minutes)), row(words.total, changeover)];
}

/** A line to write on. */
const TO_FILL = '____________';

export function ticketId(index: number): string {
  return `ticket-${index + 1}`;
}

function ticket(form: DayFormFacts, index: number, language: Language, format: Format): ReportSection {
  const { day: words } = language;
  const { labels } = words;
  const { state, crew } = form;
  const rows: (readonly [string, string | undefined])[] = [
    [labels.timing, words.timing(form, format)],
    [labels.changes, words.changes(form.changes, format)],
    [labels.units, form.units.map((ink, unit) => words.unit(unit + 1, ink, ink !== undefined && form.kept.includes(ink))).join(' · ')],
    [labels.inkFamily, state.inkFamily],
    [labels.coating, state.coating ?? words.none],
    [labels.sheets, format.number(form.sheets, 0)],
    [labels.board, words.stock(form, format) || undefined],
    [labels.die, state.die],
    [labels.food, form.food && foodText(form.food, language.food)],
    [labels.note, form.note],
    ...(crew ? [] : [[labels.sheet, format.size(state.widthMm!, state.heightMm!)] as const]),
  ];
  const own = rows.flatMap(([label, value]): Figure[] => (value === undefined ? [] : [{ label, value }]));
  const toFill = [labels.good, labels.signed].map((label): Figure => ({ label, value: TO_FILL }));
  return {
    id: ticketId(index),
    heading: words.ticket(index + 1, form),
    ownPage: true,
    sentences: [...(form.washed.length > 0 ? [words.washed(form.washed)] : []), words.checks(form)],
    figures: [...own, ...layoutFigures(form, new Set(own.map(({ label }) => label)), language, format), ...toFill],
  };
}

/** What the crew ticket of a handover says of the layout, less what the day's ticket says already. */
function layoutFigures({ crew }: DayFormFacts, said: ReadonlySet<string>, { locale, handover: words, picture }: Language, format: Format): Figure[] {
  if (!crew) return [];
  const { labels } = words;
  const unknown = new Set([labels.quantity]);
  return crewTicket(crew, { locale, words, picture, format })
    .sections.filter(({ id }) => id === 'job' || id === 'sheet')
    .flatMap(({ figures }) => figures)
    .filter(({ label }) => !said.has(label) && !unknown.has(label));
}
