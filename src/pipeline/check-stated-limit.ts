import { inputError } from '../base/issue.ts';
import type { LayoutFile } from '../layout/layout-file.ts';
import { closedFormLimits } from '../nesting/limits/closed-form.ts';
import { checkLimit, type Checked } from '../proof/check.ts';
import { problemOfLayout } from './problem-of-layout.ts';
import { statedProblem } from './verify-limit.ts';

/**
 * Recomputes a limit, as `nest --explain-limit` writes it, for the sheet and design of a layout file: from its certificate
 * with the exact checker, or from the closed forms. `where` names the file. Throws an InputError when it is no limit file.
 */
export function checkStatedLimit(layout: LayoutFile, stated: unknown, where: string): Checked {
  const { format, ups, certificate } = (stated ?? {}) as { format?: unknown; ups?: unknown; certificate?: unknown };
  if (format !== 'blankwright-limit' || typeof ups !== 'number' || !Number.isInteger(ups)) throw inputError('limit-file-not-valid', { where });
  const problem = problemOfLayout(layout);
  if (certificate === undefined) return claimed(ups, Math.min(...closedFormLimits(problem).map((limit) => limit.ups)));
  if (problem.parts.length !== 1) return { ok: false, reason: 'a certificate speaks of one design' };
  const checked = checkLimit(certificate, statedProblem(problem));
  return checked.ok ? claimed(ups, checked.ups) : checked;
}

function claimed(ups: number, proved: number): Checked {
  return proved <= ups ? { ok: true, ups } : { ok: false, reason: `only ${proved} is proved` };
}
