import { dayChart } from './day-chart.ts';
import type { DayFacts } from './day-facts.ts';
import { ticketId } from './day-report.ts';
import { createFormat } from './format.ts';
import { englishLanguage } from './messages/english-language.ts';
import type { Language } from './messages/language.ts';
import type { ReportPicture } from './report-html.ts';
import { sheetScene } from './sheet-scene.ts';
import { sceneToSvg } from './svg.ts';
import { viewOfLayout } from './view-of-layout.ts';

/** The day's timeline, and the sheet on the ticket of every form whose layout is known. */
export function dayPictures(facts: DayFacts, { locale, day, picture: words }: Language = englishLanguage): ReportPicture[] {
  const chart = dayChart(facts, day);
  const format = createFormat(locale);
  const sheets = facts.forms.flatMap(({ crew }, i): ReportPicture[] =>
    crew ? [{ section: ticketId(i), svg: sceneToSvg(sheetScene(viewOfLayout(crew.layout, { grain: crew.grain, figures: [] }), { words, format }), { idPrefix: `form${i + 1}-`, size: 'fitted' }), onPaper: true }] : [],
  );
  return [...(chart === undefined ? [] : [{ section: 'answer', svg: chart, onPaper: false }]), ...sheets];
}
