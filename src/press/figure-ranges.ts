/** What a figure of an order or a rate may be; both ends belong to it. Without schemas, so that the page needs none for its fields. */
export interface Range {
  readonly least: number;
  readonly most: number;
  readonly isWhole?: boolean;
}

/** Of any currency, and of whatever is counted in a shop. */
export const AMOUNT = { least: 0, most: 1e9 } as const satisfies Range;
/** What the trade calls paper or board lies well within, g/m². */
export const GRAMMAGE = { least: 5, most: 2000 } as const satisfies Range;
export const SHARE = { least: 0, most: 1 } as const satisfies Range;
export const COLOURS = { least: 0, most: 20, isWhole: true } as const satisfies Range;
export const VARNISH_UNITS = { least: 0, most: 5, isWhole: true } as const satisfies Range;
/** More cartons than any order; beyond, whole numbers would no longer be exact. */
export const CARTONS = { least: 1, most: 1e9, isWhole: true } as const satisfies Range;
/** Quantities of one quote. */
export const MOST_QUANTITIES = 50;

export function isWithin(value: number, { least, most, isWhole = false }: Range): boolean {
  return value >= least && value <= most && (!isWhole || Number.isInteger(value));
}
