import type { Issue } from '../base/issue.ts';
import { boardWeight, pileHeight, reelLength } from '../estimate/board.ts';
import { cheapestByQuantity } from '../estimate/cheapest.ts';
import { cartonsForTonnes, wholeUnits, type OrderedSheet, type Purchase } from '../estimate/buying.ts';
import { costPerSheet, dieChoice, type DieChoice } from '../estimate/die-choice.ts';
import { inkZones } from '../estimate/ink-zones.ts';
import { figure, given } from '../estimate/figure.ts';
import { quoteQuantity, type QuantityQuote } from '../estimate/quote.ts';
import { sheetsNeeded } from '../estimate/sheets-needed.ts';
import { judge } from '../layout/judge.ts';
import { holdsRates } from '../press/rates.ts';
import type { Size } from '../press/sheet-areas.ts';
import type { QuoteFacts } from '../render/quote-facts.ts';
import { MOST_CARTONS, type QuoteJob } from './quote-job.ts';

/** All figures of a quote. No search: ups and sheet are given. */
export function makeQuote(job: QuoteJob): QuoteFacts {
  const faults = layoutNotes(job);
  const isSound = faults.length === 0;
  const quantities = job.quantities.map((quantity) => quoteQuantity(quantity, job.terms));
  const die = job.existingDie && againstExisting(job, job.existingDie);
  const missing = quantities.flatMap(({ cost, boardCostPerThousand, packed }) => [...cost.missing, ...boardCostPerThousand.missing, ...(packed?.figures.flatMap((one) => one.missing) ?? [])]);
  const { minimumTonnes } = job.board;
  const { terms, sheet, existingDie } = job;
  return {
    name: job.name,
    customer: job.customer,
    date: job.date,
    validUntil: job.validUntil,
    currency: terms.currency,
    waste: terms.waste,
    ratesName: terms.rates.name,
    anyRates: holdsRates(terms.rates),
    ups: terms.route.ups,
    sheet,
    grammage: terms.board.grammage,
    quantities,
    purchases: quantities.map((quantity) => purchaseOf(job, quantity)),
    millMinimum: minimumTonnes === undefined ? undefined : { tonnes: minimumTonnes, cartons: cartonsForMill(job, minimumTonnes) },
    die: die && existingDie && { ...die, existingUps: existingDie.ups, number: existingDie.number, rack: existingDie.rack, worn: quantities.filter(({ quantity }) => isWorn(job, quantity)).map(({ quantity }) => quantity) },
    layouts: layoutsByQuantity(job),
    product: job.product,
    units: job.units,
    inkZones: isSound && job.layout && job.inks?.map(({ name, coverage }) => ({ name, zones: inkZones(job.layout!, coverage, job.inkZoneMm) })),
    food: job.food,
    oversPercent: job.oversPercent,
    locale: job.locale,
    missing: [...new Set([...missing, ...(die ? [...die.saving.missing, ...(die.breakEven?.missing ?? [])] : [])])],
    notes: [...job.notes, ...faults],
  };
}

/** The die that stands has not so many strokes left. */
function isWorn({ existingDie, terms }: QuoteJob, quantity: number): boolean {
  if (existingDie?.strokesLeft === undefined) return false;
  return sheetsNeeded(quantity, { ...terms.route, ups: existingDie.ups }, terms.waste).sheets > existingDie.strokesLeft;
}

/** This layout, the die that stands and the alternatives: which costs least from how many on. Undefined where it stands alone or a rate is missing. */
function layoutsByQuantity(job: QuoteJob): QuoteFacts['layouts'] {
  const { terms, existingDie, sheet } = job;
  const all = [
    { name: undefined, ups: terms.route.ups, sheet, ownDie: terms.ownDie, isDie: false },
    ...(existingDie ? [{ name: existingDie.number, ups: existingDie.ups, sheet: existingDie.sheet, ownDie: true, isDie: true }] : []),
    ...job.alternatives.map((one) => ({ ...one, isDie: false })),
  ];
  if (all.length === 1) return undefined;
  const costAt = (one: (typeof all)[number]) => (quantity: number) =>
    one.isDie && isWorn(job, quantity) ? undefined : quoteQuantity(quantity, { ...terms, route: { ...terms.route, ups: one.ups }, board: { ...terms.board, widthMm: one.sheet.width, heightMm: one.sheet.height }, ownDie: one.ownDie }).cost.value ?? undefined;
  const winners = cheapestByQuantity(all.map((one) => ({ ups: one.ups, costAt: costAt(one) })), MOST_CARTONS);
  const layoutOf = (candidate: number) => {
    const { name, ups, sheet: on, ownDie } = all[candidate];
    return { own: candidate === 0, name, ups, sheet: on, ownDie };
  };
  return winners.length === 0 ? undefined : winners.map(({ fromQuantity, candidate, turns }) => ({ fromQuantity, ...layoutOf(candidate), ...(turns && { turns: turns.filter((one) => one !== candidate).map(layoutOf) }) }));
}

