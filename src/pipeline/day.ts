import { CHANGE_CAUSES, changesBetween, inksKept, minutesOf, unitsFor, type PressState } from '../estimate/day/changeover.ts';
import type { OrderProblem } from '../estimate/day/order.ts';
import { planOrder } from '../estimate/day/plan-day.ts';
import { runningMinutes } from '../estimate/machine-time.ts';
import { sheetGrainAxis } from '../press/grain.ts';
import type { DayFacts, DayFormFacts } from '../render/day-facts.ts';
import { dieRules } from '../render/die-rules.ts';
import { handoverFacts, type HandoverFacts } from '../render/handover-facts.ts';
import { viewOfLayout } from '../render/view-of-layout.ts';
import type { DayForm, DayJob } from './day-job.ts';

/** The day's forms in the order that comes least late and costs least changeover, with times where speeds are known. */
export function planDay(job: DayJob): DayFacts {
  const { forms, table, before, start } = job;
  const missing: DayFacts['missing'] = [...(forms.some(({ speed }) => speed === undefined) ? ['press speed'] as const : []), ...(forms.some(({ makereadyMinutes }) => makereadyMinutes === undefined) ? ['press makeready'] as const : [])];
  const timed = missing.length === 0;
  const states = forms.map(({ state }) => state);
  const minutes = (from: PressState | undefined, to: PressState) => minutesOf(changesBetween(from, to, table));
  const problem: OrderProblem = {
    first: states.map((to) => minutes(before, to)),
    between: states.map((from) => states.map((to) => minutes(from, to))),
    busy: forms.map((form) => (timed ? form.makereadyMinutes! + runningMinutes(form.sheets, form.speed!) : 0)),
    due: forms.map(({ due }) => (timed && due !== undefined ? due - start : undefined)),
  };
  const { order, changeover, late, lowerBound, optimal, given } = planOrder(problem);
  const placed = placeForms(order.map((form) => forms[form]!), job, timed);
  return {
    name: job.name,
    date: job.date,
    press: job.press?.name,
    tableName: table.name,
    start,
    forms: placed,
    changeover,
    byCause: CHANGE_CAUSES.map((cause) => [cause, placed.flatMap(({ changes }) => changes).reduce((sum, change) => sum + (change.cause === cause ? change.minutes : 0), 0)] as const).filter(([, sum]) => sum > 0),
    late,
    lowerBound,
    optimal,
    given,
    missing,
    notes: job.notes,
  };
}

function placeForms(forms: readonly DayForm[], { table, before, start, press, date }: DayJob, timed: boolean): DayFormFacts[] {
  const needed = Math.max(press?.units ?? 0, before?.inks.length ?? 0, ...forms.map(({ state }) => state.inks.length));
  let units: readonly (string | undefined)[] = Array.from({ length: needed }, (_, unit) => before?.inks[unit]);
  let last = before;
  let now = start;
  return forms.map((form): DayFormFacts => {
    const { id, state, sheets, caliper, board, due, speed, food, note } = form;
    const changes = changesBetween(last, state, table);
    const changeMinutes = minutesOf(changes);
    const kept = inksKept(last, state);
    const washed = last?.inks.filter((ink) => !kept.includes(ink)) ?? [];
    units = unitsFor(units, kept, state.inks);
    const makeready = form.makereadyMinutes;
    const run = speed === undefined ? undefined : runningMinutes(sheets, speed);
    const times = timed ? { from: now, to: now + changeMinutes + makeready! + run! } : undefined;
    now = times?.to ?? now;
    last = state;
    return {
      id, state, sheets, caliper, changes, changeMinutes, kept, washed, units, makeready, run, times, due, food, note,
      caliperClass: state.caliperClass === undefined ? undefined : table.caliperClasses[state.caliperClass]!.name,
      board: board?.name ?? board?.grade,
      late: times && due !== undefined ? Math.max(0, times.to - due) : 0,
      crew: crewFacts(form, date),
    };
  });
}

function crewFacts({ layout, board, sheets }: DayForm, date: string | undefined): HandoverFacts | undefined {
  if (!layout) return undefined;
  const grain = board?.sheetGrain && sheetGrainAxis(board.sheetGrain, layout.sheet);
  const view = viewOfLayout(layout, { grain, figures: [] });
  return handoverFacts(layout, view, dieRules(view), { board, grain, sheets, date });
}
