import type { Issue } from '../base/issue.ts';

/** Faults are numbered as in the picture; what has no place has no number. */
export function numberFaults(issues: readonly Issue[]): ReadonlyMap<Issue, number> {
  return new Map(issues.filter(({ place }) => place !== undefined).map((issue, i) => [issue, i + 1]));
}
