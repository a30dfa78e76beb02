import type { ChangeCause } from '../../estimate/day/changeover.ts';
import type { DayWords } from './english-day.ts';
import { clockOf, spanOf } from './english-day.ts';
import { frenchCounted } from './french-counted.ts';
import { frenchHandover } from './french-handover.ts';

const clock = clockOf((days) => frenchCounted(days, 'jour'));
const { labels } = frenchHandover;

const causes: Readonly<Record<ChangeCause, string>> = {
  washUp: 'lavages', inkingUp: 'mise en encre', inkFamily: 'changement de famille d’encres', coating: 'vernis', sheetSize: 'format de feuille', caliperClass: 'épaisseur', die: 'forme de découpe',
};

const COUNTED: Readonly<Partial<Record<ChangeCause, (count: number) => string>>> = {
  washUp: (count) => frenchCounted(count, 'lavage'),
  inkingUp: (count) => `${frenchCounted(count, 'groupe')} à encrer`,
  caliperClass: (count) => `épaisseur de ${frenchCounted(count, 'classe')}`,
};

const RATES = { 'press speed': 'vitesse de la presse', 'press makeready': 'temps de calage de la presse' } as const;

export const frenchDay: DayWords = {
  clock,
  span: spanOf,
  title: ({ name, date, press }) => [name ?? 'Une journée de presse', press, date].filter(Boolean).join(' · '),
  answer: (facts, format) => {
    const { forms, changeover, late, given, lowerBound, optimal } = facts;
    const [first, last] = [forms[0]!.times, forms.at(-1)!.times];
    const when = first && last ? `, de ${clock(first.from)} à ${clock(last.to)}` : '';
    const less = given.changeover - changeover;
    const saved = less > 0.05 ? ` (${spanOf(less, format)} de moins que dans l’ordre de la liste)` : less < -0.05 ? ` (${spanOf(-less, format)} de plus que dans l’ordre de la liste, qui finirait plus tard)` : '';
    const known = optimal ? `aucun ordre ${late > 0 ? 'n’est moins en retard' : facts.forms.some(({ due }) => due !== undefined) ? 'ne tient les délais avec moins' : 'n’en demande moins'}` : `au moins ${spanOf(lowerBound, format)}, c’est prouvé ; s’il y a moins reste ouvert`;
    const time = late > 0 ? ` ; ${frenchCounted(forms.filter((form) => form.late > 0).length, 'forme')} en retard, ${spanOf(late, format)} en tout` : '';
    return `${frenchCounted(forms.length, 'forme')}${when}, ${spanOf(changeover, format)} de changements${saved}${time} ; ${known}.`;
  },
  headings: { order: 'Ordre de la journée', causes: 'Changements par cause', missing: 'Ouvert', assumed: 'Ce qui a été supposé', caution: frenchHandover.headings.caution, timeline: 'La journée' },
  timing: ({ times, changeMinutes, makeready, run, sheets, due, late }, format) =>
    [
      times && `${clock(times.from)}–${clock(times.to)}`,
      `changement ${spanOf(changeMinutes, format)}`,
      makeready !== undefined && `calage ${spanOf(makeready, format)}`,
      `${format.number(sheets, 0)} feuilles${run === undefined ? '' : ` ${spanOf(run, format)}`}`,
      due !== undefined && `à livrer pour ${clock(due)}${late > 0 ? `, ${spanOf(late, format)} de retard` : ''}`,
    ]
      .filter(Boolean)
      .join(', '),
  changes: (changes, format) => (changes.length === 0 ? 'rien ne change' : changes.map(({ cause, count, minutes }) => `${COUNTED[cause]?.(count) ?? causes[cause]} ${spanOf(minutes, format)}`).join(', ')),
  cause: (cause) => causes[cause],
  total: 'changements',
  missing: (rate) => `${RATES[rate]} : non donné, si bien que les heures restent ouvertes et que les délais n’ont pu être respectés.`,
  assumed: (facts) => [
    `Minutes de changement : ${facts.tableName ?? 'comme données avec le travail'}.`,
    'Les groupes gardent les encres de la forme précédente ; une encre dont la forme suivante ne veut pas est lavée aussitôt. Le calage de chaque forme s’y ajoute, quel que soit l’ordre.',
    ...(facts.forms.some(({ state }) => state.inkFamily !== undefined) ? ['Les familles d’encres sont notées et un changement ajoute son lavage ; si une encre convient à un emballage alimentaire, c’est à la personne responsable d’en décider.'] : []),
  ],
  ticket: (number, { id, times }) => `Fiche de conduite ${number} : ${id}${times ? `, de ${clock(times.from)} à ${clock(times.to)}` : ''}`,
  checks: ({ crew, state }) => (crew ?? state.die ? frenchHandover.byHand : 'Côté pinces, taquet latéral, repérage et couleur contre la feuille signée.'),
  washed: (inks) => `À laver : ${inks.join(', ')}.`,
  unit: (unit, ink, stays) => `${unit} ${ink === undefined ? 'vide' : `${ink}${stays ? ' (reste)' : ''}`}`,
  labels: {
    sheets: labels.sheets, sheet: labels.sheet, board: labels.board, units: 'groupes', inkFamily: 'famille d’encres', coating: 'vernis', die: 'forme de découpe', timing: 'horaire', changes: 'à changer', food: labels.food, note: 'remarque', good: 'bonnes feuilles', signed: 'première feuille signée par',
  },
  none: 'aucun',
  stock: ({ board, caliper, caliperClass }, format) => [board, caliper !== undefined && format.caliper(caliper), caliperClass !== undefined && `classe ${caliperClass}`].filter(Boolean).join(', '),
  legend: { changeover: 'changement', makeready: 'calage', run: 'roulage', due: 'à livrer' },
  timeline: (from, to, forms) => `La journée : de ${clock(from)} à ${clock(to)}, ${frenchCounted(forms, 'forme')}`,
  caution: frenchHandover.crewCaution,
};
