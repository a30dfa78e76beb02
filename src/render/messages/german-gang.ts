import type { GangWords } from './english-gang.ts';

const whole: (value: number, format: Parameters<GangWords['answer']>[1]) => string = (value, format) => format.number(value, 0);
const formen = (count: number) => (count === 1 ? 'einer Form' : `${count} Formen`);
const fields = { board: 'Karton', sheetGrain: 'Laufrichtung des Bogens', coating: 'Lack', foodClass: 'Lebensmittelklasse', delivery: 'Lieferung' } as const;

export const germanGang: GangWords = {
  title: ({ ids, stations }) => (stations === undefined ? `Sammelform mit ${ids.length} Zuschnitten` : `Sammelform mit ${ids.length} ${ids.length === 1 ? 'Sorte' : 'Sorten'}, ${stations} Nutzen`),
  answer: ({ forms, pressings, cost, costs, lowerBound, optimal, formsAllowed }, format) => {
    const got = `${whole(pressings, format)} Drucke auf ${formen(forms.length)}${cost === undefined ? '' : `, Kosten ${format.number(cost, 2, true)}`}`;
    const bound = optimal ? `mit ${formen(formsAllowed)} ${costs ? 'kostet' : 'braucht'} nichts weniger` : `bewiesen sind mindestens ${format.number(lowerBound, costs ? 2 : 0)}; ob es weniger gibt, ist offen`;
    return `${got}; ${bound}.`;
  },
  headings: { overs: 'Bestellt, gemacht, darüber', separate: 'Gegen einzelne Auflagen', apart: 'Warum nicht alle zusammen', assumed: 'Was angenommen wurde', caution: 'Vor dem Zusammenlegen' },
  form: (number, { pressings }, format) => `Form ${number}: ${whole(pressings, format)} ${pressings === 1 ? 'Druck' : 'Drucke'}`,
  changes: (changes) => (changes === 0 ? 'Die Platten bleiben.' : `${changes} ${changes === 1 ? 'Platz' : 'Plätze'} der Platten ${changes === 1 ? 'ändert' : 'ändern'} sich gegenüber der vorigen Form.`),
  labels: { pressings: 'Drucke', sheet: 'Bogen' },
  stations: (numbers) => `Plätze ${numbers}`,
  apart: ({ designs: [a, b], because, says: [first, second] }) =>
    because === 'inks' ? `${a} und ${b}: ihre Formen bräuchten ${first} Farben, die Maschine hat ${second} Werke.` : `${a} und ${b}: ${fields[because]} ${first ?? 'nicht angegeben'} und ${second ?? 'nicht angegeben'}.`,
  cuts: ({ strokes, turns }) => `Geschnitten: ${strokes} Schnitte und ${turns} gedrehte Stapel je Hub.`,
  ups: (count) => `${count} Nutzen`,
  made: (ordered, made, over, format) => `${whole(ordered, format)} bestellt, ${whole(made, format)} gemacht, ${whole(over, format)} darüber`,
  allowed: ({ least, greatest }, format) => (greatest === Infinity ? `erlaubt: ab ${whole(least, format)} darüber` : `erlaubt: ${whole(least, format)} bis ${whole(greatest, format)} darüber`),
  separate: ({ separate }, format) => (separate ? [`Jeder Zuschnitt für sich: ${whole(separate.pressings, format)} Drucke auf ${formen(separate.forms)}${separate.cost === undefined ? '' : `, Kosten ${format.number(separate.cost, 2, true)}`}.`] : []),
  caution: 'Nur Aufträge gleicher Kartonsorte, Laufrichtung, Lackierung, Farben, Lebensmittelklasse und Lieferung dürfen sich eine Form teilen. Einrichtebogen und Platten jeder weiteren Form kommen zu den Drucken hinzu.',
};
