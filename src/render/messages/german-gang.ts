import { gangSum } from '../gang-sum.ts';
import type { GangWords } from './english-gang.ts';
import { germanCounted } from './german-counted.ts';

const whole: (value: number, format: Parameters<GangWords['answer']>[1]) => string = (value, format) => format.number(value, 0);
const drucke = (count: number, format: Parameters<GangWords['answer']>[1]) => germanCounted(count, 'Druck', 'Drucke', format);
const formen = (count: number) => germanCounted(count, 'Form', 'Formen');
const fields = { board: 'Karton', sheetGrain: 'Laufrichtung des Bogens', coating: 'Lack', foodClass: 'Lebensmittelklasse', delivery: 'Lieferung' } as const;

export const germanGang: GangWords = {
  title: ({ ids, stations }) => (stations === undefined ? `Sammelform mit ${germanCounted(ids.length, 'Zuschnitt', 'Zuschnitten')}` : `Sammelform mit ${germanCounted(ids.length, 'Sorte', 'Sorten')}, ${stations} Nutzen`),
  answer: ({ forms, pressings, cost, costs, currency, lowerBound, optimal, formsAllowed }, format) => {
    const got = `${drucke(pressings, format)} auf ${formen(forms.length)}${cost === undefined ? '' : `, Kosten ${gangSum(cost, currency, format)}${currency === undefined ? ' in der Einheit der Kosten des Auftrags' : ''}`}`;
    const bound = optimal ? `mit ${formen(formsAllowed)} ${costs ? 'kostet' : 'braucht'} nichts weniger` : `bewiesen sind mindestens ${costs ? gangSum(lowerBound, currency, format, Math.floor) : whole(lowerBound, format)}; ob es weniger gibt, ist offen`;
    return `${got}; ${bound}.`;
  },
  headings: { overs: 'Bestellt, gemacht, Mehrmenge', separate: 'Gegen einzelne Auflagen', apart: 'Warum nicht alle zusammen', assumed: 'Was angenommen wurde', caution: 'Vor dem Zusammenlegen' },
  form: (number, { pressings }, format) => `Form ${number}: ${drucke(pressings, format)}`,
  changes: (changes) => (changes === 0 ? 'Die Platten bleiben.' : `${germanCounted(changes, 'Nutzen', 'Nutzen')} der Platten ${changes === 1 ? 'ändert' : 'ändern'} sich gegenüber der vorigen Form.`),
  labels: { pressings: 'Drucke', sheet: 'Bogen' },
  stations: (numbers) => `Nutzen ${numbers}`,
  apart: ({ designs: [a, b], because, says: [first, second] }) =>
    because === 'inks' ? `${a} und ${b}: ihre Formen bräuchten ${first} Farben, die Maschine hat ${second} Werke.` : `${a} und ${b}: ${fields[because]} ${first ?? 'nicht angegeben'} und ${second ?? 'nicht angegeben'}.`,
  cuts: ({ strokes, turns }) => `An der Schneidemaschine: ${germanCounted(strokes, 'Schnitt', 'Schnitte')} und ${germanCounted(turns, 'gedrehter Stapel', 'gedrehte Stapel')} je Lage.`,
  ups: (count) => `${count} Nutzen`,
  made: (ordered, made, over, format) => `${whole(ordered, format)} bestellt, ${whole(made, format)} gemacht, Mehrmenge ${whole(over, format)}`,
  allowed: ({ least, greatest }, format) => (greatest === Infinity ? `erlaubt: Mehrmenge ab ${whole(least, format)}` : `erlaubt: Mehrmenge ${whole(least, format)} bis ${whole(greatest, format)}`),
  separate: ({ separate, forms, pressings, cost, currency }, format) => {
    if (!separate) return [];
    const apart = `Jeder Zuschnitt für sich: ${drucke(separate.pressings, format)} auf ${formen(separate.forms)}${separate.cost === undefined ? '' : `, Kosten ${gangSum(separate.cost, currency, format)}`}`;
    const less = (saved: number, what: string) => (saved === 0 ? [] : [`${what} ${saved > 0 ? 'weniger' : 'mehr'}`]);
    const by = [...less(separate.pressings - pressings, drucke(Math.abs(separate.pressings - pressings), format)), ...less(separate.forms - forms.length, germanCounted(Math.abs(separate.forms - forms.length), 'Form', 'Formen'))];
    const money = cost === undefined || separate.cost === undefined ? '' : `, Kosten ${gangSum(Math.abs(separate.cost - cost), currency, format)} ${cost <= separate.cost ? 'niedriger' : 'höher'}`;
    return [`${apart}. Die Sammelform braucht ${by.length > 0 ? by.join(' und ') : 'ebenso viele'}${money}.`];
  },
  caution: 'Nur Aufträge gleicher Kartonsorte, Laufrichtung, Lackierung, Farben, Lebensmittelklasse und Lieferung dürfen sich eine Form teilen. Einrichtebogen und Platten jeder weiteren Form kommen zu den Drucken hinzu.',
};
