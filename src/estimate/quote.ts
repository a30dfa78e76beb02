import type { MachineRates, Rates } from '../press/rates.ts';
import type { Stage } from '../press/stages.ts';
import type { WasteTable } from '../press/waste-table.ts';
import { boardCost, boardCostByThousand, boardWeight, carbon, pileHeight, sheetArea, type Board } from './board.ts';
import { figure, given, type Figure, type Input } from './figure.ts';
import { coatingWeight, inkOnBlanks, inkWeight } from './ink.ts';
import { packed, type Packed, type PackingTerms } from './packing.ts';
import { machineCost, machineHours } from './machine-time.ts';
import { sheetsNeeded, stagesOf, type Route, type SheetsNeeded } from './sheets-needed.ts';

/** One carton on one sheet, in as many quantities as asked for. */
export interface QuoteTerms {
  readonly route: Route;
  readonly board: Board;
  readonly caliperMm?: number | undefined;
  /** Of one carton's blank, where the layout is known. */
  readonly blankM2?: number | undefined;
  readonly pricePerTonne?: number | undefined;
  /** Of a thousand sheets; taken where it is given, whatever the tonne costs. */
  readonly pricePerThousandSheets?: number | undefined;
  readonly currency: string;
  readonly waste: WasteTable;
  readonly rates: Rates;
  /** Where the job names its inks; otherwise all colours are alike. */
  readonly inks?: readonly QuotedInk[] | undefined;
  /** How the finished work is packed, where that was said. */
  readonly packing?: PackingTerms | undefined;
  /** The die stands already: none is charged. */
  readonly ownDie: boolean;
}

/** An ink of the job; what it leaves open is that of the rates. */
export interface QuotedInk {
  readonly name: string;
  /** On one blank; undefined where the blank's area is not known. */
  readonly inkedM2: number | undefined;
  readonly gramsPerM2?: number | undefined;
  readonly pricePerKg?: number | undefined;
}

export interface QuantityQuote {
  readonly quantity: number;
  readonly needed: SheetsNeeded;
  readonly boardWeight: Figure;
  readonly boardCostPerThousand: Figure;
  /** One a machine, in the order of the stages. */
  readonly hours: readonly Figure[];
  /** Undefined when nothing is printed. */
  readonly pressHours: Figure | undefined;
  readonly materials: readonly Figure[];
  /** Only where the job says how it is packed. */
  readonly packed: Packed | undefined;
  /** What the cost is the sum of. */
  readonly costs: readonly Figure[];
  readonly cost: Figure;
  readonly costPerThousand: Figure;
  /** Only where a margin was given. */
  readonly pricePerThousand: Figure | undefined;
}

export type MachineKey = 'press' | 'coater' | 'foilPress' | 'embosser' | 'cutter' | 'stripper' | 'gluer' | 'packer';

/** The machine of each stage, and its noun in formulas. */
export const MACHINE_OF: Readonly<Record<Stage, { readonly key: MachineKey; readonly noun: string }>> = {
  printing: { key: 'press', noun: 'press' },
  coating: { key: 'coater', noun: 'coater' },
  foil: { key: 'foilPress', noun: 'foil press' },
  embossing: { key: 'embosser', noun: 'embosser' },
  'die-cutting': { key: 'cutter', noun: 'die-cutter' },
  stripping: { key: 'stripper', noun: 'stripper' },
  gluing: { key: 'gluer', noun: 'gluer' },
  packing: { key: 'packer', noun: 'packer' },
};

export function quoteQuantity(quantity: number, terms: QuoteTerms): QuantityQuote {
  const { route, board, rates, currency } = terms;
  const needed = sheetsNeeded(quantity, route, terms.waste);
  const kg = boardWeight(needed.sheets, board);
  const paid = boardPaid(needed, kg, terms);
  const hours = needed.chain.map(({ stage, into }) => machineHours(MACHINE_OF[stage].noun, into, machineFor(stage, rates)));
  const machines = needed.chain.map(({ stage }, i) => machineCost(MACHINE_OF[stage].noun, hours[i]!, machineFor(stage, rates), currency));
  const consumed = consumables(terms, needed);
  const packing = terms.packing && packed(quantity, terms.packing);
  const costs = [paid, ...tooling(terms), ...consumed.map(({ cost }) => cost), ...machines, ...(packing ? packedDelivery(quantity, packing, terms) : delivery(quantity, kg, terms))];
  const cost = figure('cost', currency, costs.map(({ name }) => name).join(' + '), Object.fromEntries(costs.map((item) => [item.name, item])));
  const costPerThousand = figure('cost per thousand', currency, '1000 × cost ÷ quantity', { cost, quantity });
  return {
    quantity,
    needed,
    boardWeight: kg,
    boardCostPerThousand: figure('board per thousand', currency, '1000 × board ÷ quantity', { board: paid, quantity }),
    hours,
    pressHours: hours[needed.chain.findIndex(({ stage }) => stage === 'printing')],
    materials: [...consumed.flatMap(({ weights }) => weights), ...stackAndCarbon(quantity, needed, kg, terms)],
    packed: packing,
    costs,
    cost,
    costPerThousand,
    pricePerThousand: rates.marginPercent === undefined ? undefined : figure('price per thousand', currency, 'cost per thousand × (1 + margin ÷ 100)', { 'cost per thousand': costPerThousand, margin: rates.marginPercent }),
  };
}

function boardPaid({ sheets }: SheetsNeeded, kg: Figure, { pricePerTonne, pricePerThousandSheets, currency }: QuoteTerms): Figure {
  return pricePerThousandSheets === undefined ? boardCost(kg, given(pricePerTonne, 'board price'), currency) : boardCostByThousand(sheets, pricePerThousandSheets, currency);
}

