import { inputError } from '../base/issue.ts';
import { judge } from '../layout/judge.ts';
import type { LayoutFile, PlacedBlank } from '../layout/layout-file.ts';
import { layoutOf, placementsOf } from '../layout/layout-of.ts';
import type { Limit, Problem, StopReason } from '../layout/problem.ts';
import { separate } from '../nesting/finish/separate.ts';
import { tidied } from '../nesting/finish/tidied.ts';
import type { Effort } from '../nesting/effort.ts';
import { prepareLinearPrograms } from '../nesting/linear-program.ts';
import { checkLocked, numbersOf } from './locked.ts';
import { searchAndJudge, type Host } from './nest-task.ts';
import { problemOfLayout } from './problem-of-layout.ts';

/** A layout under somebody's hand: which of its placements stay where they are, by number. */
export interface HandLayout {
  readonly layout: LayoutFile;
  readonly locked: readonly number[];
}

export interface SolvedRest extends HandLayout {
  readonly limit: Limit;
  readonly stopped: StopReason;
}

/**
 * Keeps the locked blanks and fills the rest of the sheet as well as it goes; what was not locked is laid out anew, all
 * designs of the layout counting alike. Throws an InputError where locked blanks are faulty by themselves or nothing fits.
 */
export async function solveRest({ layout, locked }: HandLayout, { effort, seed }: { effort: Effort; seed: number }, host: Host): Promise<SolvedRest> {
  const kept = checkedLocked({ layout, locked });
  const problem = withLocked(layout, locked);
  const { layouts, solution } = await searchAndJudge(problem, layout.designs, { layouts: 1, effort, seed }, host);
  const { file } = layouts[0];
  return { layout: file, locked: numbersOf(kept, file), limit: solution.limit, stopped: solution.stopped };
}

/**
 * Slides everything that is not locked towards the gripper edge and the side lay, as far as the rules allow and the layout
 * stays as regular as it was: see `tidied`. Blanks that stand a little too near are pushed apart first; throws an InputError
 * where that does not do.
 */
export async function tidy({ layout, locked }: HandLayout): Promise<HandLayout> {
  await prepareLinearPrograms();
  const kept = checkedLocked({ layout, locked });
  const problem = withLocked(layout, locked);
  const apart = separate(problem, placementsOf(layout, problem.parts));
  if (!apart) throw inputError('tidy-faulty', { facts: { faults: judge(layout).faults.length } });
  const file = layoutOf(problem, layout.designs, tidied(problem, apart));
  const { faults } = judge(file);
  if (faults.length > 0) throw new Error(`the judge refused a tidied layout: ${JSON.stringify(faults[0])}`);
  return { layout: file, locked: numbersOf(kept, file) };
}

/** The locked blanks, which lie soundly by themselves. */
function checkedLocked({ layout, locked }: HandLayout): PlacedBlank[] {
  const kept = locked.map((number) => layout.placements[number]);
  checkLocked({ ...layout, placements: kept }, 'locked', (placement) => locked[placement] + 1);
  return kept;
}

function withLocked(layout: LayoutFile, locked: readonly number[]): Problem {
  const problem = problemOfLayout(layout);
  const placements = placementsOf(layout, problem.parts);
  return { ...problem, locked: locked.map((number) => placements[number]) };
}
