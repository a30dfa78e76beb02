import type { CutSequence } from '../estimate/guillotine/cut-sequence.ts';
import type { CuttingTime } from '../estimate/guillotine/cutting-time.ts';

/** How a sheet of labels is cut apart by straight cuts. Millimetres. */
export interface CuttingFacts extends CutSequence {
  /** No pattern of straight cuts holds more. */
  readonly exact: boolean;
  /** The same design die-cut from the same sheet. */
  readonly dieCut: { readonly ups: number; readonly limit: number };
  readonly machine: string | undefined;
  readonly liftHeight: number;
  readonly caliper: number | undefined;
  readonly time: CuttingTime;
  readonly setUpMinutes: number;
}
