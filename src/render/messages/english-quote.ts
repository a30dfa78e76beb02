import type { Purchase } from '../../estimate/buying.ts';
import type { InkZones } from '../../estimate/ink-zones.ts';
import type { QuantityQuote } from '../../estimate/quote.ts';
import type { StageNeed } from '../../estimate/sheets-needed.ts';
import type { Format } from '../format.ts';
import type { Product, QuotedLayout, QuoteFacts } from '../quote-facts.ts';
import { counted } from './english-counted.ts';
import { purchaseLine, purchaseLineInInches, ratesBySource, winningRange, zoneSpread, type PurchaseWords } from './quote-figures.ts';

const whole = (value: number, format: Format) => format.number(value, 0);

/** Units that are things counted, in the plural. */
const COUNTS: ReadonlySet<string> = new Set(['cartons', 'cases', 'layers', 'pallets', 'sheets']);

const purchaseWords = (format: Format): PurchaseWords => ({
  sheets: (count) => counted(count, 'sheet', format),
  packets: (count) => counted(count, 'packet', format),
  pallets: (count) => counted(count, 'pallet', format),
  pile: (height) => `piles up to ${height}`,
  workingDays: (count) => counted(count, 'working day', format),
  inInches: (size) => `In inches and pounds: ${size}`,
  perThousandSquareFeet: (pounds) => `${pounds} per 1000 ft²`,
  perThousandSheets: (pounds) => `${pounds} a thousand sheets (rounded by the ream)`,
});

/** `from 14 000 to 50 000`. */
export function englishQuantities(winners: readonly { readonly fromQuantity: number }[], index: number, format: Format): string {
  const { from, to } = winningRange(winners, index);
  if (from === 0) return to === undefined ? 'any quantity' : `up to ${whole(to, format)}`;
  return `from ${whole(from, format)}${to === undefined ? ' on' : ` to ${whole(to, format)}`}`;
}

