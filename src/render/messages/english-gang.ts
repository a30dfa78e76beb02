import type { CutSequence } from '../../estimate/guillotine/cut-sequence.ts';
import type { Format } from '../format.ts';
import type { ApartReason, GangFacts, GangForm } from '../gang-facts.ts';
import { gangSum } from '../gang-sum.ts';
import { counted } from './english-counted.ts';

const whole = (value: number, format: Format) => format.number(value, 0);

const fields: Readonly<Record<Exclude<ApartReason, 'inks'>, string>> = { board: 'board', sheetGrain: 'grain of the sheet', coating: 'coating', foodClass: 'food class', delivery: 'delivery' };

export const englishGang = {
  title: ({ ids, stations }: GangFacts) => (stations === undefined ? `Gang run of ${counted(ids.length, 'design')}` : `Gang run of ${counted(ids.length, 'version')}, ${stations} up`),
  answer: (facts: GangFacts, format: Format) => {
    const { forms, pressings, cost, costs, currency, lowerBound, optimal } = facts;
    const got = `${counted(pressings, 'pressing', format)} on ${counted(forms.length, 'form')}${cost === undefined ? '' : `, cost ${gangSum(cost, currency, format)}${currency === undefined ? ' in units of the job’s costs' : ''}`}`;
    const bound = optimal ? `nothing ${costs ? 'costs' : 'takes'} less with ${counted(facts.formsAllowed, 'form')} allowed` : `at least ${costs ? gangSum(lowerBound, currency, format, Math.floor) : whole(lowerBound, format)} is proved; whether there is less is not`;
    return `${got}; ${bound}.`;
  },
  headings: { overs: 'Ordered, made, over', separate: 'Against separate runs', apart: 'Why not all share', assumed: 'What was assumed', caution: 'Before it is ganged' },
  form: (number: number, { pressings }: GangForm, format: Format) => `Form ${number}: ${counted(pressings, 'pressing', format)}`,
  changes: (changes: number) => (changes === 0 ? 'Plates stay as they are.' : `${counted(changes, 'station')} of the plates change${changes === 1 ? 's' : ''} from the form before.`),
  labels: { pressings: 'pressings', sheet: 'sheet' },
  stations: (numbers: string) => `stations ${numbers}`,
  apart: ({ designs: [a, b], because, says: [first, second] }: NonNullable<GangFacts['apart']>[number]) =>
    because === 'inks' ? `${a} and ${b}: their forms would need ${first} inks, the press has ${second} units.` : `${a} and ${b}: ${fields[because]} ${first ?? 'not given'} and ${second ?? 'not given'}.`,
  cuts: ({ strokes, turns }: CutSequence) => `Guillotined: ${counted(strokes, 'stroke')} and ${counted(turns, 'turned pile')} a lift.`,
  ups: (count: number) => `${count} up`,
  made: (ordered: number, made: number, over: number, format: Format) => `${whole(ordered, format)} ordered, ${whole(made, format)} made, ${whole(over, format)} over`,
  allowed: ({ least, greatest }: { least: number; greatest: number }, format: Format) => (greatest === Infinity ? `allowed: from ${whole(least, format)} over` : `allowed: ${whole(least, format)} to ${whole(greatest, format)} over`),
  separate: ({ separate, forms, pressings, cost, currency }: GangFacts, format: Format) => {
    if (!separate) return [];
    const apart = `Each design by itself: ${counted(separate.pressings, 'pressing', format)} on ${counted(separate.forms, 'form')}${separate.cost === undefined ? '' : `, cost ${gangSum(separate.cost, currency, format)}`}`;
    const less = (saved: number, what: string) => (saved === 0 ? [] : [`${what} ${saved > 0 ? 'fewer' : 'more'}`]);
    const by = [...less(separate.pressings - pressings, counted(Math.abs(separate.pressings - pressings), 'pressing', format)), ...less(separate.forms - forms.length, counted(Math.abs(separate.forms - forms.length), 'form'))];
    const money = cost === undefined || separate.cost === undefined ? '' : `, cost ${gangSum(Math.abs(separate.cost - cost), currency, format)} ${cost <= separate.cost ? 'less' : 'more'}`;
    return [`${apart}. The plan takes ${by.length > 0 ? by.join(' and ') : 'as many'}${money}.`];
  },
  caution: 'Only jobs of the same board, grain, coating, colours, food class and delivery may share a form. Makeready sheets and plates of every further form come on top of the pressings.',
};

export type GangWords = typeof englishGang;
