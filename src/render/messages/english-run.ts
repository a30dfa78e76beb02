import type { Format } from '../format.ts';
import { isOfOutlines, runTotals, type RunFacts } from '../run-facts.ts';
import { counted } from './english-counted.ts';
import type { QuoteWords } from './english-quote.ts';

/** Words of a run of versions or outlines in money. */
export const englishRun = {
  title: ({ ids, stations, numbers }: RunFacts) => (stations === undefined ? `The run in money: ${counted(ids.length, 'design')} on ${counted(numbers.length, 'form')}` : `The run in money: ${counted(ids.length, 'version')}, ${stations} up`),
  /** The price leads where there is one. */
  answer: (facts: RunFacts, quote: QuoteWords, format: Format) => {
    const { currency, cost: { costPerThousand, pricePerThousand }, ids } = facts;
    const { quantity, sheets, cost, price, boardPerThousand } = runTotals(facts);
    const money = (whole: number, perThousand: number) => `${format.money(whole, currency)} (${format.money(perThousand, currency)} per 1000)`;
    const known = cost === undefined ? (boardPerThousand === undefined ? 'cost open' : `board ${format.money(boardPerThousand, currency)} per 1000, cost open`) : `cost ${money(cost, costPerThousand.value!)}`;
    const lead = price === undefined ? known : `price ${money(price, pricePerThousand!.value!)}, ${known}`;
    return `The whole run: ${lead}; ${counted(sheets, 'sheet', format)} on ${counted(facts.numbers.length, 'form')} for ${quote.quantity(quantity, format)} of ${counted(ids.length, isOfOutlines(facts) ? 'design' : 'version')}.`;
  },
  headings: { versions: 'What each version costs', designs: 'What each design costs', forms: 'The forms and their sheets', shared: 'How it is shared', whole: 'For the run as a whole' },
  head: {
    version: 'version', design: 'design', ordered: 'ordered', made: 'off the forms', cost: 'cost', costPerThousand: 'cost per 1000', pricePerThousand: 'price per 1000', all: 'all',
    form: 'form', planned: 'pressings', good: 'good sheets', sheets: 'sheets to order', plates: 'plates', board: 'board, kg', hours: 'press, h',
  },
  open: 'open',
  form: (number: number) => `Form ${number}`,
  goodSheets: (good: number, planned: number, format: Format) => (good > planned ? `${format.number(planned, 0)} pressings by the plan; ${format.number(good, 0)} good sheets are wanted.` : `${counted(good, 'good sheet', format)} ${good === 1 ? 'is' : 'are'} wanted, as planned.`),
  shared: (facts: RunFacts, format: Format) => {
    const { planned, pressings } = runTotals(facts);
    const more = pressings > planned ? [`The plan’s ${counted(planned, 'pressing', format)} make the quantities; ${counted(pressings, 'good sheet', format)} leave them whole behind gluing and packing as well.`] : [];
    if (isOfOutlines(facts)) return [
      'By area: the board, plates, die, ink and machine time of a form are borne by the blanks on it, each in proportion to its area (openings not taken off). What is waste on the sheet is paid for by all on it.',
      'Every form is set up by itself, from the press to stripping, and wants a die of its own unless the die stands. Gluing and packing are set up for every design; each bears what it takes there.',
      'Packing material is shared by copies ordered and freight by their area; where it is said how all is packed, each design bears its own cases, pallets and freight.',
      ...more,
    ];
    return [
      'By stations: the board, plates, ink and machine time of a form are borne by the stations that print on it, each alike, all being of one area. An empty station is paid for by the others.',
      'The die is shared by copies made, gluing and packing by copies worked, packing material and freight by copies ordered.',
      'The press is made ready for every form. What follows is set up once, die and blank being the same: behind the press with the longest form, gluing and packing with the largest version.',
      ...more,
    ];
  },
};

export type RunWords = typeof englishRun;