/** Words of a quote, for the house and for the customer; the product in the singular. */
const quoteWords = (product: Product) => ({
  title: ({ name, ups, sheet }: QuoteFacts, format: Format) => `Quote${name === undefined ? '' : ` ${name}`}: ${counted(ups, 'up')} on ${format.size(sheet.width, sheet.height)}`,
  answer: ({ quantities, currency }: QuoteFacts, format: Format) => {
    const each = ({ quantity, needed, costPerThousand, boardCostPerThousand, pricePerThousand }: QuantityQuote) => {
      const cost = costPerThousand.value !== null ? `cost ${format.money(costPerThousand.value, currency)} per 1000` : boardCostPerThousand.value !== null ? `board ${format.money(boardCostPerThousand.value, currency)} per 1000` : 'cost open';
      const money = pricePerThousand?.value == null ? cost : `price ${format.money(pricePerThousand.value, currency)} per 1000, cost ${format.money(costPerThousand.value!, currency)}`;
      return `${counted(quantity, product, format)} ${quantity === 1 ? 'takes' : 'take'} ${counted(needed.sheets, 'sheet', format)}, ${money}`;
    };
    return `${quantities.map(each).join('; ')}.`;
  },
  headings: { overview: 'At a glance', missing: 'Rates that are missing', inks: 'Ink zones', food: 'Food record: kept as given, not judged', buying: 'To order', die: 'The die that stands against a new one', layouts: `Which layout, from how many ${product}s on`, assumed: 'What was assumed', caution: 'Before it is promised', prices: 'Prices', packing: 'How it is packed', terms: 'Terms' },
  quantity: (quantity: number, format: Format) => counted(quantity, product, format),
  overview: ({ needed, boardWeight, boardCostPerThousand, costPerThousand, pricePerThousand, pressHours }: QuantityQuote, currency: string, format: Format) =>
    [
      `${counted(needed.sheets, 'sheet', format)} (+${format.percent(needed.sheets / needed.netSheets - 1)} over ${whole(needed.netSheets, format)} net)`,
      `${format.number(boardWeight.value ?? 0, 2, true)} kg board`,
      boardCostPerThousand.value === null ? 'board cost open' : `board ${format.money(boardCostPerThousand.value, currency)} per 1000`,
      pressHours && (pressHours.value === null ? 'press hours open' : `press ${format.number(pressHours.value, 2)} h`),
      costPerThousand.value === null ? 'cost per 1000 open' : `cost ${format.money(costPerThousand.value, currency)} per 1000`,
      pricePerThousand?.value != null && `price ${format.money(pricePerThousand.value, currency)} per 1000`,
    ]
      .filter(Boolean)
      .join(', '),
  missing: (name: string) => `${name}: not given, so the figures that need it are left open.`,
  stage: ({ stage, counts }: StageNeed) => `${counts === 'cartons' ? `${product}s` : counts} into ${stage}`,
  /** Names of figures speak of cartons. */
  named: (name: string) => name.replace(/\bcartons\b/g, `${product}s`),
  stageFormula: ({ out, runningPercent, setUp }: StageNeed, format: Format) =>
    `${whole(out, format)}${runningPercent > 0 ? ` ÷ (1 − ${format.number(runningPercent, 4)} %), rounded up` : ''}${setUp > 0 ? ` + ${whole(setUp, format)} set-up` : ''}`,
  cartonsToSheets: (cartons: number, ups: number, sheets: number, format: Format) => `${counted(cartons, product, format)} ÷ ${counted(ups, 'up')}, rounded up, ${sheets === 1 ? 'is' : 'are'} ${counted(sheets, 'sheet', format)}.`,
  measured: (value: number, unit: string, format: Format) => (COUNTS.has(unit) ? counted(value, unit === 'cartons' ? product : unit.slice(0, -1), format) : `${format.number(value, 3)} ${unit}`),
  zones: ({ shares, zoneMm }: InkZones, format: Format) => `Coverage of the sheet in ${counted(shares.length, 'zone')} of ${format.length(zoneMm)}, centred, from the left of the printed side. Bleed is not counted.`,
  zoneRange: (zones: InkZones, format: Format) => {
    const { asLaid, upright } = zoneSpread(zones);
    const range = ({ least, most }: typeof asLaid) => `${format.percent(least)} to ${format.percent(most)}`;
    return `${format.percent(asLaid.mean)} on average, ${range(asLaid)} by zone${upright ? `; were every blank upright, ${range(upright)}` : '; turning blanks changes nothing'}`;
  },
  inkChart: { title: 'Coverage by ink zone', zone: 'zone', asLaid: 'as laid out', upright: 'every blank upright' },
  open: (missing: readonly string[]) => `open: ${missing.join(', ')} not given`,
  purchase: (purchase: Purchase, format: Format) => purchaseLine(purchase, purchaseWords(format), format),
  purchaseInInches: (purchase: Purchase, format: Format) => purchaseLineInInches(purchase, purchaseWords(format), format),
  grainOpen: 'The grain is not given: say which side carries (M) before ordering. The first figure is the side along the gripper edge.',
  reel: (widthMm: number, metres: number, kg: number, format: Format) => `From a reel ${format.length(widthMm)} wide: ${format.number(metres, 0)} m, ${format.number(kg, 1)} kg.`,
  millMinimum: (tonnes: number, cartons: number | undefined, format: Format) =>
    cartons === undefined ? `No order reaches the mill’s ${format.number(tonnes)} t.` : `The mill makes from ${format.number(tonnes)} t: reached from ${counted(cartons, product, format)} on.`,
  die: ({ die, ups, currency }: QuoteFacts, format: Format) => {
    if (!die) return [];
    const names = `${die.existingUps} up on the die that stands${die.number === undefined ? '' : ` (${die.number}${die.rack === undefined ? '' : `, rack ${die.rack}`})`} against ${ups} up on a new one`;
    if (die.saving.value === null) return [`${names}: open, ${die.saving.missing.join(', ')} not given.`];
    if (!die.breakEven) return [`${names}: the new die saves nothing.`];
    const from = die.breakEven.value === null ? `from when on is open, ${die.breakEven.missing.join(', ')} not given` : `paid for from ${counted(die.breakEven.value, product, format)} on`;
    const worn = die.worn.map((quantity) => `The die that stands has not strokes enough left for ${counted(quantity, product, format)}.`);
    return [...worn, `${names}: saves ${format.money(die.saving.value, currency)} per 1000, ${from}. Makeready and running waste, alike on both, are left out.`];
  },
  layout: ({ layouts = [] }: QuoteFacts, index: number, format: Format) => {
    const said = ({ name, own, ups, sheet, ownDie }: QuotedLayout) => {
      const what = own ? 'this layout' : ownDie ? `the die that stands${name === undefined ? '' : ` (${name})`}` : name ?? counted(ups, 'up');
      return `${what}: ${counted(ups, 'up')} on ${format.size(sheet.width, sheet.height)}${ownDie ? ', no die to pay' : ''}`;
    };
    const { turns = [] } = layouts[index]!;
    return { label: englishQuantities(layouts, index, format), value: `${turns.length > 0 ? 'by turns, sheet by sheet: ' : ''}${[layouts[index]!, ...turns].map(said).join('; ')}` };
  },
  convention: ({ waste }: Pick<QuoteFacts, 'waste'>) =>
    `Waste: ${waste.name}. Each stage also covers what all later ones lose: divided by (1 − running waste), rounded up, then set-up added, from the last stage back to the first.`,
  rates: ({ ratesName, anyRates, rateSources }: Pick<QuoteFacts, 'ratesName' | 'anyRates' | 'rateSources'>) => (rateSources && Object.keys(rateSources).length > 0 ? ratesBySource(rateSources).map(({ source, figures }) => `${source.kind === 'record' ? `From the record ${source.name}` : source.kind === 'typed' ? 'As typed' : 'Invented for trying out'}: ${figures.join(', ')}.`).join(' ') : ratesName !== undefined ? `Rates: ${ratesName}.` : anyRates ? 'Rates: as given with the job.' : 'Rates: none given.'),
  unitsOfFormulas: (ft2: string) => `In formulas lengths are in inches, areas in ft², weights in kg and g/m², as the rates are; ${ft2} ft² make a m².`,
  caution: 'Planning figures. Waste, speeds and prices are the shop’s own to confirm before a price is promised or board is ordered.',
  customer: {
    title: ({ name }: QuoteFacts) => `Quotation${name === undefined ? '' : ` ${name}`}`,
    answer: ({ customer, quantities }: QuoteFacts) => `${quantities.length === 1 ? 'Our price' : `Our prices for ${quantities.length} quantities`}${customer === undefined ? '' : `, for ${customer}`}.`,
    price: (perThousand: number, total: number, currency: string, format: Format) => `${format.money(perThousand, currency)} per 1000, ${format.money(total, currency)} in all`,
    product: ({ purchases, grammage }: QuoteFacts, format: Format) => `Board ${purchases[0]?.sheet.grade === undefined ? '' : `${purchases[0].sheet.grade}, `}${format.number(grammage)} g/m².`,
    packed: ({ quantity, packed }: QuantityQuote, format: Format) => {
      const [perCase, cases] = [packed?.perCase.value, packed?.cases.value];
      if (!packed || perCase == null || cases == null) return [];
      const { pallets, grossWeight } = packed;
      const on = pallets.value === null ? '' : ` on ${counted(pallets.value, 'pallet', format)}`;
      const gross = grossWeight.value === null ? '' : `, ${format.number(grossWeight.value, 0)} kg gross`;
      return [`${counted(quantity, product, format)}: ${counted(cases, 'case', format)} of up to ${whole(perCase, format)}${on}${gross}.`];
    },
    tolerance: ({ oversPercent }: QuoteFacts, format: Format) => `Deliveries of ${format.number(oversPercent, 1)} % more or less are trade custom; what is delivered is what is charged.`,
    validity: ({ date, validUntil }: QuoteFacts) => `${date === undefined ? '' : `Dated ${date}. `}${validUntil === undefined ? 'Prices are without obligation until confirmed.' : `Prices hold until ${validUntil}.`}`,
    caution: 'For food packs the responsible person chooses inks, varnishes and board under local law.',
    cautionHeading: 'Please note',
  },
});

export type QuoteWords = ReturnType<typeof quoteWords>;

export const englishQuote = (product: Product): QuoteWords => quoteWords(product);