function layoutNotes({ layout }: QuoteJob): Issue[] {
  if (!layout) return [];
  const { state, faults } = judge(layout);
  return state === 'sound' ? [] : [{ code: 'layout-of-quote-faulty', severity: 'warning', facts: { faults: faults.length } }];
}

function cartonsForMill({ terms }: QuoteJob, tonnes: number): number | undefined {
  return cartonsForTonnes(tonnes, (quantity) => boardWeight(sheetsNeeded(quantity, terms.route, terms.waste).sheets, terms.board).value!, MOST_CARTONS);
}

function purchaseOf({ terms, board, grade, sheet }: QuoteJob, { needed: { sheets }, boardWeight: kg }: QuantityQuote): Purchase {
  const grain = board.sheetGrain === 'long' || board.sheetGrain === 'short' ? ((board.sheetGrain === 'long') === sheet.width > sheet.height ? 'x' : 'y') : board.sheetGrain;
  const ordered: OrderedSheet = { widthMm: sheet.width, heightMm: sheet.height, grain, grade, grammage: terms.board.grammage, caliperMm: terms.caliperMm, toleranceMm: board.toleranceMm };
  return {
    sheet: ordered,
    sheets,
    kg: kg.value!,
    packets: board.packet && wholeUnits(sheets, board.packet),
    pallets: board.pallet && wholeUnits(sheets, board.pallet),
    pile: board.pallet && terms.caliperMm ? pileHeight(Math.min(sheets, board.pallet), terms.caliperMm) : undefined,
    basis: board.basis,
    reel: reelOf(board.reelWidth, sheet, sheets, terms.board.grammage),
    leadDays: board.leadDays,
    delivery: board.delivery,
  };
}

/** The reel's width is one side of the sheet (the one it equals, else the longer that fits); the other is cut. */
function reelOf(reelWidth: number | undefined, { width, height }: Size, sheets: number, grammage: number): Purchase['reel'] {
  if (reelWidth === undefined) return undefined;
  const cut = reelWidth === height || (reelWidth < width && reelWidth >= height) ? width : height;
  const metres = reelLength(sheets, cut);
  return { widthMm: reelWidth, metres, kg: figure('reel weight', 'kg', 'reel length × reel width × grammage ÷ 1000000', { 'reel length': metres, 'reel width': reelWidth, grammage }) };
}

/** Sheets alike but for their number of ups: makeready and running waste are alike too and left out. */
function againstExisting({ terms, sheet }: QuoteJob, existing: { readonly ups: number; readonly sheet: Size }): DieChoice {
  const { rates, board, currency, route } = terms;
  const perSheet = ({ width, height }: Size) =>
    costPerSheet(
      {
        kgPerSheet: boardWeight(1, { ...board, widthMm: width, heightMm: height }),
        pricePerTonne: given(terms.pricePerTonne, 'board price'),
        pressRate: given(rates.press?.hourlyRate, 'press rate'),
        pressSpeed: given(rates.press?.speed, rates.press ? 'press speed' : 'press rate'),
        cutterRate: given(rates.cutter?.hourlyRate, 'die-cutter rate'),
        cutterSpeed: given(rates.cutter?.speed, rates.cutter ? 'die-cutter speed' : 'die-cutter rate'),
      },
      currency,
    );
  return dieChoice({ ups: existing.ups, sheetCost: perSheet(existing.sheet) }, { ups: route.ups, sheetCost: perSheet(sheet), diePrice: given(rates.diePrice, 'die price') }, currency);
}
