import type { Issue } from '../base/issue.ts';
import type { RunCost } from '../estimate/gang/run-cost.ts';
import type { RateSource } from '../press/rates.ts';
import type { WasteTable } from '../press/waste-table.ts';
import type { Product } from './quote-facts.ts';

/** What is said of versions or outlines on common forms in money. Forms that are not pressed are left out. */
export interface RunFacts {
  readonly ids: readonly string[];
  /** Ordered, by version. */
  readonly quantities: readonly number[];
  /** What must come off the forms of each version, and what does. */
  readonly copies: readonly number[];
  readonly made: readonly number[];
  /** Stations of each version: `[form][version]`. */
  readonly counts: readonly (readonly number[])[];
  /** By which the forms go in the plan. */
  readonly numbers: readonly number[];
  /** Pressings of the plan, in which nothing is lost behind the forms; and those taken, so that gluing and packing may lose their share. */
  readonly planned: readonly number[];
  readonly pressings: readonly number[];
  /** Undefined where different outlines share the forms. */
  readonly stations: number | undefined;
  readonly sheet: { readonly width: number; readonly height: number };
  readonly product: Product;
  readonly currency: string;
  readonly waste: WasteTable;
  readonly ratesName: string | undefined;
  /** Where each rate comes from, by its name in the quote; where it is known. */
  readonly rateSources?: Readonly<Record<string, RateSource>>;
  readonly anyRates: boolean;
  readonly cost: RunCost;
  /** Rates that nobody gave. */
  readonly missing: readonly string[];
  /** BCP 47, of the quote. */
  readonly locale: string;
  readonly notes: readonly Issue[];
}

/** Different outlines share the forms; else versions of one blank do. */
export function isOfOutlines({ stations }: Pick<RunFacts, 'stations'>): boolean {
  return stations === undefined;
}

/** Sums over the run; undefined where a rate is missing. */
export interface RunTotals {
  readonly quantity: number;
  readonly sheets: number;
  readonly planned: number;
  readonly pressings: number;
  readonly cost: number | undefined;
  readonly price: number | undefined;
  readonly boardPerThousand: number | undefined;
}

export function runTotals({ quantities, planned, pressings, cost: { forms, cost, pricePerThousand } }: RunFacts): RunTotals {
  const sum = (values: readonly number[]) => values.reduce((all, value) => all + value, 0);
  const quantity = sum(quantities);
  const boards = forms.map(({ costs: [board] }) => board!.value);
  return {
    quantity,
    sheets: sum(forms.map(({ needed }) => needed.sheets)),
    planned: sum(planned),
    pressings: sum(pressings),
    cost: cost.value ?? undefined,
    price: pricePerThousand?.value == null ? undefined : (pricePerThousand.value * quantity) / 1000,
    boardPerThousand: boards.every((board) => board !== null) ? (1000 * sum(boards)) / quantity : undefined,
  };
}

/** Printing plates of each form, varnish plates among them. */
export function platesOf({ cost: { forms } }: Pick<RunFacts, 'cost'>): number[] {
  return forms.map(({ costs }) => costs.find(({ name }) => name === 'plates')?.inputs['number of plates'] ?? 0);
}
