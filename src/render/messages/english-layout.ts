import type { MessageTable } from './catalogue.ts';

/** Layout files and their judgement; blanks that cannot be laid out. */
export const layoutMessages: MessageTable = {
  'layout-format': '{where}: this is not a layout file: "format" is not "{format}". Give a file that nest, gang or reel wrote with --json.',
  'layout-version': '{where}: version {found} of the layout file is not known here. Write it as version {version}.',
  'layout-field': '{where}: {field} must be {wanted}.',
  'ring-not-simple': '{where}: the line touches or crosses itself. It must be one closed line that meets itself nowhere.',
  'true-outline-not-one-loop': '{where}: {loops} lines where one closed loop is wanted.',
  'path-data-not-valid': '{where}: this is not SVG path data from character {position} on.',
  'path-too-long': 'A curve of the layout file takes {points} points; at most {limit} are judged. Simplify the drawing.',
  'design-twice': '{where}: two designs have this id, so its placements are not clear. Give each design its own.',
  'design-unknown': '{where}: there is no design "{design}" in the file.',
  'rotation-not-quarter': '{where}: rotation {rotation} is not a multiple of 90 degrees.',
  'no-placements': 'The layout places no blank, so there is nothing to judge.',
  'blank-too-large': '{where}: the blank is larger than {limit} mm. Check the unit of the drawing, or give --scale.',
  'fault-gap': 'Stations {stations}: the knives are {by} mm too near one another.',
  'fault-overlap': 'Stations {stations}: the blanks overlap, {by} mm deep.',
  'fault-outside': 'Station {stations}: the blank leaves the area where knives may be, by {by} mm.',
  'fault-keep-out': 'Station {stations}: the blank is {by} mm too near an area that must stay free.',
  'fault-bleed': 'Station {stations}: {by} mm are missing for the bleed.',
  'fault-rotation': 'Station {stations}: the design may not stand in this rotation.',
  'fault-outline': 'Station {stations}: the outline and the true curves of the drawing differ by {by} mm. Make the layout file again from the drawing.',
  'judged-sound': '{file}: sound. {ups} ups, every distance kept on the true curves.',
  'judged-faulty': '{file}: faulty. {faults} faults among {ups} ups:',
  'judged-more-faults': 'Further faults follow; the file given by --json lists {listed} of them.',
};
