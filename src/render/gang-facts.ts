import type { Issue } from '../base/issue.ts';
import type { CutSequence } from '../estimate/guillotine/cut-sequence.ts';
import type { LayoutFile } from '../layout/layout-file.ts';

/** What the report and the JSON of a gang run are made from. */
export interface GangFacts {
  readonly ids: readonly string[];
  readonly quantities: readonly number[];
  /** Undefined where different outlines share the forms. */
  readonly stations: number | undefined;
  readonly forms: readonly GangForm[];
  readonly formsAllowed: number;
  readonly costs: { readonly form: number; readonly pressing: number } | undefined;
  /** Of the costs, where the job names it. */
  readonly currency?: string | undefined;
  readonly pressings: number;
  readonly cost: number | undefined;
  /** In pressings, or in money where costs were given. */
  readonly lowerBound: number;
  readonly optimal: boolean;
  readonly overs: readonly number[];
  /** What was allowed of each; absent: no limits were set. */
  readonly oversLimits?: readonly { readonly least: number; readonly greatest: number }[] | undefined;
  /** Designs that could not share a form, and why. */
  readonly apart?: readonly { readonly designs: readonly [string, string]; readonly because: ApartReason; readonly says: readonly [string | undefined, string | undefined] }[] | undefined;
  readonly notes?: readonly Issue[] | undefined;
  /** Each design by itself on its best layout, where that was searched. */
  readonly separate?: { readonly forms: number; readonly pressings: number; readonly cost: number | undefined } | undefined;
}

/** Fields in which designs must agree to share a form; `inks`: together more than the press has units. */
export type ApartReason = 'board' | 'sheetGrain' | 'coating' | 'foodClass' | 'delivery' | 'inks';

export interface GangForm {
  readonly counts: readonly number[];
  readonly pressings: number;
  /** Stations that change their version from the form before. */
  readonly changes?: number | undefined;
  readonly layout?: LayoutFile | undefined;
  /** What each station prints, where that is settled. */
  readonly prints?: readonly string[] | undefined;
  /** Where the sheets are guillotined. Millimetres. */
  readonly cuts?: CutSequence | undefined;
}
