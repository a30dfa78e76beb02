import type { BoundName, Limit } from '../../layout/problem.ts';

/** A value that no layout's ups exceed, as a limit. Values carry their own rounding to the weak side already. */
export function limitOf(by: BoundName, value: number): Limit {
  return { ups: Math.floor(value), value, by };
}
