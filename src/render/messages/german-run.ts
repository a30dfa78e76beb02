import { isOfOutlines, runTotals } from '../run-facts.ts';
import type { RunWords } from './english-run.ts';
import { germanCounted } from './german-counted.ts';

export const germanRun: RunWords = {
  title: ({ ids, stations, numbers }) => (stations === undefined ? `Die Auflage in Geld: ${germanCounted(ids.length, 'Zuschnitt', 'Zuschnitte')} auf ${germanCounted(numbers.length, 'Form', 'Formen')}` : `Die Auflage in Geld: ${germanCounted(ids.length, 'Sorte', 'Sorten')}, ${stations} Nutzen`),
  answer: (facts, quote, format) => {
    const { currency, cost: { costPerThousand, pricePerThousand }, ids } = facts;
    const { quantity, sheets, cost, price, boardPerThousand } = runTotals(facts);
    const money = (whole: number, perThousand: number) => `${format.money(whole, currency)} (${format.money(perThousand, currency)} je 1000)`;
    const known = cost === undefined ? (boardPerThousand === undefined ? 'Kosten offen' : `Karton ${format.money(boardPerThousand, currency)} je 1000, Kosten offen`) : `Kosten ${money(cost, costPerThousand.value!)}`;
    const lead = price === undefined ? known : `Preis ${money(price, pricePerThousand!.value!)}, ${known}`;
    return `Die ganze Auflage: ${lead}; ${germanCounted(sheets, 'Bogen', 'Bogen', format)} auf ${germanCounted(facts.numbers.length, 'Form', 'Formen')} für ${quote.quantity(quantity, format)} ${isOfOutlines(facts) ? `von ${germanCounted(ids.length, 'Zuschnitt', 'Zuschnitten')}` : `in ${germanCounted(ids.length, 'Sorte', 'Sorten')}`}.`;
  },
  headings: { versions: 'Was jede Sorte kostet', designs: 'Was jeder Zuschnitt kostet', forms: 'Die Formen und ihre Bogen', shared: 'Wie geteilt wird', whole: 'Für die Auflage im Ganzen' },
  head: {
    version: 'Sorte', design: 'Zuschnitt', ordered: 'bestellt', made: 'von den Formen', cost: 'Kosten', costPerThousand: 'Kosten je 1000', pricePerThousand: 'Preis je 1000', all: 'alle',
    form: 'Form', planned: 'Drucke', good: 'Gutbogen', sheets: 'Bogen zu bestellen', plates: 'Platten', board: 'Karton, kg', hours: 'Druck, h',
  },
  open: 'offen',
  form: (number) => `Form ${number}`,
  goodSheets: (good, planned, format) => (good > planned ? `Nach Plan ${germanCounted(planned, 'Druck', 'Drucke', format)}; gebraucht werden ${germanCounted(good, 'Gutbogen', 'Gutbogen', format)}.` : `Gebraucht ${good === 1 ? 'wird' : 'werden'} ${germanCounted(good, 'Gutbogen', 'Gutbogen', format)}, wie geplant.`),
  shared: (facts, format) => {
    const { planned, pressings } = runTotals(facts);
    const more = pressings > planned ? [`Die ${germanCounted(planned, 'Druck', 'Drucke', format)} des Plans machen die Auflagen; mit ${germanCounted(pressings, 'Gutbogen', 'Gutbogen', format)} bleiben sie auch hinter Kleben und Packen ganz.`] : [];
    if (isOfOutlines(facts)) return [
      'Nach Fläche: Karton, Platten, Stanzform, Farbe und Maschinenzeit einer Form tragen die Zuschnitte auf ihr, jeder im Verhältnis seiner Fläche (Öffnungen nicht abgezogen). Was auf dem Bogen Abfall ist, zahlen alle auf ihm.',
      'Jede Form wird für sich eingerichtet, vom Druck bis zum Ausbrechen, und will eine eigene Stanzform, wenn keine vorhanden ist. Kleben und Packen werden für jeden Zuschnitt eingerichtet; jeder trägt, was er dort braucht.',
      'Packmaterial ist nach bestellten Stücken geteilt, Fracht nach deren Fläche; ist gesagt, wie gepackt wird, trägt jeder Zuschnitt seine Versandkartons, Paletten und Fracht.',
      ...more,
    ];
    return [
      'Nach Nutzen: Karton, Platten, Farbe und Maschinenzeit einer Form tragen die Nutzen auf ihr, jeder gleich viel, denn alle haben eine Fläche. Einen leeren Nutzen zahlen die anderen mit.',
      'Die Stanzform ist nach gemachten Stücken geteilt, Kleben und Packen nach durchgelaufenen, Packmaterial und Fracht nach bestellten.',
      'Die Druckmaschine wird für jede Form eingerichtet. Was folgt, wird einmal eingerichtet, denn Stanzform und Zuschnitt sind dieselben: hinter dem Druck mit der längsten Form, Kleben und Packen mit der größten Sorte.',
      ...more,
    ];
  },
};
