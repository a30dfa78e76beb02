import type { Format } from './format.ts';
import { createFormat } from './format.ts';
import { englishLanguage } from './messages/english-language.ts';
import type { Language } from './messages/language.ts';
import { upsOf, type ReelFacts } from './reel-facts.ts';
import type { Figure, Report } from './report.ts';
import type { SheetView } from './sheet-view.ts';

/** The cut-off, how short it could be at best, what lies on it and what a quantity takes of the reel. */
export function reelReport(facts: ReelFacts, { locale, reel: words, report }: Language = englishLanguage, format: Format = createFormat(locale)): Report {
  const { labels } = words;
  const { cutOff, leastCutOff, reelWidth, designs } = facts;
  const length: Figure[] = [
    { label: labels.cutOff, value: format.length(cutOff), note: words.alongMachine },
    { label: labels.least, value: format.length(leastCutOff), note: words.leastMeans },
    { label: labels.difference, value: cutOff > leastCutOff ? words.open(cutOff - leastCutOff, cutOff / leastCutOff - 1, format) : words.closed },
    { label: labels.yield, value: format.percent(facts.yield) },
    { label: labels.reelPerThousand, value: `${format.number(cutOff, 2)} m`, formula: words.perThousand(cutOff, format), note: words.perThousandMeans(upsOf(facts), format) },
    { label: labels.areaPerThousand, value: format.board((cutOff * reelWidth) / 1000, 1), formula: `${format.length(cutOff)} × ${format.length(reelWidth)} × 1000` },
    { label: labels.stopped, value: report.stopped[facts.stopped] },
    { label: labels.time, value: format.duration(facts.seconds) },
  ];
  return {
    language: locale,
    title: words.title(facts, format),
    answer: words.answer(facts, format),
    sections: [
      { id: 'length', heading: words.headings.length, sentences: [], figures: length },
      {
        id: 'blanks', heading: words.headings.blanks, sentences: [], figures: [],
        table: { head: words.columns, wordColumns: 1, rows: designs.map(({ id, ups, widthMm, heightMm, rotations }) => [id, String(ups), format.size(widthMm, heightMm), rotations.map((degrees) => `${degrees}°`).join(', ')]) },
      },
      { id: 'assumed', heading: words.headings.assumed, sentences: words.assumed(facts, format), figures: [] },
    ],
    caution: { heading: words.headings.caution, text: words.caution },
  };
}

/** The cells of the picture's title block, the most important first. */
export function reelTitleFigures(facts: ReelFacts, { locale, reel: words }: Language = englishLanguage, format: Format = createFormat(locale)): SheetView['figures'] {
  const { labels } = words;
  return [
    { label: labels.cutOff, value: format.length(facts.cutOff) },
    { label: labels.least, value: format.length(facts.leastCutOff) },
    { label: labels.reelWidth, value: format.length(facts.reelWidth) },
    { label: labels.ups, value: String(upsOf(facts)) },
    { label: labels.yield, value: format.percent(facts.yield) },
    { label: labels.gap, value: format.length(facts.gap) },
  ];
}
