import type { Issue } from '../base/issue.ts';
import type { SheetCandidate } from '../press/sheet-candidates.ts';

/** What a report of many cartons on many sheets is made from. */
export interface BatchFacts {
  readonly name: string;
  /** False where the batch was ended before every task was done. */
  readonly complete: boolean;
  readonly currency: string;
  /** In the job's order. */
  readonly cartons: readonly BatchCarton[];
  /** The job's sheets in their order. */
  readonly sheets: readonly BatchSheet[];
  /** A year, over all cartons whose volume is known: each on the best of its sheets instead of the usual one. */
  readonly total: Saving;
  /** Cartons that could not be used, with every reason. */
  readonly refused: readonly { readonly id: string; readonly where: string; readonly issues: readonly Issue[] }[];
  /** Cartons laid out from a drawing that had to be repaired or leaves something in doubt. */
  readonly doubtful: readonly { readonly id: string; readonly issues: readonly Issue[] }[];
  /** Tasks that failed again and again. */
  readonly setAside: readonly { readonly carton: string; readonly sheet: SheetCandidate; readonly message: string }[];
  /** Tasks to which an earlier engine gave another number. */
  readonly changed: readonly { readonly carton: string; readonly sheet: SheetCandidate; readonly ups: number; readonly before: number; readonly engine: string }[];
}

export interface BatchCarton {
  readonly id: string;
  readonly name: string | undefined;
  readonly yearly: number | undefined;
  readonly cells: readonly BatchCell[];
  /** Indexes into `cells`; undefined where that sheet, or none, holds the carton. */
  readonly usual: number | undefined;
  readonly best: number | undefined;
  readonly saving: Saving | undefined;
}

export interface BatchCell {
  readonly sheet: SheetCandidate;
  /** Undefined where the sheet does not hold the carton. */
  readonly ups: number | undefined;
  readonly upperBound: number | undefined;
  /** Board bought for a thousand cartons, m². */
  readonly boardM2PerThousand: number | undefined;
  /** The answer's name in the library. */
  readonly key: string | undefined;
}

export interface BatchSheet {
  readonly sheet: SheetCandidate;
  /** Cartons that take least board on it. */
  readonly bestFor: number;
  /** A year, if it were bought beside the usual sheets and used for the cartons that gain by it. */
  readonly saving: Saving;
}

/** A year. Net board: makeready and running waste come on top on both sides. */
export interface Saving {
  readonly boardM2: number;
  /** Undefined where the grammage is not known. */
  readonly boardKg: number | undefined;
  /** Undefined where a price is not known. */
  readonly money: number | undefined;
}
