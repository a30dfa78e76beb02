import { figure, type Figure, type Input } from './figure.ts';

/** What one more sheet costs: board, press and die-cutter time. */
export interface SheetCost {
  readonly kgPerSheet: Input;
  readonly pricePerTonne: Input;
  readonly pressRate: Input;
  readonly pressSpeed: Input;
  readonly cutterRate: Input;
  readonly cutterSpeed: Input;
}

export function costPerSheet(cost: SheetCost, currency: string): Figure {
  return figure('cost of one more sheet', currency, 'sheet weight × price per tonne ÷ 1000 + press rate ÷ press speed + die-cutter rate ÷ die-cutter speed', {
    'sheet weight': cost.kgPerSheet,
    'price per tonne': cost.pricePerTonne,
    'press rate': cost.pressRate,
    'press speed': cost.pressSpeed,
    'die-cutter rate': cost.cutterRate,
    'die-cutter speed': cost.cutterSpeed,
  });
}

export interface DieChoice {
  /** Per thousand cartons; negative where the die that stands is the better one. */
  readonly saving: Figure;
  /** Cartons from which the new die has paid for itself; undefined where it never does. */
  readonly breakEven: Figure | undefined;
}

/**
 * A die that stands against a new one: what a thousand cartons cost less, and from how many cartons on the new die is
 * paid. Set-up and running waste are alike on both and left out.
 */
export function dieChoice(old: { ups: number; sheetCost: Figure }, fresh: { ups: number; sheetCost: Figure; diePrice: Input }, currency: string): DieChoice {
  const saving = figure('saving per thousand', currency, '1000 × old sheet ÷ old ups − 1000 × new sheet ÷ new ups', {
    'old sheet': old.sheetCost,
    'old ups': old.ups,
    'new sheet': fresh.sheetCost,
    'new ups': fresh.ups,
  });
  if (saving.value !== null && saving.value <= 0) return { saving, breakEven: undefined };
  return { saving, breakEven: figure('break-even', 'cartons', '⌈1000 × die price ÷ saving⌉', { 'die price': fresh.diePrice, saving }) };
}

/** Quantity at which two ways of making cost the same: (F1 − F2) ÷ (V2 − V1). Undefined where one is always better. */
export function breakEven(a: { fixed: number; each: number }, b: { fixed: number; each: number }): number | undefined {
  const quantity = (a.fixed - b.fixed) / (b.each - a.each);
  return Number.isFinite(quantity) && quantity > 0 ? quantity : undefined;
}
