import type { BatchCarton, BatchFacts, Saving } from '../batch-facts.ts';
import type { Format } from '../format.ts';
import { englishCompare } from './english-compare.ts';

const count = (number: number, what: string, format: Format) => `${format.number(number, 0)} ${what}${number === 1 ? '' : 's'}`;
const board = ({ boardM2 }: Saving, format: Format) => format.board(boardM2, 0);
/** `42 m², 13 kg, 55 EUR`: what of it is known, in every language. */
export const boardText = (saving: Saving, currency: string, format: Format) =>
  [board(saving, format), ...(saving.boardKg === undefined ? [] : [`${format.number(saving.boardKg, 0)} kg`]), ...(saving.money === undefined ? [] : [format.money(saving.money, currency)])].join(', ');

/** Words of a report of many cartons on many sheets. */
export const englishBatch = {
  size: englishCompare.size,
  title: ({ name, cartons, sheets }: BatchFacts, format: Format) => `${name}: ${count(cartons.length, 'carton', format)} on ${count(sheets.length, 'sheet', format)}`,
  answer: (facts: BatchFacts, format: Format) => {
    const gaining = facts.cartons.filter(({ saving }) => saving !== undefined && saving.boardM2 > 0);
    const known = facts.cartons.filter(({ saving }) => saving !== undefined);
    const unfinished = facts.complete ? '' : ' So far; the batch was ended before it was done.';
    if (facts.cartons.length === 0) return `None of ${count(facts.refused.length, 'carton', format)} could be laid out.${unfinished}`;
    if (known.length === 0) return `${count(facts.cartons.length, 'carton', format)} laid out; what a year saves is not known, since no carton has both a yearly volume and a usual sheet that holds it.${unfinished}`;
    if (gaining.length === 0) return `Not one of ${count(known.length, 'carton', format)} takes less board on another sheet than on its usual one.${unfinished}`;
    return `${format.number(gaining.length, 0)} of ${count(known.length, 'carton', format)} ${gaining.length === 1 ? 'takes' : 'take'} less board on another sheet than the usual one: ${boardText(facts.total, facts.currency, format)} a year.${unfinished}`;
  },
  headings: {
    cartons: 'Who saves what in a year',
    sheets: 'Sheet by sheet',
    changed: 'An earlier engine answered otherwise',
    setAside: 'Set aside: failed again and again',
    refused: 'Cartons that could not be used',
    caution: 'Before board is ordered',
  },
  doubtful: (number: number, format: Format) => `Drawings in doubt: ${format.number(number, 0)}`,
  cartonHead: (currency: string, money: boolean, { boardUnit: { name: area } }: Format) => ['carton', 'usual sheet', 'best sheet', 'cartons a year', 'ups now', 'ups', 'at most', `${area}/1000 now`, `${area}/1000`, `${area} a year`, ...(money ? [`${currency} a year`] : [])],
  sheetHead: (currency: string, money: boolean, { boardUnit: { name: area } }: Format) => ['sheet', 'best for', `${area} a year`, 'kg a year', ...(money ? [`${currency} a year`] : [])],
  none: 'none',
  pictured: ({ id, name, saving }: BatchCarton, currency: string, format: Format) => `${name ?? id}${saving === undefined ? '' : `: ${boardText(saving, currency, format)} a year`}`,
  more: (number: number, format: Format) => `… and ${format.number(number, 0)} more in the JSON and the page.`,
  sheetsNote: 'A year, if the sheet were bought beside the usual ones and used for the cartons that gain by it. The sheets do not add up: a carton counts once for each sheet that it gains by.',
  changed: (carton: string, sheet: string, before: number, ups: number, engine: string) => `${carton} on ${sheet}: ${before} ups before (engine ${engine}), ${ups} now; both are kept.`,
  setAside: (carton: string, sheet: string, message: string) => `${carton} on ${sheet}: ${message}`,
  refused: (id: string, reasons: string) => `${id}: ${reasons}`,
  caution: 'Figures are net board of the layouts found: makeready and running waste come on top on both sides, and a new sheet may want a new die. Knives, clearances and gripper margins are confirmed with the machine’s own manual and the die maker before a die is ordered.',
};

export type BatchWords = typeof englishBatch;
