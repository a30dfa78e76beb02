import type { MessageTable } from './catalogue.ts';

/** Curves and outlines. */
export const geometryMessages: MessageTable = {
  'path-data-wrong': '{where}: the path data cannot be read from character {position} on ("{found}"). Correct it there; what stands before it is sound.',
};
