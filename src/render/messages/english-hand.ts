import type { HandWords } from './hand-words.ts';

const faultKinds: HandWords['faultKinds'] = {
  gap: 'knives too near',
  overlap: 'overlaps a neighbour',
  outside: 'outside the area for knives',
  'keep-out': 'too near an area that must stay free',
  bleed: 'bleed cut short',
  rotation: 'rotation not allowed',
  outline: 'outline and drawing differ',
};

export const englishHand: HandWords = {
  sheet: (size, blanks) => `Sheet ${size} with ${blanks} ${blanks === 1 ? 'blank' : 'blanks'}, gripper edge at the bottom`,
  blank: ({ station, design, rotation, fromLeft, fromGripper, locked, faults }, format) =>
    [
      station === undefined ? 'New blank' : `Station ${station}`,
      design,
      `rotation ${rotation}°`,
      `${format.length(fromLeft)} from the left`,
      `${format.length(fromGripper)} from the gripper`,
      ...(locked ? ['locked'] : []),
      ...(faults.length > 0 ? [`faulty: ${faults.map((kind) => faultKinds[kind]).join(', ')}`] : []),
    ].join(', '),
  commands: {
    undo: { name: 'Undo', does: 'take back the last step' },
    redo: { name: 'Redo', does: 'do again what was taken back' },
    'turn-next': { name: 'Turn', does: 'turn to the next rotation allowed' },
    'turn-back': { name: 'Turn back', does: 'turn to the rotation allowed before' },
    'turn-quarter': { name: 'Quarter turn', does: 'turn by 90° even where it is not allowed' },
    duplicate: { name: 'Duplicate', does: 'place a copy one step on' },
    remove: { name: 'Delete', does: 'take the blank off the sheet' },
    lock: { name: 'Lock', does: 'keep the blank where it is, or free it again' },
    move: { name: 'Move', does: 'move' },
    'rows-and-columns': { name: 'Rows × columns…', does: 'lay out the whole sheet, or repeat the selection, in rows and columns' },
    gather: { name: 'Gather', does: 'push the selection together into a block' },
    'equal-steps': { name: 'Equal steps', does: 'give the selection equal steps from first to last, row by row' },
    'align-left': { name: 'Left edges', does: 'bring left edges onto one line' },
    'align-right': { name: 'Right edges', does: 'bring right edges onto one line' },
    'align-gripper': { name: 'Gripper sides', does: 'bring the sides towards the gripper onto one line' },
    'align-tail': { name: 'Tail sides', does: 'bring the sides towards the tail onto one line' },
    'align-above': { name: 'Middles in a column', does: 'bring middles onto one upright line' },
    'align-beside': { name: 'Middles in a row', does: 'bring middles onto one level line' },
    'align-arrows': { name: 'Edges in line', does: 'bring edges onto one line, on the side of the arrow' },
    'solve-rest': { name: 'Solve the rest', does: 'keep locked blanks and fill the rest of the sheet' },
    tidy: { name: 'Tidy this', does: 'push everything towards gripper and lay; rows stay level, columns in line' },
    stop: { name: 'Stop', does: 'stop, and take the best found so far' },
    measure: { name: 'Measure', does: 'measure from point to point' },
    keys: { name: 'Keys', does: 'show this list' },
    'zoom-in': { name: 'Zoom in', does: 'zoom in' },
    'zoom-out': { name: 'Zoom out', does: 'zoom out' },
    'whole-sheet': { name: 'Whole sheet', does: 'show the whole sheet' },
    'whole-window': { name: 'Large', does: 'use the whole window, or go back to the page' },
    'zoom-selection': { name: 'Zoom to selection', does: 'show the selection as large as it goes' },
    'select-all': { name: 'Select all', does: 'select every blank' },
    'select-none': { name: 'Select none', does: 'select nothing' },
    'select-next': { name: 'Next station', does: 'select the next station' },
    'select-previous': { name: 'Station before', does: 'select the station before' },
    release: { name: 'Go back', does: 'give up what is under way, stop solving, put the tool away, select nothing' },
    'nudge-plain': { name: 'Move', does: 'move by {step}; with nothing selected go from blank to blank' },
    'nudge-fine': { name: 'Move a little', does: 'move by {step}' },
    'nudge-step': { name: 'Move by one step', does: 'move on by one place of a tight row' },
    'nudge-contact': { name: 'Slide to contact', does: 'slide until the rules allow no further' },
    replace: { name: 'Layout put in', does: 'put in another layout' },
  },
  groups: { history: 'Back and forth', edit: 'Blanks', arrange: 'Arrange', ask: 'Let it be done', look: 'Look' },
  toolbar: 'Work on the sheet',
  layersTitle: 'Layers',
  alignTitle: 'Align',
  layers: {
    creases: 'Creases and other rules',
    openings: 'Openings',
    bleed: 'Bleed',
    marks: 'Bar, marks and margins',
    numbers: 'Station numbers',
    grid: 'Grid',
    distances: 'Distances',
    'rule-side': 'Seen from the rule side (mirrored)',
  },
  notices: {
    'all-locked': 'Locked blanks stay where they are. Press L to free them.',
    'locked-stays': 'The locked blanks stayed.',
    'nothing-selected': 'Select a blank first.',
    'one-rotation': 'Only this rotation is allowed for this blank.',
    'needs-two': 'Select two blanks or more.',
    'needs-three': 'Select three blanks or more that are not locked.',
    'needs-three-in-line': 'Equal steps need three blanks or more in one row or column.',
    'no-equal-steps': 'Equal steps would bring blanks too near something: between the first and the last there is too little room.',
    'some-rows-stay': 'Rows where equal steps would bring blanks too near something stay as they are.',
    'steps-equal-already': 'The steps are equal.',
    'grid-does-not-fit': 'So many rows and columns do not fit on the sheet.',
    'places-left-out': 'Places where something stands in the way were left out.',
    'no-contact-that-way': 'It stands at contact: the rules allow no further that way.',
    'no-free-place-that-way': 'It stands faulty, and straight that way there is no free place to slide to.',
    'gathered-already': 'They stand as near together as the rules allow.',
    'tidy-already': 'It is tidy: nothing goes nearer to gripper or lay with rows level and columns in line.',
    'rest-no-better': 'Nothing better was found: the sheet stays as it is.',
    overtaken: 'The sheet was changed meanwhile: what was found is not put in.',
    'faulty-stays': 'Blanks that stand faulty stay where they are: move them to a free place first.',
    'too-many-blanks': 'That would be more blanks than a sheet can hold here.',
  },
  states: { 'not judged': 'not judged', sound: 'sound', faulty: 'faulty', 'out of date': 'out of date' },
  working: { 'solve-rest': 'solving the rest …', tidy: 'tidying …' },
  progress: (best, limit, time) => [best === undefined ? '' : `${best} ups so far`, limit === undefined ? '' : `at most ${limit}`, time].filter(Boolean).join(' · '),
  stopping: 'stopping …',
  faultKinds,
  selected: (count, ups) => (count === 0 ? `${ups} ups` : `${count} of ${ups} ups selected`),
  fault: (kind, byMm, gapMm, format) => {
    const by = format.length(byMm);
    switch (kind) {
      case 'gap':
        return `knives ${by} too near (${format.bareLength(gapMm - byMm)} of ${format.length(gapMm)})`;
      case 'overlap':
        return `overlaps a neighbour, ${by} deep`;
      case 'outside':
        return `${by} outside the area for knives`;
      case 'keep-out':
        return `${by} too near an area that must stay free`;
      case 'bleed':
        return `${by} missing for the bleed`;
      case 'rotation':
        return faultKinds.rotation;
      case 'outline':
        return `outline and drawing differ by ${by}`;
    }
  },
  step: 'step',
  ruleSide: 'RULE SIDE, MIRRORED',
  measured: (along, away, distance, format) => `${format.length(distance)} (${format.bareLength(Math.abs(along))} along, ${format.bareLength(Math.abs(away))} away)`,
  moved: (along, away, format) => `moved ${format.bareLength(along)} along, ${format.bareLength(away)} away from the gripper (${format.unit})`,
  grid: {
    title: 'Rows × columns',
    rows: 'Rows (away from the gripper)',
    columns: 'Columns (along the gripper edge)',
    whole: 'The whole sheet anew; only locked blanks stay',
    most: (rows, columns) => `Most that fit so: ${rows} ${rows === 1 ? 'row' : 'rows'} of ${columns}.`,
    stepAlong: 'Step along',
    stepAway: 'Step away',
    tightest: 'as tight as the gap allows',
    done: 'Lay out',
    leave: 'Cancel',
    notANumber: 'Give a whole number from 1 to 500, and steps as lengths greater than 0.',
  },
  keysTitle: 'Keys',
  keyNames: {
    Arrow: 'arrow keys', Control: 'Ctrl', Alt: 'Alt', Shift: 'Shift', Escape: 'Esc', Delete: 'Del', Backspace: 'Backspace', PageDown: 'Page down', PageUp: 'Page up',
  },
  pointerTitle: 'Mouse, pen, finger',
  gestures: [
    ['Drag a blank', 'moves it; it is drawn to contact, edges, lines and equal steps'],
    ['Drag with Alt', 'moves freely'],
    ['Drag with Shift', 'moves along one axis'],
    ['Drag with Ctrl', 'moves a copy'],
    ['Drag beside the blanks', 'to the right selects what lies inside, to the left all that is touched'],
    ['Click with Shift', 'adds to the selection or takes out of it'],
    ['Wheel, two fingers', 'zooms at the pointer'],
    ['Middle button, space bar, finger beside the blanks', 'moves the sheet'],
  ],
  close: 'Close',
};
