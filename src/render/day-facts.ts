import type { Issue } from '../base/issue.ts';
import type { Change, ChangeCause, PressState } from '../estimate/day/changeover.ts';
import type { OrderWorth } from '../estimate/day/order.ts';
import type { FoodRecord } from '../press/food.ts';
import type { HandoverFacts } from './handover-facts.ts';

/** What the report, the tickets and the JSON of a day's work are made from. Times are minutes after midnight. */
export interface DayFacts {
  readonly name: string | undefined;
  readonly date: string | undefined;
  readonly press: string | undefined;
  readonly tableName: string | undefined;
  readonly start: number;
  /** In the order of the day. */
  readonly forms: readonly DayFormFacts[];
  readonly changeover: number;
  readonly byCause: readonly (readonly [ChangeCause, number])[];
  readonly late: number;
  readonly lowerBound: number;
  readonly optimal: boolean;
  /** In the order in which the job lists them. */
  readonly given: OrderWorth;
  /** Rates that clock times would need. */
  readonly missing: readonly ('press speed' | 'press makeready')[];
  readonly notes: readonly Issue[];
}

export interface DayFormFacts {
  readonly id: string;
  readonly state: PressState;
  readonly caliperClass: string | undefined;
  readonly caliper: number | undefined;
  readonly board: string | undefined;
  readonly sheets: number;
  readonly changes: readonly Change[];
  readonly changeMinutes: number;
  readonly kept: readonly string[];
  /** Inks washed out before this form. */
  readonly washed: readonly string[];
  /** Ink of every unit, undefined where it stands empty. */
  readonly units: readonly (string | undefined)[];
  readonly makeready: number | undefined;
  readonly run: number | undefined;
  /** When the change to this form begins and when its last sheet is printed; undefined where speeds are open. */
  readonly times: { readonly from: number; readonly to: number } | undefined;
  readonly due: number | undefined;
  readonly late: number;
  readonly food: FoodRecord | undefined;
  readonly note: string | undefined;
  /** Where the form's layout is known. */
  readonly crew: HandoverFacts | undefined;
}
