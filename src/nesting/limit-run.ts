import type { Limit, Problem } from '../layout/problem.ts';
import { COARSE, FINE, cliqueLimit, type CliqueStep } from './limits/clique-limit.ts';

/** Seeks lower limits in slices of counted work, beside the search for layouts. */
export interface LimitRun {
  /** Goes on for a slice of work or until nothing is left to do; gives the limits found, each lower than the one before. */
  advance(): Promise<readonly Limit[]>;
}

/** How the clique cover is sought at an effort. */
export interface LimitBudget {
  /** Work between two meetings with the search, about a microsecond each. */
  readonly slice: number;
  readonly depth: 'coarse' | 'fine';
  /** Above so many ups the cover's program is too large to beat the closed forms in the time there is. */
  readonly mostUps: number;
}

const DEPTHS = { coarse: COARSE, fine: FINE };

/** `best`: ups of the layout in hand; once no more than these are proved possible, the run is over. */
export function startLimitRun(problem: Problem, { slice, depth, mostUps }: LimitBudget, best: number, seed: number): LimitRun {
  const steps: AsyncGenerator<CliqueStep, void> | undefined = best > mostUps ? undefined : cliqueLimit(problem, { best, seed, depth: DEPTHS[depth] });
  let over = steps === undefined;
  return {
    async advance() {
      const limits: Limit[] = [];
      for (let done = 0; !over && done < slice; ) {
        const step = await steps!.next();
        if (step.done) over = true;
        else {
          done += step.value.work;
          if (step.value.limit) limits.push(step.value.limit);
        }
      }
      return limits;
    },
  };
}
