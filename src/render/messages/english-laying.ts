import type { MessageTable } from './catalogue.ts';

/** Laying out: what contradicts, what does not fit. */
export const layingMessages: MessageTable = {
  'sheet-grain-missing': '--grain {value} needs the grain of the sheet. Add --sheet-grain x (along the gripper edge), y, long or short.',
  'drawing-grain-missing': '--sheet-grain {value} needs the side of the drawing along which the grain must run. Add --grain x, y or any.',
  'blank-larger-than-usable': '{where}: turned by {rotation}° the blank needs {needsWidth} × {needsHeight} mm, the usable area is {width} × {height} mm: {overWidth} mm too wide, {overHeight} mm too deep. Take a larger sheet, smaller margins or another rotation.',
  'no-blank-fits': '{where}: not a single blank fits clear of margins, bar and keep-outs. Take a larger sheet or move the bar.',
  'grid-does-not-fit': '{where}: {rows} rows × {columns} columns do not fit on the usable area. Ask for fewer or take a larger sheet.',
  'locked-other-outline': '{where}: design {design} has another outline than the drawing. Lock blanks of the same drawing only.',
  'locked-not-sound': '{where}: blanks {blanks} are faulty on this sheet as they lie ({kind}, {by} mm). Mend or unlock them.',
  'tidy-faulty': 'These blanks cannot be pushed apart as they lie: {faults} faults are left. Mend the overlaps by hand, then tidy.',
  'no-sheet-holds-blank': '{where}: none of the {count} sheets holds the blank. List larger sheets or make the margins smaller.',
  'no-sheets-listed': '{where}: no sheet is listed that the machines take. List sheets, parents, reels or a range made to order.',
  'die-other-outline': '{where}: the die cuts another outline ({design}) than the drawing. Give the die of this drawing.',
  'die-layout-missing': '{where}: the die has no layout. Give "layout" with its layout file, or the layout file itself.',
  'die-layout-faulty': '{where}: the layout of the die has {faults} faults. Judge and mend it first.',
  'compare-quantities-assumed': 'quantities were not given: {quantities} cartons are taken.',
  'compare-route-assumed': '{what} were not given: {value}.',
  'limit-file-not-valid': '{where}: this is no limit file. Write one with nest --explain-limit.',
  'limit-holds': 'limit {ups}: recomputed, no layout of this design on this sheet has more.',
  'limit-refused': 'the limit does not hold for this sheet and design: {reason}.',
  'blank-wider-than-reel': '{where}: the blank needs {needs} mm across the reel, which is {width} mm wide. Take a wider reel or allow another rotation.',
  'no-cut-off-found': '{where}: the blanks were not all placed within {metres} m. Ask for fewer ups or more effort.',
  'reel-length': '{ups} blanks on a reel of {width} mm: cut-off {length} mm, {yield} % of it blanks; no cut-off under {bound} mm is possible. The gap is kept between blanks, not across the cut.',
  'reel-shortest': '{ups} blanks on a reel of {width} mm: cut-off {length} mm, {yield} % of it blanks; the shortest possible. The gap is kept between blanks, not across the cut.',
  'fewer-layouts': '{count} truly different layouts were asked for, {found} found. More effort may find more.',
  'layout-refused-by-judge': 'one of the layouts found was refused by the judge ({kind}, {by} mm) and left out.',
};
