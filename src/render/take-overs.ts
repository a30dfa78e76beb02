interface Winner {
  readonly fromQuantity: number;
  readonly candidate: number;
  readonly turns?: readonly number[];
}

export interface TakeOver {
  readonly fromQuantity: number;
  readonly from: number;
  readonly to: number;
}

/** Where one takes over for good from another: what takes turns on the way is passed over. */
export function takeOvers(winners: readonly Winner[]): TakeOver[] {
  const sure = winners.filter(({ turns }) => turns === undefined);
  return sure.slice(1).flatMap(({ fromQuantity, candidate }, i) => (candidate === sure[i]!.candidate ? [] : [{ fromQuantity, from: sure[i]!.candidate, to: candidate }]));
}
