import { sheetSizeText, type Purchase } from '../estimate/buying.ts';
import type { Figure } from '../estimate/figure.ts';
import type { QuantityQuote } from '../estimate/quote.ts';
import type { QuoteFacts } from './quote-facts.ts';
import { poundsOf } from '../press/basis-weights.ts';
import { roundTo } from './rounded.ts';

/** Money and weights with two decimals, hours with three. */
export function quoteJson(facts: QuoteFacts): string {
  const { die, millMinimum } = facts;
  const content = {
    format: 'blankwright-quote',
    version: 1,
    ...(facts.name !== undefined && { name: facts.name }),
    currency: facts.currency,
    ups: facts.ups,
    sheet: facts.sheet,
    wasteTable: facts.waste.name,
    convention: 'each stage covers what later ones lose: divided by (1 − running waste), rounded up, plus set-up',
    ...(facts.ratesName !== undefined && { rates: facts.ratesName }),
    quantities: facts.quantities.map((quote, i) => quantityJson(quote, facts.purchases[i]!)),
    missing: facts.missing,
    ...(millMinimum && { millMinimum: { tonnes: millMinimum.tonnes, cartons: millMinimum.cartons ?? null } }),
    ...(die && { existingDie: { ups: die.existingUps, savingPerThousand: rounded(die.saving, 2), breakEven: die.breakEven ? rounded(die.breakEven, 0) : null } }),
    ...(facts.layouts && { layouts: facts.layouts.map(({ own, turns, ...layout }) => ({ ...layout, ...(own && { own }), ...(turns && { turns }) })) }),
    ...(facts.inkZones && { inkZones: facts.inkZones.map(({ name, zones }) => ({ ink: name, zoneMm: zones.zoneMm, fromMm: roundTo(zones.fromMm, 3), shares: zones.shares.map((share) => roundTo(share, 4)), upright: zones.upright.map((share) => roundTo(share, 4)) })) }),
    ...(facts.food !== undefined && { food: facts.food }),
    issues: facts.notes.map(({ code, severity, where, facts: details }) => ({ code, severity, where, ...details })),
  };
  return `${JSON.stringify(content, null, 2)}\n`;
}

function quantityJson(quote: QuantityQuote, purchase: Purchase): object {
  const { needed, hours, costs, materials, pressHours, pricePerThousand } = quote;
  const named = (figures: readonly Figure[], decimals: number) => Object.fromEntries(figures.map((one) => [one.name, rounded(one, decimals)]));
  return {
    quantity: quote.quantity,
    sheets: needed.sheets,
    netSheets: needed.netSheets,
    boardKg: rounded(quote.boardWeight, 2),
    boardCostPerThousand: rounded(quote.boardCostPerThousand, 2),
    pressHours: pressHours ? rounded(pressHours, 3) : null,
    costPerThousand: rounded(quote.costPerThousand, 2),
    ...(pricePerThousand && { pricePerThousand: rounded(pricePerThousand, 2) }),
    stages: needed.chain,
    hours: named(hours, 3),
    materials: named(materials, 3),
    ...(quote.packed && { packing: named(quote.packed.figures, 3) }),
    costs: named(costs, 2),
    purchase: {
      size: sheetSizeText(purchase.sheet),
      sheets: purchase.sheets,
      kg: roundTo(purchase.kg, 2),
      ...(purchase.packets !== undefined && { packets: purchase.packets }),
      ...(purchase.pallets !== undefined && { pallets: purchase.pallets }),
      ...(purchase.pile && { pileMm: rounded(purchase.pile, 1) }),
      sizeInches: sheetSizeText(purchase.sheet, 'in'),
      pounds: roundTo(poundsOf(purchase.kg), 2),
      ...(purchase.reel && { reelWidth: purchase.reel.widthMm, reelMetres: rounded(purchase.reel.metres, 1), reelKg: rounded(purchase.reel.kg, 2) }),
    },
    figures: [quote.boardWeight, quote.boardCostPerThousand, ...hours, ...materials, ...(quote.packed?.figures ?? []), ...costs, quote.cost, quote.costPerThousand, ...(pricePerThousand ? [pricePerThousand] : [])].map(
      ({ name, value, unit, formula, inputs }) => ({ name, value, unit, formula, inputs }),
    ),
  };
}

function rounded({ value }: Figure, decimals: number): number | null {
  return value === null ? null : roundTo(value, decimals);
}
