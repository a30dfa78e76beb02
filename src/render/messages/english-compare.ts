import type { CompareFacts, ComparedSheetFacts } from '../compare-facts.ts';
import type { Format } from '../format.ts';
import { comparedSize as size, relationOf, routeWord, verdictOf, type Verdict } from './compare-figures.ts';
import { counted } from './english-counted.ts';
import { englishQuantities } from './english-quote.ts';

const whole = (value: number, format: Format) => format.number(value, 0);

const die = ({ die: standing }: ComparedSheetFacts) => (standing ? ` on the die that stands${standing.number === undefined ? '' : ` (${standing.number})`}` : '');
const named = (sheet: ComparedSheetFacts, format: Format, which = 'the') => `${which} ${size(sheet, format)} ${format.unit} sheet with ${sheet.ups} ups${die(sheet)}`;

/** Words of a comparison of sheets. */
export const englishCompare = {
  size,
  ups: (count: number) => `${count} ups`,
  title: ({ name, sheets }: CompareFacts) => `${name}: ${sheets.length} sheets compared`,
  /** The one sentence for sales: true of the layouts found, in money where every rate is there, else in board. */
  sentence: (facts: CompareFacts, format: Format): string => {
    const verdict = verdictOf(facts);
    const { quantity } = verdict;
    if (verdict.kind === 'none') return `No sheet can be had for ${whole(quantity!, format)} cartons.`;
    const winner = capital(named(verdict.winner, format));
    const { where: range, turns } = placeOf(verdict, format);
    if (verdict.kind === 'only') return `${winner} is the only one compared.`;
    if (verdict.kind === 'usual') return `${winner}, the usual one, ${facts.measure === 'money' ? 'costs least' : 'takes least board'}${range} of the ${facts.sheets.length} compared${turns}.`;
    if (verdict.kind === 'usual-unknown') return `${winner} costs least${range}${turns}; the cost of the usual one is not known.`;
    const saving = format.percent(verdict.share);
    const at = quantity === undefined ? '' : ` at ${whole(quantity, format)} cartons`;
    const usual = named(verdict.usual, format, 'the usual');
    if (facts.measure === 'money') return `${winner} saves ${saving} (${format.money(verdict.perThousand, facts.currency)} per 1000)${at} against ${usual}, and costs least${range}${turns}.`;
    return `${winner} takes ${saving} less board${at === '' ? ', nothing lost,' : `${at}, waste included,`} than ${usual}${range === '' ? '' : `, and least of all${range}`}${turns}.`;
  },
  /** The same for the phone: what, how much, from when on. */
  brief: (facts: CompareFacts, format: Format): string => {
    const verdict = verdictOf(facts);
    const { quantity } = verdict;
    const { where: range, turns } = placeOf(verdict, format);
    const inMoney = facts.measure === 'money';
    if (verdict.kind === 'usual') return `The usual sheet ${inMoney ? 'costs least' : 'takes least board'}${range}.`;
    if (verdict.kind !== 'saves') return englishCompare.sentence(facts, format);
    const sheet = { die: 'The die that stands', larger: 'The larger sheet', smaller: 'The smaller sheet', turned: 'The sheet with the other grain', other: 'The other sheet' }[relationOf(verdict.winner, verdict.usual)];
    const at = quantity === undefined ? '' : ` at ${whole(quantity, format)} cartons`;
    return `${sheet} saves ${format.percent(verdict.share)} ${inMoney ? 'of the cost' : 'board'}${at}${range === '' || turns !== '' ? '' : `; it wins${range}`}.`;
  },
  headings: { winners: 'Which sheet, from how many cartons on', costs: 'What a thousand costs', sheets: 'Every sheet', pictures: 'The sheets at one scale', board: 'Board for a thousand cartons', missing: 'Rates that are missing', assumed: 'What was assumed', caution: 'Before board is ordered' },
  winner: (facts: CompareFacts, index: number, format: Format) => {
    const { candidate, turns = [candidate] } = facts.winners[index]!;
    const each = turns.map((one) => facts.sheets[one]!).map((sheet) => `${size(sheet, format)} ${format.unit}, ${sheet.ups} ups${die(sheet)}, ${englishCompare.origin(sheet, format)}`);
    return { label: englishQuantities(facts.winners, index, format), value: turns.length > 1 ? `by turns, sheet by sheet: ${each.join('; ')}` : each[0]! };
  },
  origin: ({ origin, die: standing }: ComparedSheetFacts, format: Format): string => {
    if (standing) return `die ${standing.number ?? 'that stands'}`;
    switch (origin.kind) {
      case 'parent':
        return `${format.bareLength(origin.parent.width)} × ${format.bareLength(origin.parent.height)} in ${origin.parts}`;
      case 'reel':
        return `reel ${format.bareLength(origin.width)}`;
      case 'made-to-order':
        return 'made to order';
      case 'stock':
        return 'stock';
    }
  },
  searched: { 'few-rows': 'a few rows only', rows: 'rows only', patterns: 'quick look', full: 'searched', die: 'as on the die' },
  limitReached: 'limit reached',
  madeFrom: (cartons: number, format: Format) => `from ${whole(cartons, format)}`,
  head: { sheet: ({ unit }: Format) => `sheet, ${unit}`, origin: 'bought as', ups: 'ups', limit: 'limit', board: ({ boardUnit }: Format) => `${boardUnit.name}/1000`, toOrder: ({ unit }: Format) => `least to order, ${unit}`, search: 'search', quantity: (quantity: number, format: Format) => `at ${whole(quantity, format)}` },
  costUnit: (currency: string) => `${currency} per 1000`,
  limit: (bound: number) => `≤ ${bound}`,
  open: 'open',
  notMade: '–',
  usual: 'usual',
  tooTight: (sheet: ComparedSheetFacts, { toleranceMm }: CompareFacts, format: Format) =>
    `${capital(named(sheet, format))} has no room for sheets that come ${format.length(toleranceMm)} short: ask the merchant for them full, or plan with larger margins.`,
  missing: (name: string) => `${name}: not given, so the costs that need it are left open.`,
  skipped: (count: number) => `${count} ${count === 1 ? 'sheet holds' : 'sheets hold'} no blank and ${count === 1 ? 'was' : 'were'} left out.`,
  looks: 'Search: at “limit reached” no more ups are possible; the usual sheet and the best are “searched” as nest does; the others had a quicker look with regular patterns, and may hold more.',
  route: ({ route, wasteTable, notes }: CompareFacts) => {
    const assumed = routeWord(notes, ' (assumed)');
    const colours = `${counted(route.colours, 'colour')}${assumed('colours')}`;
    const stages = `${route.stages.length === 0 ? 'no further stages' : route.stages.join(', ')}${assumed('stages')}`;
    return `Counted with ${colours}, ${counted(route.varnishUnits, 'varnish unit')}, ${stages}; waste: ${wasteTable}.`;
  },
  rates: ({ ratesName }: CompareFacts) => (ratesName === undefined ? undefined : `Rates: ${ratesName}.`),
  breakEven: 'Whole sheets are bought, so near a break-even sheets take turns: by a few cartons more or less now one costs least, now another. Outside such stretches the one named costs least at every quantity.',
  leastToOrder: ({ toleranceMm }: CompareFacts, format: Format) =>
    toleranceMm > 0 ? `“Least to order” is what the layout found needs, with ${format.length(toleranceMm)} for sheets that come short.` : '“Least to order” is what the layout found needs; no tolerance of the sheets was given.',
  chart: { cost: (currency: string) => `${currency} per 1000`, costTitle: 'Cost per thousand by quantity', against: 'against the usual sheet', cartons: 'cartons', board: ({ boardUnit }: Format) => `${boardUnit.name} of board per thousand cartons, nothing lost`, leastBoard: 'least board', boardTitle: 'Board per thousand by sheet', pictures: 'The sheets at one scale' },
  thumbnail: (sheet: ComparedSheetFacts, format: Format) => [`${size(sheet, format)}`, `${sheet.ups} ups, ${format.board(sheet.boardM2PerThousand, 2)}/1000`],
  caution: 'Planning figures. Prices, tolerances and what the mill makes are confirmed with the merchant, margins and knives with the machines’ manuals and the die maker, before board or a die is ordered.',
};

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** ` from 14 000 to 50 000 cartons`; nothing where no quantity is asked. */
function rangeOf(range: Verdict['range'], format: Format): string {
  if (range === undefined) return '';
  const { from, to } = range;
  if (from === 0) return to === undefined ? ' at every quantity' : ` up to ${whole(to, format)} cartons`;
  return to === undefined ? ` from ${whole(from, format)} cartons on` : ` from ${whole(from, format)} to ${whole(to, format)} cartons`;
}

/** Where the winner is least; where it takes turns with others only the quantity itself is said, and with whom it does. */
function placeOf({ quantity, range }: Verdict, format: Format): { where: string; turns: string } {
  if (!range || range.turns.length === 0) return { where: rangeOf(range, format), turns: '' };
  const others = range.turns.map((sheet) => named(sheet, format)).join(' and ');
  return { where: ` at ${whole(quantity!, format)} cartons`, turns: `;${rangeOf(range, format)} it takes turns with ${others}, sheet by sheet` };
}

export type CompareWords = typeof englishCompare;
