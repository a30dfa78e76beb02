import { MM_PER_INCH } from '../base/units.ts';
import type { BasicName } from '../press/basis-weights.ts';
import type { Figure } from './figure.ts';

/** Whole packets or pallets for so many sheets. */
export function wholeUnits(sheets: number, unit: number): number {
  return Math.ceil(sheets / unit);
}

/**
 * Fewest cartons for which the mill makes the sheet: sheets for a quantity never fall as the quantity grows, so halving
 * finds the first that weighs enough. Undefined above `most`.
 */
export function cartonsForTonnes(tonnes: number, kgFor: (quantity: number) => number, most: number): number | undefined {
  const enough = (quantity: number) => kgFor(quantity) >= tonnes * 1000;
  if (!enough(most)) return undefined;
  let [low, high] = [1, most];
  while (low < high) {
    const middle = Math.floor((low + high) / 2);
    if (enough(middle)) high = middle;
    else low = middle + 1;
  }
  return low;
}

/** What a sheet is as ordered, in the words of a purchase line. */
export interface OrderedSheet {
  readonly widthMm: number;
  readonly heightMm: number;
  /** Side along the gripper (x) or across (y) that runs with the fibres. */
  readonly grain?: 'x' | 'y' | undefined;
  readonly grade?: string | undefined;
  readonly grammage: number;
  readonly caliperMm?: number | undefined;
  readonly toleranceMm?: number | undefined;
}

/**
 * The size with the machine direction marked (M) behind its side (ISO 217, from memory): mills often read the second
 * figure as the grain, here the first is the gripper edge, so the mark must be there.
 */
export function sheetSizeText({ widthMm, heightMm, grain }: OrderedSheet, unit: 'mm' | 'in' = 'mm'): string {
  const mark = (axis: 'x' | 'y') => (grain === axis ? ' (M)' : '');
  const side = (mm: number) => (unit === 'mm' ? mm : Math.round((mm / MM_PER_INCH) * 1000) / 1000);
  return `${side(widthMm)}${mark('x')} × ${side(heightMm)}${mark('y')} ${unit}`;
}

/** What is bought for one quantity. */
export interface Purchase {
  readonly sheet: OrderedSheet;
  readonly sheets: number;
  readonly kg: number;
  readonly packets: number | undefined;
  readonly pallets: number | undefined;
  /** The highest pile on a pallet, without the pallet. */
  readonly pile?: Figure | undefined;
  /** Basic size that the basis weight goes by. */
  readonly basis?: BasicName | undefined;
  /** Where the sheets are cut from a reel. */
  readonly reel: { readonly widthMm: number; readonly metres: Figure; readonly kg: Figure } | undefined;
  /** Working days from order to delivery. */
  readonly leadDays?: number | undefined;
  readonly delivery: string | undefined;
}
