import { inputError } from '../../../base/issue.ts';
import type { LayoutFile } from '../../../layout/layout-file.ts';
import { layoutOf, placementsOf } from '../../../layout/layout-of.ts';
import type { Placement, Problem } from '../../../layout/problem.ts';
import { compact } from '../../../nesting/finish/compact.ts';
import { separate } from '../../../nesting/finish/separate.ts';
import { solve } from '../../../nesting/solve.ts';
import { layoutIsValid } from '../../../nesting/valid.ts';
import { problemOfLayout } from '../../../pipeline/problem-of-layout.ts';
import { limitHolds } from '../../../pipeline/verify-limit.ts';
import type { Host } from '../host.ts';
import type { ByHandAnswer, ByHandAsk } from '../protocol.ts';

/** Goes on from a layout under the hand: fills the rest of the sheet, or pushes it together. Locked blanks stay. */
export async function workOn({ layout, locked, wish }: ByHandAsk, host: Host<'byHand'>): Promise<ByHandAnswer> {
  const bare = problemOfLayout(layout);
  const placements = placementsOf(layout, bare.parts);
  const problem = { ...bare, locked: locked.map((number) => placements[number]) };
  const worked = wish === 'tidy' ? tidied(problem, placements) : await filled(problem, host);
  const file = layoutOf(problem, layout.designs, worked);
  return { layout: file, locked: lockedIn(file, layout, locked) };
}

async function filled(problem: Problem, { control, pool }: Host<'byHand'>): Promise<readonly Placement[]> {
  if (problem.locked.length > 0 && !layoutIsValid({ ...problem, locked: [] }, problem.locked)) throw inputError('locked-blanks-faulty');
  const { best } = await solve(problem, {
    effort: 'quick',
    seed: 1,
    runner: pool,
    stop: () => (control.stopped() ? 'interrupted' : undefined),
    verifyLimit: (limit) => limitHolds(problem, limit),
  });
  if (!best) throw inputError('no-blank-fits', { where: problem.parts[0].id });
  return best.placements;
}

/** A faulty layout is first taken apart as little as it takes. */
function tidied(problem: Problem, placements: readonly Placement[]): readonly Placement[] {
  const valid = layoutIsValid(problem, placements) ? placements : separate(problem, placements);
  if (!valid) throw inputError('tidy-finds-no-room');
  return compact(problem, compact(problem, valid, 'gripper'), 'lay');
}

/** Numbers of the locked blanks in the new station order. */
function lockedIn(after: LayoutFile, before: LayoutFile, locked: readonly number[]): number[] {
  const keyOf = ({ design, rotation, x, y }: LayoutFile['placements'][number]) => [design, rotation, x, y].join(' ');
  const kept = new Set(locked.map((number) => keyOf(before.placements[number])));
  return after.placements.flatMap((placement, i) => (kept.has(keyOf(placement)) ? [i] : []));
}
