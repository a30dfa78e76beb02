import type { Issue } from '../base/issue.ts';
import type { BoundName, StopReason } from '../layout/problem.ts';
import type { BrokenCondition } from '../estimate/stripping-conditions.ts';
import type { StrippingWish } from '../press/stripping.ts';
import type { BleedKept } from '../estimate/bleed-kept.ts';
import type { Waste } from '../estimate/waste.ts';
import type { CuttingFacts } from './cutting-facts.ts';

/** What the report of one design on one sheet is made from. Millimetres. */
export interface NestFacts {
  readonly design: { readonly name: string; readonly widthMm: number; readonly heightMm: number; readonly areaMm2: number };
  /** What the blanks are, for the first sentence. */
  readonly product: 'carton' | 'label' | 'blank';
  readonly sheet: { readonly width: number; readonly height: number };
  readonly ups: number;
  /** Absent while nothing is proved yet. */
  readonly limit?: { readonly ups: number; readonly by: BoundName };
  /** Outline area × ups / sheet area, 0 … 1. */
  readonly yield: number;
  readonly gap: number;
  /** Cutting rule saved where neighbours share one; only where they may. */
  readonly ruleSavedMm?: number;
  readonly bleed: number;
  readonly bleedMeeting: 'apart' | 'cut';
  /** Degrees, counter-clockwise. */
  readonly rotations: readonly number[];
  /** The search that found the layout, in the words of `Candidate.source`. */
  readonly source: string;
  /** Absent where the layout is of no search that has come to its end. */
  readonly stopped?: StopReason | undefined;
  readonly seed: number;
  /** Wall time of the search, where it was measured. */
  readonly seconds?: number;
  readonly bestCellDensity?: number;
  readonly waste: Waste;
  /** What was taken for granted or changed, each a sentence of the catalogue. */
  readonly assumed: readonly Issue[];
  /** Facing edges that keep less than the whole bleed; only where bleeds are cut. */
  readonly bleedKept?: readonly BleedKept[];
  /** Limits as they came down, where they are to be charted. */
  readonly limits?: readonly LimitStep[];
  /** Improvements in the order in which they came. */
  readonly history: readonly Improvement[];
  /** Where a wish for stripping was given. */
  readonly stripping?: StrippingFacts | undefined;
  /** Where the sheet was made as small as it could be. */
  readonly leastSheet?: LeastSheetFacts | undefined;
  /** Where the sheet is cut apart by a guillotine; then `ups` are those of straight cuts. */
  readonly cutting?: CuttingFacts | undefined;
}

export interface StrippingFacts {
  readonly wish: StrippingWish;
  /** What the layout shown does not keep. */
  readonly broken: readonly BrokenCondition[];
  /** The fuller layout that breaks the rule, or the one with fewer ups that keeps it. */
  readonly other?: { readonly ups: number; readonly broken: readonly BrokenCondition[] };
  /** No layout that keeps the rule has more. */
  readonly limit?: number;
}

/** How the least sheet that holds so many ups was found. Millimetres. */
export interface LeastSheetFacts {
  readonly ups: number;
  readonly least: 'depth' | 'width' | 'area';
  readonly sheet: NestFacts['sheet'];
  readonly stepMm: number;
  /** No sheet whose varied side is shorter holds so many. */
  readonly impossibleBelowMm?: number;
}

export function leastSheetJson({ ups, least, stepMm, impossibleBelowMm }: LeastSheetFacts): object {
  return { ups, least, stepMm, ...(impossibleBelowMm !== undefined && { impossibleBelowMm }) };
}

export interface Moment {
  /** Counted work when it came. */
  readonly work: number;
  readonly seconds?: number;
}

export interface Improvement extends Moment {
  readonly ups: number;
  readonly source: string;
}

export interface LimitStep extends Moment {
  readonly ups: number;
}
