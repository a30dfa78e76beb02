import type { Purchase } from '../../estimate/buying.ts';
import type { InkZones } from '../../estimate/ink-zones.ts';
import type { QuantityQuote } from '../../estimate/quote.ts';
import type { StageNeed } from '../../estimate/sheets-needed.ts';
import type { Format } from '../format.ts';
import type { Product, QuotedLayout, QuoteFacts } from '../quote-facts.ts';
import type { QuoteWords } from './english-quote.ts';
import { figureName } from './figure-names.ts';
import { germanCounted } from './german-counted.ts';
import { germanFigures } from './german-figures.ts';
import { GERMAN_STAGES } from './german-stages.ts';
import { purchaseLine, purchaseLineInInches, ratesBySource, winningRange, zoneSpread, type PurchaseWords } from './quote-figures.ts';

type Noun = readonly [one: string, many: string];
const counted = (count: number, [one, many]: Noun, format?: Format) => germanCounted(count, one, many, format);
const whole = (value: number, format: Format) => format.number(value, 0);

const PRODUCTS: Readonly<Record<Product, Noun>> = { carton: ['Faltschachtel', 'Faltschachteln'], label: ['Etikett', 'Etiketten'], blank: ['Zuschnitt', 'Zuschnitte'] };
const SHEETS: Noun = ['Bogen', 'Bogen'];
const PALLETS: Noun = ['Palette', 'Paletten'];
const CASES: Noun = ['Versandkarton', 'Versandkartons'];

/** Units that are things counted. */
const UNITS: Readonly<Record<string, Noun>> = { cases: CASES, layers: ['Lage', 'Lagen'], pallets: PALLETS, sheets: SHEETS };

const purchaseWords = (format: Format): PurchaseWords => ({
  sheets: (count) => counted(count, SHEETS, format),
  packets: (count) => counted(count, ['Paket', 'Pakete'], format),
  pallets: (count) => counted(count, PALLETS, format),
  pile: (height) => `Stapel bis ${height}`,
  workingDays: (count) => counted(count, ['Werktag', 'Werktage'], format),
  inInches: (size) => `In Zoll und Pfund: ${size}`,
  perThousandSquareFeet: (pounds) => `${pounds} je 1000 ft²`,
  perThousandSheets: (pounds) => `${pounds} je tausend Bogen (auf das Ries gerundet)`,
});

/** `ab 14 000 bis 50 000`. */
export function germanQuantities(winners: readonly { readonly fromQuantity: number }[], index: number, format: Format): string {
  const { from, to } = winningRange(winners, index);
  if (from === 0) return to === undefined ? 'jede Auflage' : `bis ${whole(to, format)}`;
  return `ab ${whole(from, format)}${to === undefined ? '' : ` bis ${whole(to, format)}`}`;
}

