import { runTotals } from '../run-facts.ts';
import type { RunWords } from './english-run.ts';
import { germanCounted } from './german-counted.ts';

export const germanRun: RunWords = {
  title: ({ ids, stations }) => `Die Auflage in Geld: ${germanCounted(ids.length, 'Sorte', 'Sorten')}, ${stations} Nutzen`,
  answer: (facts, quote, format) => {
    const { currency, cost: { costPerThousand, pricePerThousand }, ids } = facts;
    const { quantity, sheets, cost, price, boardPerThousand } = runTotals(facts);
    const money = (whole: number, perThousand: number) => `${format.money(whole, currency)} (${format.money(perThousand, currency)} je 1000)`;
    const known = cost === undefined ? (boardPerThousand === undefined ? 'Kosten offen' : `Karton ${format.money(boardPerThousand, currency)} je 1000, Kosten offen`) : `Kosten ${money(cost, costPerThousand.value!)}`;
    const lead = price === undefined ? known : `Preis ${money(price, pricePerThousand!.value!)}, ${known}`;
    return `Die ganze Auflage: ${lead}; ${germanCounted(sheets, 'Bogen', 'Bogen', format)} auf ${germanCounted(facts.numbers.length, 'Form', 'Formen')} für ${quote.quantity(quantity, format)} in ${germanCounted(ids.length, 'Sorte', 'Sorten')}.`;
  },
  headings: { versions: 'Was jede Sorte kostet', forms: 'Die Formen und ihre Bogen', shared: 'Wie geteilt wird', whole: 'Für die Auflage im Ganzen' },
  head: {
    version: 'Sorte', ordered: 'bestellt', made: 'von den Formen', cost: 'Kosten', costPerThousand: 'Kosten je 1000', pricePerThousand: 'Preis je 1000', all: 'alle',
    form: 'Form', planned: 'Drucke', good: 'Gutbogen', sheets: 'Bogen zu bestellen', board: 'Karton, kg', hours: 'Druck, h',
  },
  open: 'offen',
  form: (number) => `Form ${number}`,
  goodSheets: (good, planned, format) => (good > planned ? `Nach Plan ${germanCounted(planned, 'Druck', 'Drucke', format)}; gebraucht werden ${germanCounted(good, 'Gutbogen', 'Gutbogen', format)}.` : `Gebraucht ${good === 1 ? 'wird' : 'werden'} ${germanCounted(good, 'Gutbogen', 'Gutbogen', format)}, wie geplant.`),
  shared: (facts, format) => {
    const { planned, pressings } = runTotals(facts);
    return [
      'Nach Nutzen: Karton, Platten, Farbe und Maschinenzeit einer Form tragen die Nutzen auf ihr, jeder gleich viel, denn alle haben eine Fläche. Einen leeren Nutzen zahlen die anderen mit.',
      'Die Stanzform ist nach gemachten Stücken geteilt, Kleben und Packen nach durchgelaufenen, Packmaterial und Fracht nach bestellten.',
      'Die Druckmaschine wird für jede Form eingerichtet. Was folgt, wird einmal eingerichtet, denn Stanzform und Zuschnitt sind dieselben: hinter dem Druck mit der längsten Form, Kleben und Packen mit der größten Sorte.',
      ...(pressings > planned ? [`Die ${germanCounted(planned, 'Druck', 'Drucke', format)} des Plans machen die Auflagen; mit ${germanCounted(pressings, 'Gutbogen', 'Gutbogen', format)} bleiben sie auch hinter Kleben und Packen ganz.`] : []),
    ];
  },
};
