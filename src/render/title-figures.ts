import type { BoundName } from '../layout/problem.ts';
import type { Format } from './format.ts';
import type { ReportWords } from './messages/words.ts';
import type { NestFacts } from './nest-facts.ts';
import type { SheetView } from './sheet-view.ts';

/** The cells of a picture's title block for one design on one sheet, the most important first. */
export function titleFigures(facts: NestFacts, words: ReportWords, format: Format): SheetView['figures'] {
  const { labels } = words;
  const bound = (limit: { readonly ups: number; readonly by: BoundName }) => `${limit.ups} (${words.bounds[limit.by].name})`;
  return [
    { label: words.axes.ups, value: String(facts.ups) },
    { label: labels.atMost, value: facts.limit ? bound(facts.limit) : words.noLimit },
    { label: labels.yield, value: format.percent(facts.yield) },
    { label: labels.sheet, value: format.size(facts.sheet.width, facts.sheet.height) },
    { label: labels.gap, value: format.length(facts.gap) },
    { label: labels.bleed, value: format.length(facts.bleed) },
    { label: labels.source, value: words.sources[facts.source] ?? facts.source },
    { label: labels.design, value: facts.design.name },
    { label: labels.blank, value: format.size(facts.design.widthMm, facts.design.heightMm) },
    { label: labels.seed, value: String(facts.seed) },
  ];
}
