import type { ChangeCause } from '../../estimate/day/changeover.ts';
import type { DayWords } from './english-day.ts';
import { clockOf, spanOf } from './english-day.ts';
import { germanCounted } from './german-counted.ts';
import { germanHandover } from './german-handover.ts';

const clock = clockOf((days) => germanCounted(days, 'Tag', 'Tage'));
const { labels } = germanHandover;

const causes: Readonly<Record<ChangeCause, string>> = {
  washUp: 'Waschen', inkingUp: 'Einfärben', inkFamily: 'Wechsel der Farbserie', coating: 'Lack', sheetSize: 'Bogenformat', caliperClass: 'Kartondicke', die: 'Stanzform',
};

const COUNTED: Readonly<Partial<Record<ChangeCause, (count: number) => string>>> = {
  washUp: (count) => germanCounted(count, 'Waschgang', 'Waschgänge'),
  inkingUp: (count) => `${germanCounted(count, 'Werk', 'Werke')} einfärben`,
  caliperClass: (count) => `Kartondicke um ${germanCounted(count, 'Klasse', 'Klassen')}`,
};

const RATES = { 'press speed': 'Druckgeschwindigkeit', 'press makeready': 'Einrichtezeit der Maschine' } as const;

export const germanDay: DayWords = {
  clock,
  span: spanOf,
  title: ({ name, date, press }) => [name ?? 'Ein Tag an der Maschine', press, date].filter(Boolean).join(' · '),
  answer: (facts, format) => {
    const { forms, changeover, late, given, lowerBound, optimal } = facts;
    const [first, last] = [forms[0]!.times, forms.at(-1)!.times];
    const when = first && last ? `, ${clock(first.from)} bis ${clock(last.to)}` : '';
    const less = given.changeover - changeover;
    const saved = less > 0.05 ? ` (${spanOf(less, format)} weniger als in der Reihenfolge der Liste)` : less < -0.05 ? ` (${spanOf(-less, format)} mehr als in der Reihenfolge der Liste, die später fertig würde)` : '';
    const known = optimal ? `keine Reihenfolge ${late > 0 ? 'ist weniger verspätet' : facts.forms.some(({ due }) => due !== undefined) ? 'hält die Termine mit weniger' : 'braucht weniger'}` : `bewiesen sind mindestens ${spanOf(lowerBound, format)}; ob es weniger gibt, ist offen`;
    const time = late > 0 ? `; ${germanCounted(forms.filter((form) => form.late > 0).length, 'Form', 'Formen')} verspätet, zusammen ${spanOf(late, format)}` : '';
    return `${germanCounted(forms.length, 'Form', 'Formen')}${when}, ${spanOf(changeover, format)} Umrüsten${saved}${time}; ${known}.`;
  },
  headings: { order: 'Reihenfolge des Tages', causes: 'Umrüsten nach Ursachen', missing: 'Offen', assumed: 'Was angenommen wurde', caution: germanHandover.headings.caution, timeline: 'Der Tag' },
  timing: ({ times, changeMinutes, makeready, run, sheets, due, late }, format) =>
    [
      times && `${clock(times.from)}–${clock(times.to)}`,
      `Umrüsten ${spanOf(changeMinutes, format)}`,
      makeready !== undefined && `Einrichten ${spanOf(makeready, format)}`,
      `${format.number(sheets, 0)} Bogen${run === undefined ? '' : ` ${spanOf(run, format)}`}`,
      due !== undefined && `fällig ${clock(due)}${late > 0 ? `, ${spanOf(late, format)} zu spät` : ''}`,
    ]
      .filter(Boolean)
      .join(', '),
  changes: (changes, format) => (changes.length === 0 ? 'nichts wechselt' : changes.map(({ cause, count, minutes }) => `${COUNTED[cause]?.(count) ?? causes[cause]} ${spanOf(minutes, format)}`).join(', ')),
  cause: (cause) => causes[cause],
  total: 'Umrüsten',
  missing: (rate) => `${RATES[rate]}: nicht angegeben, darum bleiben die Uhrzeiten offen und Termine konnten nicht beachtet werden.`,
  assumed: (facts) => [
    `Minuten für das Umrüsten: ${facts.tableName ?? 'wie mit dem Auftrag angegeben'}.`,
    'In den Werken steht die Farbe der vorigen Form; eine Farbe, die die nächste Form nicht braucht, wird sofort ausgewaschen. Das Einrichten jeder Form kommt hinzu, in welcher Reihenfolge auch immer.',
    ...(facts.forms.some(({ state }) => state.inkFamily !== undefined) ? ['Farbserien sind vermerkt, und ein Wechsel bringt sein Waschen mit; ob eine Farbe zu einer Lebensmittelpackung passt, entscheidet die verantwortliche Person.'] : []),
  ],
  ticket: (number, { id, times }) => `Laufzettel ${number}: ${id}${times ? `, ${clock(times.from)} bis ${clock(times.to)}` : ''}`,
  checks: ({ crew, state }) => (crew ?? state.die ? germanHandover.byHand : 'Greiferkante, Seitenanlage, Passer und Farbe gegen den freigegebenen Bogen.'),
  washed: (inks) => `Auswaschen: ${inks.join(', ')}.`,
  unit: (unit, ink, stays) => `${unit} ${ink === undefined ? 'leer' : `${ink}${stays ? ' (bleibt)' : ''}`}`,
  labels: {
    sheets: labels.sheets, sheet: labels.sheet, board: labels.board, units: 'Farbwerke', inkFamily: 'Farbserie', coating: 'Lack', die: 'Stanzform', timing: 'Zeit', changes: 'zu wechseln', food: labels.food, note: 'Notiz', good: 'gute Bogen', signed: 'erster Bogen freigegeben von',
  },
  none: 'keiner',
  stock: ({ board, caliper, caliperClass }, format) => [board, caliper !== undefined && format.caliper(caliper), caliperClass !== undefined && `Klasse ${caliperClass}`].filter(Boolean).join(', '),
  legend: { changeover: 'Umrüsten', makeready: 'Einrichten', run: 'Fortdruck', due: 'fällig' },
  timeline: (from, to, forms) => `Der Tag: ${clock(from)} bis ${clock(to)}, ${germanCounted(forms, 'Form', 'Formen')}`,
  caution: germanHandover.crewCaution,
};
