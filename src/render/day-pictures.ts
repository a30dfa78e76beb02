import { dayChart } from './day-chart.ts';
import type { DayFacts } from './day-facts.ts';
import { ticketId } from './day-report.ts';
import { createFormat } from './format.ts';
import { englishDay } from './messages/english-day.ts';
import { englishLanguage } from './messages/english-language.ts';
import type { ReportPicture } from './report-html.ts';
import { sheetScene } from './sheet-scene.ts';
import { sceneToSvg } from './svg.ts';
import { viewOfLayout } from './view-of-layout.ts';

/** The day's timeline, and the sheet on the ticket of every form whose layout is known. */
export function dayPictures(facts: DayFacts): ReportPicture[] {
  const chart = dayChart(facts, englishDay, createFormat(englishLanguage.locale));
  const sheets = facts.forms.flatMap(({ crew }, i): ReportPicture[] =>
    crew ? [{ section: ticketId(i), svg: sceneToSvg(sheetScene(viewOfLayout(crew.layout, { grain: crew.grain, figures: [] })), { idPrefix: `form${i + 1}-`, size: 'fitted' }), onPaper: true }] : [],
  );
  return [...(chart === undefined ? [] : [{ section: 'answer', svg: chart, onPaper: false }]), ...sheets];
}
