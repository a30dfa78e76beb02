import type { LayoutFile } from '../layout/layout-file.ts';
import { readLayoutFile } from '../layout/layout-file.ts';
import { layoutOf } from '../layout/layout-of.ts';
import type { Limit, Problem } from '../layout/problem.ts';
import { closedFormLimits } from '../nesting/limits/closed-form.ts';
import { checkLimit, type Checked } from '../proof/check.ts';
import { isHalved } from './both-sides.ts';
import type { NestAnswer, NestTask } from './nest-task.ts';
import { statedProblem } from './verify-limit.ts';

/**
 * Whether an answer from elsewhere is one to this task: its layouts lie on the task's sheet by the task's rules, and no
 * layout can hold more than its limit says. That the layouts are sound is for the judge, who believes the sheet and rules
 * that they name.
 */
export function checkAnswer({ problem, design, backDesign }: NestTask, { layouts, solution: { limit } }: NestAnswer): Checked {
  const asked = JSON.stringify(frameOf(layoutOf(problem, backDesign ? [design, backDesign] : [design], [])));
  for (const { file } of layouts) {
    const { ups, upperBound } = file.result ?? {};
    if (JSON.stringify(frameOf(file)) !== asked) return { ok: false, reason: 'a layout is not for the sheet, rules or blank that were asked about' };
    if (ups !== file.placements.length || upperBound !== limit.ups) return { ok: false, reason: 'a layout states other figures than it holds' };
    if (file.placements.length > limit.ups) return { ok: false, reason: `${file.placements.length} ups are more than the limit of ${limit.ups}` };
  }
  return checkedLimit(problem, limit);
}

/** Everything of a layout but its placements and what its maker says of it, in one form. */
function frameOf(layout: LayoutFile): unknown {
  const { placements: _, result: __, ...frame } = readLayoutFile({ format: 'blankwright-layout', version: 1, units: 'mm', ...layout }, 'layout');
  return frame;
}

/** Recomputed: from the certificate by the exact checker, else by the closed forms. */
function checkedLimit(problem: Problem, { ups, certificate }: Limit): Checked {
  if (isHalved(problem)) return { ok: false, reason: 'limits of mirrored halves are not recomputed' };
  const proved: Checked = certificate === undefined ? { ok: true, ups: closedFormLimits(problem)[0]!.ups } : checkLimit(certificate, statedProblem(problem));
  return proved.ok && proved.ups > ups ? { ok: false, reason: `a limit of ${ups} is stated, only ${proved.ups} is proved` } : proved;
}
