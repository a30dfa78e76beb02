import type { CutSequence } from '../estimate/guillotine/cut-sequence.ts';
import type { CuttingFacts } from './cutting-facts.ts';
import type { Format } from './format.ts';
import type { CuttingWords } from './messages/english-cutting.ts';
import type { Language } from './messages/language.ts';
import type { NestFacts } from './nest-facts.ts';
import type { Figure, ReportSection } from './report.ts';

/** The cut list and its time, where the sheet is guillotined. */
export function cuttingSections({ cutting, ups }: NestFacts, { cutting: words }: Language, format: Format): ReportSection[] {
  if (!cutting) return [];
  const { headings, labels } = words;
  const { time, strokes, turns } = cutting;
  const minutes = (label: string, value: number | undefined): Figure[] => (value === undefined ? [] : [{ label, value: words.minutes(value, format) }]);
  return [
    {
      id: 'cutting',
      heading: headings.list,
      sentences: cutting.steps.some(({ piles }) => piles > 1) ? [words.alikeNote] : [],
      figures: cutListFigures(cutting, words, format),
    },
    {
      id: 'cutting-time',
      heading: headings.time,
      sentences: [],
      figures: [
        ...(cutting.machine === undefined ? [] : [{ label: labels.machine, value: cutting.machine }]),
        { label: labels.strokes, value: String(strokes) },
        { label: labels.turns, value: String(turns) },
        { label: labels.lift, value: words.lift(cutting, format) },
        ...minutes(labels.minutes, time.minutesPerLift),
        ...minutes(labels.perThousand, time.minutesPerThousandSheets),
        ...(time.minutesPerThousandSheets === undefined ? [] : [{ label: labels.perLabels, value: words.minutes(time.minutesPerThousandSheets / ups, format, 2) }]),
        ...minutes(labels.setUp, cutting.setUpMinutes),
      ],
    },
  ];
}

/** Step by step where to cut, and which pile. */
export function cutListFigures({ steps }: CutSequence, words: CuttingWords, format: Format): Figure[] {
  return steps.map((step, i) => ({ label: words.step(i + 1), value: words.places(step, format), note: words.pile(step, format) }));
}

/** How good the pattern is among straight cuts, and what a die would get out of the sheet. */
export function patternFigures({ exact, dieCut }: CuttingFacts, { cutting: { pattern, dieCut: die } }: Language): Figure[] {
  return [
    { label: pattern.label, value: exact ? pattern.exact : pattern.open, ...(exact && { note: pattern.meaning }) },
    { label: die.label, value: die.value(dieCut) },
  ];
}
