import type { LimitBudget } from './limit-run.ts';

/** How long a person is willing to wait. Budgets are counted work; the seconds are their calibration on two slow cores. */
export type Effort = 'quick' | 'normal' | 'thorough';

export interface Budget {
  /** Work of the pattern searches together. */
  readonly patterns: number;
  /** Look-ups of the free search in all, and of each lane in a round. */
  readonly free: number;
  readonly laneWork: number;
  /** Whether there is time for the linear programs that push layouts together. */
  readonly pushes: boolean;
  /** Absent: limits of closed form only. */
  readonly limit?: LimitBudget;
}

const BUDGETS: Readonly<Record<Effort, Budget>> = {
  quick: { patterns: 4e6, free: 6e6, laneWork: 1e6, pushes: false },
  normal: { patterns: 2e7, free: 1.3e9, laneWork: 8e6, pushes: true, limit: { slice: 4e5, depth: 'coarse', mostUps: 60 } },
  thorough: { patterns: 2e8, free: 2.4e10, laneWork: 8e6, pushes: true, limit: { slice: 1e6, depth: 'fine', mostUps: 150 } },
};

export function budgetOf(effort: Effort): Budget {
  return BUDGETS[effort];
}
