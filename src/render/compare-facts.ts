import type { Issue } from '../base/issue.ts';
import type { LayoutFile } from '../layout/layout-file.ts';
import type { SheetOrigin } from '../press/sheet-candidates.ts';
import type { Stage } from '../press/stages.ts';

interface Sides {
  readonly width: number;
  readonly height: number;
}

/** One sheet of a comparison. Millimetres; figures by quantity run parallel to `CompareFacts.quantities`. */
export interface ComparedSheetFacts {
  readonly sheet: Sides;
  readonly grain: 'x' | 'y' | undefined;
  readonly origin: SheetOrigin;
  /** The layout is that of a die that stands, with this number. */
  readonly die: { readonly number: string | undefined } | undefined;
  readonly ups: number;
  readonly upperBound: number;
  readonly searched: 'few-rows' | 'rows' | 'patterns' | 'full' | 'die';
  /** Nothing lost. */
  readonly boardM2PerThousand: number;
  /** With makeready and running waste. */
  readonly boardM2WithWaste: readonly number[];
  readonly sheetsToOrder: readonly number[];
  readonly costPerThousand: readonly (number | null)[];
  readonly boardCostPerThousand: readonly (number | null)[];
  /** Fewest cartons for which the mill makes it. */
  readonly fromCartons: number | undefined;
  readonly leastSheet: Sides;
  readonly sheetToOrder: Sides;
  readonly layout: LayoutFile;
  /** Cost per thousand over quantity, where it is known. */
  readonly curve: readonly { readonly quantity: number; readonly cost: number }[];
}

/** What the report, the charts and the JSON of a comparison are made from. */
export interface CompareFacts {
  readonly name: string;
  readonly quantities: readonly number[];
  readonly currency: string;
  readonly ratesName: string | undefined;
  /** What decides: money, or board where some rate is missing for every sheet. */
  readonly measure: 'money' | 'board';
  /** The first is the usual one. */
  readonly sheets: readonly ComparedSheetFacts[];
  readonly winners: readonly { readonly fromQuantity: number; readonly candidate: number }[];
  readonly leastBoard: number;
  readonly skipped: number;
  readonly missing: readonly string[];
  readonly toleranceMm: number;
  /** Colours, varnish units and stages that cost and waste were counted with. */
  readonly route: { readonly colours: number; readonly varnishUnits: number; readonly stages: readonly Stage[] };
  readonly wasteTable: string;
  readonly notes: readonly Issue[];
}

/**
 * The sheet that wins at a quantity; undefined where nothing can be had in so small a lot. Near the quantity where two change
 * places they take turns, since whole sheets are bought: where figures are known for the quantity itself, they decide.
 */
export function winnerAt({ winners, sheets, quantities, measure }: Pick<CompareFacts, 'winners' | 'sheets' | 'quantities' | 'measure'>, quantity: number): number | undefined {
  const lasting = winners.findLast(({ fromQuantity }) => fromQuantity <= quantity)?.candidate;
  const asked = quantities.indexOf(quantity);
  if (lasting === undefined || asked < 0) return lasting;
  const figures = sheets.map(({ costPerThousand, boardM2WithWaste, fromCartons = 0 }) => (measure === 'money' ? (costPerThousand[asked] ?? Infinity) : quantity < fromCartons ? Infinity : boardM2WithWaste[asked]!));
  const least = Math.min(...figures);
  return figures[lasting]! <= least ? lasting : figures.indexOf(least);
}
