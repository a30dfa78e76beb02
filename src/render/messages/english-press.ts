import type { MessageTable } from './catalogue.ts';

/** Sheets, margins, machines, grain. */
export const pressMessages: MessageTable = {
  'bleeds-overlap': 'gap {gap} mm is under twice the bleed ({bleed} mm): the bleeds of neighbours would overlap. Give --gap {needed:mm} or more, a smaller --bleed, or --bleed-meeting cut.',
  'nothing-left-of-sheet': 'nothing is left of the sheet {width} × {height} mm for blanks: side margins take {sides} mm, gripper, tail and bar take {ends} mm. Make the margins smaller or the sheet larger.',
  'margin-raised-for-bleed': '{edge} margin raised from {from} to {to} mm: ink keeps {ink} mm from the edge and the bleed needs {bleed} mm more.',
  'margin-raised-for-bar': '{edge} margin raised from {from} to {to} mm: ink margin {ink} mm, colour bar {bar} mm, and the bar keeps clear of the knives.',
  'square-has-no-long-side': '{where} {value}: the sheet is square ({side} mm) and has no longer side. Say x (along the gripper edge) or y.',
  'machine-binds': '{what}: the {machine} binds (press {press} mm, die-cutter {cutter} mm).',
  'sheet-too-large-for-machine': '{where}: sheet {width} × {height} mm is larger than {machine} takes ({maxWidth} × {maxHeight} mm). Choose a smaller sheet or another machine.',
  'sheet-too-small-for-machine': '{where}: sheet {width} × {height} mm is smaller than {machine} takes ({minWidth} × {minHeight} mm). Choose a larger sheet or another machine.',
  'board-caliper-outside-machine': '{where}: the board is {caliper} mm thick; {machine} takes {least} to {most} mm. Choose another board or machine.',
};