export function germanQuote(product: Product): QuoteWords {
  const products = PRODUCTS[product];
  const made = (count: number, format?: Format) => counted(count, products, format);
  const named = (name: string) => figureName(name, germanFigures, products[1]);
  const listed = (names: readonly string[]) => names.map(named).join(', ');
  return {
    title: ({ name, ups, sheet }: QuoteFacts, format: Format) => `Kalkulation${name === undefined ? '' : ` ${name}`}: ${ups} Nutzen auf ${format.size(sheet.width, sheet.height)}`,
    answer: ({ quantities, currency }: QuoteFacts, format: Format) => {
      const each = ({ quantity, needed, costPerThousand, boardCostPerThousand, pricePerThousand }: QuantityQuote) => {
        const cost = costPerThousand.value !== null ? `Kosten ${format.money(costPerThousand.value, currency)} je 1000` : boardCostPerThousand.value !== null ? `Karton ${format.money(boardCostPerThousand.value, currency)} je 1000` : 'Kosten offen';
        const money = pricePerThousand?.value == null ? cost : `Preis ${format.money(pricePerThousand.value, currency)} je 1000, Kosten ${format.money(costPerThousand.value!, currency)}`;
        return `${made(quantity, format)} ${quantity === 1 ? 'braucht' : 'brauchen'} ${counted(needed.sheets, SHEETS, format)}, ${money}`;
      };
      return `${quantities.map(each).join('; ')}.`;
    },
    headings: {
      overview: 'Auf einen Blick', missing: 'Sätze, die fehlen', inks: 'Farbzonen', food: 'Lebensmittel-Vermerk: wie angegeben, nicht beurteilt', buying: 'Zu bestellen', die: 'Die vorhandene Stanzform gegen eine neue',
      layouts: `Welcher Standbogen, ab wie vielen ${product === 'blank' ? 'Zuschnitten' : products[1]}`, assumed: 'Was angenommen wurde', caution: 'Bevor es zugesagt wird', prices: 'Preise', packing: 'Wie verpackt wird', terms: 'Bedingungen',
    },
    quantity: made,
    overview: ({ needed, boardWeight, boardCostPerThousand, costPerThousand, pricePerThousand, pressHours }: QuantityQuote, currency: string, format: Format) =>
      [
        `${counted(needed.sheets, SHEETS, format)} (+${format.percent(needed.sheets / needed.netSheets - 1)} Zuschuss auf ${whole(needed.netSheets, format)} netto)`,
        `${format.number(boardWeight.value ?? 0, 2, true)} kg Karton`,
        boardCostPerThousand.value === null ? 'Kartonkosten offen' : `Karton ${format.money(boardCostPerThousand.value, currency)} je 1000`,
        pressHours && (pressHours.value === null ? 'Druckstunden offen' : `Druck ${format.number(pressHours.value, 2)} h`),
        costPerThousand.value === null ? 'Kosten je 1000 offen' : `Kosten ${format.money(costPerThousand.value, currency)} je 1000`,
        pricePerThousand?.value != null && `Preis ${format.money(pricePerThousand.value, currency)} je 1000`,
      ].filter(Boolean).join(', '),
    missing: (name: string) => `${named(name)}: nicht angegeben; die Zahlen, die davon abhängen, bleiben offen.`,
    stage: ({ stage, counts }: StageNeed) => `${counts === 'cartons' ? products[1] : 'Bogen'} zum ${GERMAN_STAGES[stage]}`,
    named,
    stageFormula: ({ out, runningPercent, setUp }: StageNeed, format: Format) =>
      `${whole(out, format)}${runningPercent > 0 ? ` ÷ (1 − ${format.number(runningPercent, 4)} %), aufgerundet` : ''}${setUp > 0 ? ` + ${whole(setUp, format)} zum Einrichten` : ''}`,
    cartonsToSheets: (cartons: number, ups: number, sheets: number, format: Format) => `${made(cartons, format)} ÷ ${ups} Nutzen, aufgerundet, ${sheets === 1 ? 'ist' : 'sind'} ${counted(sheets, SHEETS, format)}.`,
    measured: (value: number, unit: string, format: Format) => {
      const noun = unit === 'cartons' ? products : UNITS[unit];
      return noun ? counted(value, noun, format) : `${format.number(value, 3)} ${unit}`;
    },
    zones: ({ shares, zoneMm }: InkZones, format: Format) => `Flächendeckung des Bogens in ${counted(shares.length, ['Zone', 'Zonen'])} von ${format.length(zoneMm)}, mittig, von links auf der Druckseite. Der Beschnitt zählt nicht mit.`,
    zoneRange: (zones: InkZones, format: Format) => {
      const { asLaid, upright } = zoneSpread(zones);
      const range = ({ least, most }: typeof asLaid) => `${format.percent(least)} bis ${format.percent(most)}`;
      return `im Mittel ${format.percent(asLaid.mean)}, je Zone ${range(asLaid)}${upright ? `; stünde jeder Nutzen aufrecht, ${range(upright)}` : '; das Drehen der Nutzen ändert nichts'}`;
    },
    inkChart: { title: 'Flächendeckung je Farbzone', zone: 'Zone', asLaid: 'wie auf dem Standbogen', upright: 'jeder Nutzen aufrecht' },
    open: (missing: readonly string[]) => `offen: ${listed(missing)} nicht angegeben`,
    purchase: (purchase: Purchase, format: Format) => purchaseLine(purchase, purchaseWords(format), format),
    purchaseInInches: (purchase: Purchase, format: Format) => purchaseLineInInches(purchase, purchaseWords(format), format),
    grainOpen: 'Die Laufrichtung ist nicht angegeben: Sagen Sie vor der Bestellung, welche Seite das (M) trägt. Die erste Zahl ist die Seite an der Greiferkante.',
    reel: (widthMm: number, metres: number, kg: number, format: Format) => `Von einer Rolle, ${format.length(widthMm)} breit: ${format.number(metres, 0)} m, ${format.number(kg, 1)} kg.`,
    millMinimum: (tonnes: number, cartons: number | undefined, format: Format) =>
      cartons === undefined ? `Keine Auflage erreicht die ${format.number(tonnes)} t der Kartonfabrik.` : `Die Kartonfabrik fertigt ab ${format.number(tonnes)} t an: erreicht ab einer Auflage von ${whole(cartons, format)}.`,
    die: ({ die, ups, currency }: QuoteFacts, format: Format) => {
      if (!die) return [];
      const names = `${die.existingUps} Nutzen auf der vorhandenen Stanzform${die.number === undefined ? '' : ` (${die.number}${die.rack === undefined ? '' : `, Regal ${die.rack}`})`} gegen ${ups} Nutzen auf einer neuen`;
      if (die.saving.value === null) return [`${names}: offen, ${listed(die.saving.missing)} nicht angegeben.`];
      if (!die.breakEven) return [`${names}: Die neue Stanzform spart nichts.`];
      const from = die.breakEven.value === null ? `ab wann, ist offen: ${listed(die.breakEven.missing)} nicht angegeben` : `bezahlt ab einer Auflage von ${whole(die.breakEven.value, format)}`;
      const worn = die.worn.map((quantity) => `Die vorhandene Stanzform hält die Hübe für eine Auflage von ${whole(quantity, format)} nicht mehr aus.`);
      return [...worn, `${names}: spart ${format.money(die.saving.value, currency)} je 1000, ${from}. Zuschuss für Einrichten und Fortdruck ist bei beiden gleich und nicht mitgezählt.`];
    },
    layout: ({ layouts = [] }: QuoteFacts, index: number, format: Format) => {
      const said = ({ name, own, ups, sheet, ownDie }: QuotedLayout) => {
        const what = own ? 'dieser Standbogen' : ownDie ? `die vorhandene Stanzform${name === undefined ? '' : ` (${name})`}` : name ?? 'eine andere';
        return `${what}: ${ups} Nutzen auf ${format.size(sheet.width, sheet.height)}${ownDie ? ', keine Stanzform zu bezahlen' : ''}`;
      };
      const { turns = [] } = layouts[index]!;
      return { label: germanQuantities(layouts, index, format), value: `${turns.length > 0 ? 'abwechselnd, Bogen um Bogen: ' : ''}${[layouts[index]!, ...turns].map(said).join('; ')}` };
    },
    convention: ({ waste }: Pick<QuoteFacts, 'waste'>) =>
      `Zuschuss: ${named(waste.name)}. Jeder Arbeitsgang deckt auch, was alle späteren verlieren: geteilt durch (1 − Fortdruckzuschuss), aufgerundet, dann der Einrichtezuschuss dazu, vom letzten Arbeitsgang zurück zum ersten.`,
    rates: ({ ratesName, anyRates, rateSources }: Pick<QuoteFacts, 'ratesName' | 'anyRates' | 'rateSources'>) => (rateSources && Object.keys(rateSources).length > 0 ? ratesBySource(rateSources).map(({ source, figures }) => `${source.kind === 'record' ? `Aus dem Datensatz ${source.name}` : source.kind === 'typed' ? 'Wie eingegeben' : 'Zum Ausprobieren erfunden'}: ${listed(figures)}.`).join(' ') : ratesName !== undefined ? `Sätze: ${named(ratesName)}.` : anyRates ? 'Sätze: wie mit dem Auftrag angegeben.' : 'Sätze: keine angegeben.'),
    unitsOfFormulas: (ft2: string) => `In Formeln stehen Längen in Zoll (in), Flächen in ft², Gewichte in kg und g/m², wie in den Sätzen; ${ft2} ft² sind ein m².`,
    caution: 'Planzahlen. Zuschuss, Geschwindigkeiten und Preise bestätigt das eigene Haus, bevor ein Preis zugesagt oder Karton bestellt wird.',
    customer: {
      title: ({ name }: QuoteFacts) => `Angebot${name === undefined ? '' : ` ${name}`}`,
      answer: ({ customer, quantities }: QuoteFacts) => `${quantities.length === 1 ? 'Unser Preis' : `Unsere Preise für ${quantities.length} Auflagen`}${customer === undefined ? '' : `, für ${customer}`}.`,
      price: (perThousand: number, total: number, currency: string, format: Format) => `${format.money(perThousand, currency)} je 1000, ${format.money(total, currency)} im Ganzen`,
      product: ({ purchases, grammage }: QuoteFacts, format: Format) => `Karton ${purchases[0]?.sheet.grade === undefined ? '' : `${purchases[0].sheet.grade}, `}${format.number(grammage)} g/m².`,
      packed: ({ quantity, packed }: QuantityQuote, format: Format) => {
        const [perCase, cases] = [packed?.perCase.value, packed?.cases.value];
        if (!packed || perCase == null || cases == null) return [];
        const { pallets, grossWeight } = packed;
        const on = pallets.value === null ? '' : ` auf ${counted(pallets.value, PALLETS, format)}`;
        const gross = grossWeight.value === null ? '' : `, ${format.number(grossWeight.value, 0)} kg brutto`;
        return [`${made(quantity, format)}: ${counted(cases, CASES, format)} zu höchstens ${whole(perCase, format)}${on}${gross}.`];
      },
      tolerance: ({ oversPercent }: QuoteFacts, format: Format) => `Mehr- oder Minderlieferungen bis ${format.number(oversPercent, 1)} % sind handelsüblich; berechnet wird die gelieferte Menge.`,
      validity: ({ date, validUntil }: QuoteFacts) => `${date === undefined ? '' : `Datum: ${date}. `}${validUntil === undefined ? 'Preise freibleibend bis zur Bestätigung.' : `Die Preise gelten bis ${validUntil}.`}`,
      caution: 'Bei Lebensmittelpackungen wählt die verantwortliche Person Farben, Lacke und Karton nach dem geltenden Recht.',
      cautionHeading: 'Bitte beachten',
    },
  };
}
