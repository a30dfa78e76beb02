import type { Change, ChangeCause } from '../../estimate/day/changeover.ts';
import type { DayFacts, DayFormFacts } from '../day-facts.ts';
import type { Format } from '../format.ts';
import { englishHandover } from './english-handover.ts';
import { counted } from './english-counted.ts';

/** `95 min`, and from two hours on `2 h 5 min`: in every language. */
export function spanOf(minutes: number, format: Format): string {
  const whole = Math.round(minutes);
  return minutes < 120 ? `${format.number(minutes, 1)} min` : `${Math.floor(whole / 60)} h ${whole % 60} min`;
}

/** `09:05`; after midnight with the days, `09:05 (+1 day)`. */
export function clockOf(days: (count: number) => string): (minutes: number) => string {
  return (minutes) => {
    const whole = Math.round(minutes);
    const time = `${String(Math.floor(whole / 60) % 24).padStart(2, '0')}:${String(whole % 60).padStart(2, '0')}`;
    const passed = Math.floor(whole / 1440);
    return passed === 0 ? time : `${time} (+${days(passed)})`;
  };
}

const clock = clockOf((days) => counted(days, 'day'));
const span = spanOf;

const causes: Readonly<Record<ChangeCause, string>> = {
  washUp: 'wash-ups', inkingUp: 'inking up', inkFamily: 'change of ink family', coating: 'coating', sheetSize: 'sheet size', caliperClass: 'thickness', die: 'die',
};

const COUNTED: Readonly<Partial<Record<ChangeCause, (count: number) => string>>> = {
  washUp: (count) => counted(count, 'wash-up'),
  inkingUp: (count) => `${counted(count, 'unit')} inked up`,
  caliperClass: (count) => `thickness by ${count} class${count === 1 ? '' : 'es'}`,
};

export const englishDay = {
  clock,
  span,
  title: ({ name, date, press }: DayFacts) => [name ?? 'One day’s work', press, date].filter(Boolean).join(' · '),
  answer: (facts: DayFacts, format: Format) => {
    const { forms, changeover, late, given, lowerBound, optimal } = facts;
    const [first, last] = [forms[0]!.times, forms.at(-1)!.times];
    const when = first && last ? `, ${clock(first.from)} to ${clock(last.to)}` : '';
    const less = given.changeover - changeover;
    const saved = less > 0.05 ? ` (${span(less, format)} less than in the order listed)` : less < -0.05 ? ` (${span(-less, format)} more than in the order listed, which would come later)` : '';
    const known = optimal ? `no order ${late > 0 ? 'is less late' : facts.forms.some(({ due }) => due !== undefined) ? 'in time costs less' : 'costs less'}` : `at least ${span(lowerBound, format)} is proved; whether there is less is not`;
    const time = late > 0 ? `; ${counted(forms.filter((form) => form.late > 0).length, 'form')} late, ${span(late, format)} in all` : '';
    return `${counted(forms.length, 'form')}${when}, ${span(changeover, format)} of changeover${saved}${time}; ${known}.`;
  },
  headings: { order: 'Order of the day', causes: 'Changeover by cause', missing: 'Open', assumed: 'What was assumed', caution: englishHandover.headings.caution, timeline: 'The day' },
  timing: ({ times, changeMinutes, makeready, run, sheets, due, late }: DayFormFacts, format: Format) =>
    [
      times && `${clock(times.from)}–${clock(times.to)}`,
      `changeover ${span(changeMinutes, format)}`,
      makeready !== undefined && `makeready ${span(makeready, format)}`,
      `${format.number(sheets, 0)} sheets${run === undefined ? '' : ` ${span(run, format)}`}`,
      due !== undefined && `due ${clock(due)}${late > 0 ? `, late by ${span(late, format)}` : ''}`,
    ]
      .filter(Boolean)
      .join(', '),
  changes: (changes: readonly Change[], format: Format) => (changes.length === 0 ? 'nothing changes' : changes.map(({ cause, count, minutes }) => `${COUNTED[cause]?.(count) ?? causes[cause]} ${span(minutes, format)}`).join(', ')),
  cause: (cause: ChangeCause) => causes[cause],
  total: 'changeover',
  missing: (rate: DayFacts['missing'][number]) => `${rate}: not given, so clock times are left open and due times could not be heeded.`,
  assumed: (facts: DayFacts) => [
    `Minutes of changeover: ${facts.tableName ?? 'as given with the job'}.`,
    'Units hold the inks of the form before; an ink that the next form does not want is washed out at once. Makeready of each form comes on top, whatever the order.',
    ...(facts.forms.some(({ state }) => state.inkFamily !== undefined) ? ['Ink families are recorded and a change adds its wash-up; whether an ink suits a food pack is for the responsible person.'] : []),
  ],
  ticket: (number: number, { id, times }: DayFormFacts) => `Crew ticket ${number}: ${id}${times ? `, ${clock(times.from)} to ${clock(times.to)}` : ''}`,
  checks: ({ crew, state }: DayFormFacts) => (crew ?? state.die ? englishHandover.byHand : 'Gripper edge, side lay, register and colour against the passed sheet.'),
  washed: (inks: readonly string[]) => `Wash out ${inks.join(', ')}.`,
  unit: (unit: number, ink: string | undefined, stays: boolean) => `${unit} ${ink === undefined ? 'empty' : `${ink}${stays ? ' (stays)' : ''}`}`,
  labels: {
    sheets: 'sheets to print', sheet: 'sheet', board: 'board', units: 'units', inkFamily: 'ink family', coating: 'coating', die: 'die', timing: 'time', changes: 'to change', food: 'food record', note: 'note', good: 'good sheets', signed: 'first sheet passed by',
  },
  none: 'none',
  stock: ({ board, caliper, caliperClass }: DayFormFacts, format: Format) => [board, caliper !== undefined && format.caliper(caliper), caliperClass !== undefined && `class ${caliperClass}`].filter(Boolean).join(', '),
  legend: { changeover: 'changeover', makeready: 'makeready', run: 'run', due: 'due' },
  timeline: (from: number, to: number, forms: number) => `The day: ${clock(from)} to ${clock(to)}, ${counted(forms, 'form')}`,
  caution: englishHandover.crewCaution,
};

export type DayWords = typeof englishDay;
