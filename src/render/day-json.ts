import type { DayFacts } from './day-facts.ts';

/** Minutes after midnight become `HH:MM`, counting on after the first day (`25:15`). */
function clock(minutes: number): string {
  const whole = Math.round(minutes);
  return `${String(Math.floor(whole / 60)).padStart(2, '0')}:${String(whole % 60).padStart(2, '0')}`;
}

function minutesOf(value: number | undefined): number | null {
  return value === undefined ? null : Math.round(value * 1000) / 1000;
}

export function dayJson(facts: DayFacts): string {
  const content = {
    format: 'blankwright-day',
    version: 1,
    order: facts.forms.map((form) => ({
      id: form.id,
      from: form.times ? clock(form.times.from) : null,
      to: form.times ? clock(form.times.to) : null,
      due: form.due === undefined ? null : clock(form.due),
      lateMinutes: minutesOf(form.late),
      changeoverMinutes: minutesOf(form.changeMinutes),
      changes: form.changes.map(({ cause, count, minutes }) => ({ cause, count, minutes: minutesOf(minutes) })),
      makereadyMinutes: minutesOf(form.makeready),
      runMinutes: minutesOf(form.run),
      sheets: form.sheets,
      units: form.units.map((ink) => ink ?? null),
    })),
    changeoverMinutes: minutesOf(facts.changeover),
    byCause: Object.fromEntries(facts.byCause.map(([cause, minutes]) => [cause, minutesOf(minutes)])),
    lateMinutes: minutesOf(facts.late),
    lowerBound: minutesOf(facts.lowerBound),
    optimal: facts.optimal,
    asListed: { changeoverMinutes: minutesOf(facts.given.changeover), lateMinutes: minutesOf(facts.given.late) },
    changeoverTable: facts.tableName ?? null,
    missing: facts.missing,
  };
  return `${JSON.stringify(content, null, 2)}\n`;
}
