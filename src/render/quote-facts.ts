import type { RateSource } from '../press/rates.ts';
import type { Issue } from '../base/issue.ts';
import type { Purchase } from '../estimate/buying.ts';
import type { FoodRecord } from '../press/food.ts';
import type { InkZones } from '../estimate/ink-zones.ts';
import type { DieChoice } from '../estimate/die-choice.ts';
import type { QuantityQuote } from '../estimate/quote.ts';
import type { WasteTable } from '../press/waste-table.ts';

/** What a quote makes and counts. */
export type Product = 'carton' | 'label' | 'blank';

/** What the report of a quote is made from. */
export interface QuoteFacts {
  readonly name: string | undefined;
  readonly customer: string | undefined;
  readonly date: string | undefined;
  readonly validUntil: string | undefined;
  readonly currency: string;
  readonly waste: WasteTable;
  readonly ratesName: string | undefined;
  /** Where each rate comes from that the quote asks for, by its name in the quote; where it is known. */
  readonly rateSources?: Readonly<Record<string, RateSource>>;
  /** Whether any price or hourly rate was given, board aside. */
  readonly anyRates: boolean;
  readonly product: Product;
  readonly ups: number;
  readonly sheet: { readonly width: number; readonly height: number };
  readonly grammage: number;
  readonly quantities: readonly QuantityQuote[];
  /** One a quantity. */
  readonly purchases: readonly Purchase[];
  /** Fewest cartons for which the mill makes the sheet; undefined cartons: no order is that large. */
  readonly millMinimum: { readonly tonnes: number; readonly cartons: number | undefined } | undefined;
  /** `worn`: quantities for which it has not strokes enough left. */
  readonly die: (DieChoice & { readonly existingUps: number; readonly number: string | undefined; readonly rack: string | undefined; readonly worn: readonly number[] }) | undefined;
  /** Which layout costs least from how many cartons on; `own` is that of the quote. Undefined where there is no other. */
  readonly layouts: readonly (QuotedLayout & { readonly fromQuantity: number; /** Others that cost least by turns with it here, sheet by sheet. */ readonly turns?: readonly QuotedLayout[] })[] | undefined;
  /** Where the job names its inks and its layout is known and sound. */
  readonly inkZones?: readonly { readonly name: string; readonly zones: InkZones }[] | false | undefined;
  readonly food: FoodRecord | undefined;
  /** The line to order by: metric, or in inches as well. */
  readonly units: 'metric' | 'inch';
  readonly oversPercent: number;
  /** BCP 47. */
  readonly locale: string;
  /** Rates that nobody gave. */
  readonly missing: readonly string[];
  readonly notes: readonly Issue[];
}

/** A layout that the quote is held against, or the quote's own. */
export interface QuotedLayout {
  readonly own: boolean;
  readonly name: string | undefined;
  readonly ups: number;
  readonly sheet: { readonly width: number; readonly height: number };
  readonly ownDie: boolean;
}