function machineFor(stage: Stage, rates: Rates): MachineRates | undefined {
  return rates[MACHINE_OF[stage].key];
}

/** Plates and the die: paid once, whatever the quantity. */
function tooling({ route, rates, currency, ownDie }: QuoteTerms): Figure[] {
  const plates = route.colours + route.varnishUnits;
  return [
    ...(plates > 0 ? [figure('plates', currency, 'number of plates × plate price', { 'number of plates': plates, 'plate price': given(rates.platePrice, 'plate price') })] : []),
    ...(stagesOf(route).includes('die-cutting') && !ownDie ? [figure('die', currency, 'die price', { 'die price': given(rates.diePrice, 'die price') })] : []),
  ];
}

/** Weights of what is printed with, and what all of it costs. */
interface Consumed {
  readonly weights: readonly Figure[];
  readonly cost: Figure;
}

/** Ink and varnish. A name for each open figure only where some of its rates were given. */
function consumables(terms: QuoteTerms, { sheets }: SheetsNeeded): Consumed[] {
  const { route, rates, board, currency, inks } = terms;
  const area = sheetArea(board);
  const priced = (name: string, weight: Figure, count: number, price: Input): Consumed => ({ weights: [weight], cost: figure(name, currency, `${weight.name} × ${count} × price`, { [weight.name]: weight, price }) });
  const ink = (value: number | undefined, name: string) => given(value, rates.inkPricePerKg === undefined ? 'ink price' : name);
  const film = given(rates.coatingGramsPerM2, rates.coatingPricePerKg === undefined ? 'varnish price' : 'varnish film');
  const printed = inks
    ? [inkByInk(inks, sheets, terms)]
    : route.colours > 0
      ? [priced('ink', inkWeight(sheets, area, ink(rates.inkCoverage, 'ink coverage'), ink(rates.inkGramsPerM2, 'ink film')), route.colours, given(rates.inkPricePerKg, 'ink price'))]
      : [];
  return [...printed, ...(route.varnishUnits > 0 ? [priced('varnish on board', coatingWeight(sheets, area, film), route.varnishUnits, given(rates.coatingPricePerKg, 'varnish price'))] : [])];
}

/** Each ink by what it covers of a blank; all together one cost. */
function inkByInk(inks: readonly QuotedInk[], sheets: number, { route, rates, currency }: QuoteTerms): Consumed {
  const weights = inks.map(({ name, inkedM2, gramsPerM2 }, i) => inkOnBlanks(`ink ${i + 1}`, name, sheets, route.ups, given(inkedM2, 'blank area'), given(gramsPerM2 ?? rates.inkGramsPerM2, 'ink film')));
  const prices = inks.map(({ pricePerKg }, i) => [`price ${i + 1}`, given(pricePerKg ?? rates.inkPricePerKg, 'ink price')] as const);
  const formula = weights.map(({ name }, i) => `${name} × price ${i + 1}`).join(' + ');
  return { weights, cost: figure('ink', currency, formula, Object.fromEntries([...weights.map((weight) => [weight.name, weight] as const), ...prices])) };
}

/** Cases, pallets and freight of what is packed: their rates are asked for. */
export function packedDelivery(quantity: number, { cases, pallets, grossWeight }: Packed, { rates, currency }: QuoteTerms): Figure[] {
  return [
    rates.packingPerThousand === undefined
      ? figure('packing material', currency, 'cases × case price', { cases, 'case price': given(rates.casePrice, 'case price') })
      : figure('packing material', currency, 'quantity × packing per thousand ÷ 1000', { quantity, 'packing per thousand': rates.packingPerThousand }),
    ...(rates.palletPrice === undefined ? [] : [figure('pallets bought', currency, 'pallets × pallet price', { pallets, 'pallet price': rates.palletPrice })]),
    rates.freightPerPallet === undefined
      ? figure('freight', currency, 'gross weight × freight per tonne ÷ 1000', { 'gross weight': grossWeight, 'freight per tonne': given(rates.freightPerTonne, 'freight rate') })
      : figure('freight', currency, 'pallets × freight per pallet', { pallets, 'freight per pallet': rates.freightPerPallet }),
  ];
}

/** Packing material and freight, counted only where the shop has rates for them. */
export function delivery(quantity: number, kg: Figure, { rates, currency }: QuoteTerms): Figure[] {
  return [
    ...(rates.packingPerThousand === undefined ? [] : [figure('packing material', currency, 'quantity × packing per thousand ÷ 1000', { quantity, 'packing per thousand': rates.packingPerThousand })]),
    ...(rates.freightPerTonne === undefined ? [] : [figure('freight', currency, 'board weight × freight per tonne ÷ 1000', { 'board weight': kg, 'freight per tonne': rates.freightPerTonne })]),
  ];
}

/** The pile, how much of the board bought ends as carton, and carbon, of which the waste has its share. */
function stackAndCarbon(quantity: number, { sheets }: SheetsNeeded, kg: Figure, { caliperMm, rates, blankM2, board }: QuoteTerms): Figure[] {
  const boardYield = blankM2 === undefined ? undefined : figure('board yield', '%', '100 × quantity × blank area ÷ (sheets × sheet area)', { quantity, 'blank area': blankM2, sheets, 'sheet area': sheetArea(board) });
  const whole = rates.carbonPerTonne === undefined ? undefined : carbon(kg, rates.carbonPerTonne);
  return [
    ...(caliperMm === undefined ? [] : [pileHeight(sheets, caliperMm)]),
    ...(boardYield ? [boardYield] : []),
    ...(whole ? [whole] : []),
    ...(whole && boardYield ? [figure('carbon of the waste', 'kg CO2e', 'carbon of the board × (1 − board yield ÷ 100)', { 'carbon of the board': whole, 'board yield': boardYield })] : []),
  ];
}
