/** How long a person is willing to wait. Budgets are counted work; the seconds are their calibration on two slow cores. */
export type Effort = 'quick' | 'normal' | 'thorough';

export const EFFORTS: readonly Effort[] = ['quick', 'normal', 'thorough'];

export interface Budget {
  /** Work of the pattern searches together. */
  readonly patterns: number;
}

const BUDGETS: Readonly<Record<Effort, Budget>> = {
  quick: { patterns: 4e6 },
  normal: { patterns: 2e7 },
  thorough: { patterns: 2e8 },
};

export function budgetOf(effort: Effort): Budget {
  return BUDGETS[effort];
}
