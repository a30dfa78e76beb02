import type { StopReason } from '../layout/problem.ts';

/** A given set of blanks on a reel. Millimetres. */
export interface ReelFacts {
  readonly name: string;
  /** Across the machine direction. */
  readonly reelWidth: number;
  readonly cutOff: number;
  /** No cut-off is shorter. */
  readonly leastCutOff: number;
  readonly designs: readonly { readonly id: string; readonly ups: number; readonly widthMm: number; readonly heightMm: number; readonly rotations: readonly number[] }[];
  readonly gap: number;
  readonly bleed: number;
  /** Area of the blanks over that of the cut-off, 0 … 1. */
  readonly yield: number;
  readonly stopped: StopReason;
  readonly seconds: number;
  readonly seed: number;
}

export function upsOf({ designs }: ReelFacts): number {
  return designs.reduce((sum, { ups }) => sum + ups, 0);
}
