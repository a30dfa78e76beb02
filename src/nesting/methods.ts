import type { Methods } from './driver.ts';
import { layoutIsValid } from './valid.ts';

/** The methods of this product, in the order in which they are tried. */
export const standardMethods: Methods = {
  patterns: [],
  closedFormLimits: () => [],
  isValid: (problem, candidate) => layoutIsValid(problem, candidate.placements),
};
