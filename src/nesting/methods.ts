import type { Methods } from './driver.ts';
import { budgetOf } from './effort.ts';
import { compact } from './finish/compact.ts';
import { pushWork } from './lanes.ts';
import { closedFormLimits } from './limits/closed-form.ts';
import { prepareLinearPrograms } from './linear-program.ts';
import { patternSearches } from './searches/patterns.ts';
import { layoutIsValid } from './valid.ts';

/** Layouts whose pushing together would take longer, in look-ups, stay as they are: some five hundred blanks. */
const MOST_PUSH_WORK = 5e7;

/** The methods of this product, in the order in which they are tried. */
export const standardMethods: Methods = {
  budgetOf,
  patterns: patternSearches,
  closedFormLimits: (problem) => closedFormLimits(problem),
  isValid: (problem, { placements }) => layoutIsValid(problem, placements),
  pushTogether: async (problem, { placements, source }) => {
    if (pushWork(placements.length) > MOST_PUSH_WORK) return { placements, source };
    await prepareLinearPrograms();
    return { placements: compact(problem, compact(problem, placements, 'gripper'), 'lay'), source };
  },
};
