import type { MessageTable } from './catalogue.ts';

/** Blanks from dimensions; `{where}` names the style or the parameter. */
export const styleMessages: MessageTable = {
  'style-unknown': '{where}: there is no such style. Styles are: {styles}.',
  'style-parameter-unknown': '{where}: the style has no such parameter. It has: {known}.',
  'style-dimension-missing': '{where} is missing ({meaning}). Give it in mm.',
  'style-parameter-out-of-limits': '{where} {value:mm} ({meaning}) is out of its limits: give {least} mm{leastText} to {most} mm{mostText}.',
  'style-too-many-dimensions': '{where} takes {wanted}; {given} figures were given.',
};
