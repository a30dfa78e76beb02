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
  /** Board bought for a thousand over quantity, waste included, m². */
  readonly boardCurve?: readonly { readonly quantity: number; readonly m2: number }[];
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
  /** From the quantity on until the next; where several take turns sheet by sheet, all of them. */
  readonly winners: readonly { readonly fromQuantity: number; readonly candidate: number; readonly turns?: readonly number[] }[];
  readonly leastBoard: number;
  readonly skipped: number;
  readonly missing: readonly string[];
  readonly toleranceMm: number;
  /** Colours, varnish units and stages that cost and waste were counted with. */
  readonly route: { readonly colours: number; readonly varnishUnits: number; readonly stages: readonly Stage[] };
  readonly wasteTable: string;
  readonly notes: readonly Issue[];
}

/** The winner at a quantity that was asked; undefined where nothing can be had in so small a lot. */
export function winnerAt(facts: Pick<CompareFacts, 'winners' | 'sheets' | 'quantities' | 'measure'>, quantity: number): number | undefined {
  const winner = facts.winners.findLast(({ fromQuantity }) => fromQuantity <= quantity);
  if (!winner?.turns) return winner?.candidate;
  const at = facts.quantities.indexOf(quantity);
  const figure = (index: number) => decidingFigure(facts, index, at) ?? Infinity;
  return winner.turns.toSorted((a, b) => figure(a) - figure(b) || a - b)[0];
}

/** Cost of a thousand, or board with waste, at one of the quantities asked; null where it is not known. */
export function decidingFigure({ sheets, measure }: Pick<CompareFacts, 'sheets' | 'measure'>, index: number, at: number): number | null {
  const { costPerThousand, boardM2WithWaste } = sheets[index]!;
  return (measure === 'money' ? costPerThousand[at] : boardM2WithWaste[at]) ?? null;
}
