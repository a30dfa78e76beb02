import type { Cell, Limit, Problem, StopReason } from '../layout/problem.ts';
import { differentLayouts } from './different.ts';
import { drive, type DriverSettings, type Methods } from './driver.ts';
import type { Improvement, RankedLayout } from './incumbents.ts';
import { standardMethods } from './methods.ts';

export interface SolveSettings extends DriverSettings {
  /** How many truly different layouts are wanted; default 1. */
  readonly layouts?: number;
  /** Puts the layouts kept, best first, into another order of preference. */
  readonly order?: (layouts: readonly RankedLayout[]) => readonly RankedLayout[];
}

export interface Solution {
  /** Undefined when not a single blank fits. */
  readonly best: RankedLayout | undefined;
  /** Truly different layouts, best first, `best` among them; at most as many as asked for. */
  readonly alternatives: readonly RankedLayout[];
  readonly bestCell: Cell | undefined;
  /** The least proved limit. Undefined only when a run was stopped before the first one was known. */
  readonly limit: Limit | undefined;
  readonly stopped: StopReason;
  /** Counted work. */
  readonly work: number;
  readonly history: readonly Improvement[];
}

/** The best layout of one sheet. Same problem, effort and seed give the same answer, whatever the runner. */
export function solve(problem: Problem, settings: SolveSettings): Promise<Solution> {
  return solveWith(standardMethods, problem, settings);
}

/** The same with methods of the caller's choice: tests, and tables that compare methods. */
export async function solveWith(methods: Methods, problem: Problem, settings: SolveSettings): Promise<Solution> {
  const { incumbents, stopped } = await drive(problem, settings, methods);
  const layouts = settings.order?.(incumbents.layouts) ?? incumbents.layouts;
  return {
    best: layouts[0],
    alternatives: differentLayouts(problem, layouts, settings.layouts ?? 1),
    bestCell: incumbents.cells[0],
    limit: incumbents.limit,
    stopped,
    work: incumbents.work,
    history: incumbents.history,
  };
}
