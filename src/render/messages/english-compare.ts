import { winnerAt, type CompareFacts, type ComparedSheetFacts } from '../compare-facts.ts';
import type { Format } from '../format.ts';

const whole = (value: number, format: Format) => format.number(value, 0);
const percent = (fraction: number, format: Format) => format.percent(fraction);

/** `1020 (M) × 720`: ISO 217 marks the side that runs with the fibres. */
function size({ sheet, grain }: Pick<ComparedSheetFacts, 'sheet' | 'grain'>, format: Format): string {
  const mark = (axis: 'x' | 'y') => (grain === axis ? ' (M)' : '');
  return `${format.bareLength(sheet.width)}${mark('x')} × ${format.bareLength(sheet.height)}${mark('y')}`;
}

const die = ({ die: standing }: ComparedSheetFacts) => (standing ? ` on the die that stands${standing.number === undefined ? '' : ` (${standing.number})`}` : '');
const named = (sheet: ComparedSheetFacts, format: Format, which = 'the') => `${which} ${size(sheet, format)} ${format.unit} sheet with ${sheet.ups} ups${die(sheet)}`;

/** Words of a comparison of sheets. */
export const englishCompare = {
  size,
  title: ({ name, sheets }: CompareFacts) => `${name}: ${sheets.length} sheets compared`,
  /** The one sentence for sales: true of the layouts found, in money where every rate is there, else in board. */
  sentence: (facts: CompareFacts, format: Format): string => {
    const quantity = facts.quantities.at(-1);
    const best = quantity === undefined ? facts.leastBoard : winnerAt(facts, quantity);
    if (best === undefined) return `No sheet can be had for ${whole(quantity!, format)} cartons.`;
    const [usual, winner] = [facts.sheets[0]!, facts.sheets[best]!];
    const range = quantity === undefined ? '' : rangeOf(facts, quantity, format);
    if (facts.sheets.length === 1) return `${capital(named(usual, format))} is the only one compared.`;
    if (best === 0) return `${capital(named(usual, format))}, the usual one, ${facts.measure === 'money' ? 'costs least' : 'takes least board'}${range} of the ${facts.sheets.length} compared.`;
    const figures = figuresOf(facts, quantity, facts.measure);
    const [from, to] = [figures(usual), figures(winner)];
    if (from === null || to === null) return `${capital(named(winner, format))} costs least${range}; the cost of the usual one is not known.`;
    const saving = `${percent(1 - to / from, format)}`;
    const at = quantity === undefined ? '' : ` at ${whole(quantity, format)} cartons`;
    if (facts.measure === 'money') return `${capital(named(winner, format))} saves ${saving} (${format.money(from - to, facts.currency)} per 1000)${at} against ${named(usual, format, 'the usual')}, and costs least${range}.`;
    return `${capital(named(winner, format))} takes ${saving} less board${at} than ${named(usual, format, 'the usual')}${range === '' ? '' : `, and least of all${range}`}.`;
  },
  headings: { winners: 'Which sheet, from how many cartons on', costs: 'What a thousand costs', sheets: 'Every sheet', pictures: 'The sheets at one scale', board: 'Board for a thousand cartons', missing: 'Rates that are missing', assumed: 'What was assumed', caution: 'Before board is ordered' },
  winner: (facts: CompareFacts, index: number, format: Format) => {
    const { candidate, fromQuantity } = facts.winners[index]!;
    const next = facts.winners[index + 1];
    const label = facts.winners.length === 1 && fromQuantity === 0 ? 'any quantity' : `${fromQuantity === 0 ? 'up' : `from ${whole(fromQuantity, format)}`}${next ? ` to ${whole(next.fromQuantity - 1, format)}` : ' on'}`;
    const sheet = facts.sheets[candidate]!;
    return { label, value: `${size(sheet, format)} ${format.unit}, ${sheet.ups} ups${die(sheet)}, ${englishCompare.origin(sheet, format)}` };
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
  searched: { 'few-rows': 'a few rows only', rows: 'rows only', patterns: 'quick look', full: '', die: 'as on the die' },
  madeFrom: (cartons: number, format: Format) => `from ${whole(cartons, format)}`,
  head: { sheet: 'sheet, mm', origin: 'bought as', ups: 'ups', limit: 'limit', board: 'm²/1000', toOrder: 'least to order, mm', search: 'search', quantity: (quantity: number, format: Format) => `at ${whole(quantity, format)}` },
  costUnit: (currency: string) => `${currency} per 1000`,
  limit: (bound: number) => `≤ ${bound}`,
  open: 'open',
  notMade: '–',
  usual: 'usual',
  tooTight: (sheet: ComparedSheetFacts, { toleranceMm }: CompareFacts, format: Format) =>
    `${capital(named(sheet, format))} has no room for sheets that come ${format.length(toleranceMm)} short: ask the merchant for them full, or plan with larger margins.`,
  missing: (name: string) => `${name}: not given, so the costs that need it are left open.`,
  skipped: (count: number) => `${count} ${count === 1 ? 'sheet holds' : 'sheets hold'} no blank and ${count === 1 ? 'was' : 'were'} left out.`,
  looks: 'The usual sheet and the best were searched as nest does. Where “search” names less, the sheet had a quick look with regular patterns, and may hold more.',
  route: ({ route, wasteTable }: CompareFacts) => `Counted with ${route.colours} colours, ${route.varnishUnits} varnish units, ${route.stages.length === 0 ? 'no further stages' : route.stages.join(', ')}; waste: ${wasteTable}.`,
  rates: ({ ratesName }: CompareFacts) => (ratesName === undefined ? undefined : `Rates: ${ratesName}.`),
  breakEven: 'Whole sheets are bought, so near a break-even two sheets take turns; the quantity named is the one from which the new one stays ahead.',
  leastToOrder: ({ toleranceMm }: CompareFacts, format: Format) =>
    toleranceMm > 0 ? `“Least to order” is what the layout found needs, with ${format.length(toleranceMm)} for sheets that come short.` : '“Least to order” is what the layout found needs; no tolerance of the sheets was given.',
  chart: { cost: (currency: string) => `${currency} per 1000`, costTitle: 'Cost per thousand by quantity', against: 'against the usual sheet', cartons: 'cartons', board: 'm² of board per thousand cartons, nothing lost', leastBoard: 'least board', boardTitle: 'Board per thousand by sheet', pictures: 'The sheets at one scale' },
  thumbnail: (sheet: ComparedSheetFacts, format: Format) => [`${size(sheet, format)}`, `${sheet.ups} ups, ${format.number(sheet.boardM2PerThousand, 2, true)} m²/1000`],
  caution: 'Planning figures. Prices, tolerances and what the mill makes are confirmed with the merchant, margins and knives with the machines’ manuals and the die maker, before board or a die is ordered.',
};

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** ` from 14 000 to 50 000 cartons`; nothing where it wins whatever the quantity. */
function rangeOf({ winners }: CompareFacts, quantity: number, format: Format): string {
  const index = winners.findLastIndex(({ fromQuantity }) => fromQuantity <= quantity);
  const [from, next] = [winners[index]!.fromQuantity, winners[index + 1]?.fromQuantity];
  if (from === 0 && next === undefined) return ' at every quantity';
  const start = from === 0 ? '' : ` from ${whole(from, format)}`;
  return next === undefined ? `${start} cartons on` : `${start}${start === '' ? ' up' : ''} to ${whole(next - 1, format)} cartons`;
}

/** Cost or board per thousand at the quantity; board with nothing lost where no quantity is asked. */
function figuresOf({ quantities }: CompareFacts, quantity: number | undefined, measure: CompareFacts['measure']): (sheet: ComparedSheetFacts) => number | null {
  if (quantity === undefined) return ({ boardM2PerThousand }) => boardM2PerThousand;
  const at = quantities.indexOf(quantity);
  return measure === 'money' ? ({ costPerThousand }) => costPerThousand[at]! : ({ boardM2WithWaste }) => boardM2WithWaste[at]!;
}

export type CompareWords = typeof englishCompare;
