import { createFormat, type Format } from './format.ts';
import type { GangFacts } from './gang-facts.ts';
import { englishGang, type GangWords } from './messages/english-gang.ts';
import { englishLanguage } from './messages/english-language.ts';
import type { Report, ReportSection } from './report.ts';

/** The report of a gang run: forms with their counts, what is made too much, what changes between forms. */
export function gangReport(facts: GangFacts, words: GangWords = englishGang, format: Format = createFormat(englishLanguage.locale)): Report {
  const { ids, quantities, overs } = facts;
  const forms = facts.forms.map((form, number): ReportSection => ({
    id: `form-${number + 1}`,
    heading: words.form(number + 1, form, format),
    sentences: form.changes === undefined ? [] : [words.changes(form.changes)],
    figures: ids.map((id, v) => ({ label: id, value: words.ups(form.counts[v]!) })).filter((_, v) => form.counts[v]! > 0),
  }));
  const sections: ReportSection[] = [
    ...forms,
    { id: 'overs', heading: words.headings.overs, sentences: [], figures: ids.map((id, v) => ({ label: id, value: words.made(quantities[v]!, quantities[v]! + overs[v]!, overs[v]!, format) })) },
    { id: 'separate', heading: words.headings.separate, sentences: words.separate(facts, format), figures: [] },
  ];
  return {
    language: englishLanguage.locale,
    title: words.title(facts),
    answer: words.answer(facts, format),
    sections: sections.filter(({ sentences, figures }) => sentences.length + figures.length > 0),
    caution: { heading: words.headings.caution, text: words.caution },
  };
}
