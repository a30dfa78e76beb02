import { allowance, caliper, clearance, dimension, notWiderThanLong } from './allowances.ts';
import { hung, taperedGlueFlap } from './ends.ts';
import { firstPanel, loop, panel, side, type Edge, type Flap } from './flap.ts';
import type { Values } from './parameter.ts';
import type { Style } from './style.ts';

const dimensions = [
  dimension('length', 'the longer side of the base, crease to crease', [40, 800], 160),
  dimension('width', 'the shorter side of the base, crease to crease', [40, notWiderThanLong(600)], 110),
  dimension('depth', 'height of the walls', [12, 200], 35),
];

const grain = { along: 'x', source: 'along the longer walls, which it keeps straight (house value)' } as const;

/** Base with four walls: `long` at top and bottom, `short` left and right. */
function tray({ length, width }: Values, long: (id: string) => Edge, short: (id: string) => Edge, inner?: Flap['inner']): Flap {
  return firstPanel('base', length, width, { far: long('wall'), top: long('opposite wall'), start: short('left wall'), end: short('right wall') }, inner);
}

export const trayGluedCorners: Style = {
  id: 'tray-glued-corners',
  description: 'tray of four walls, glued at the corners',
  grain,
  dimensions,
  allowances: [
    caliper,
    clearance,
    allowance('cornerFlap', 'width of the glued corner flaps', { of: ({ width }) => Math.min(18, width / 3), said: 'a third of the width, at most 18' }, [8, { of: ({ width }) => Math.min(60, width / 2 - 1), said: 'half the width less 1, and 60' }]),
  ],
  build: (v) => {
    const flap = (wall: string, at: string, onto: string): Edge => hung((length) => taperedGlueFlap(`${wall} ${at} corner flap`, length, v.cornerFlap, onto), { inset: v.clearance });
    const wall = (id: string, start: string, end: string) => hung((length) => panel(id, length, v.depth, { start: flap(id, 'left', start), end: flap(id, 'right', end) }), { inset: v.clearance });
    const [front, back] = [wall('wall', 'left wall', 'right wall'), wall('opposite wall', 'right wall', 'left wall')];
    return tray(v, (id) => (id === 'wall' ? front : back), (id) => hung((length) => panel(id, length, v.depth, {}), { inset: v.clearance }));
  },
};

export const trayNoGlue: Style = {
  id: 'tray-no-glue',
  description: 'tray without glue: the short walls roll over the corner flaps and lock with tabs in the base',
  grain,
  dimensions,
  allowances: [
    caliper,
    clearance,
    allowance('cornerFlap', 'length of the corner flaps within the rolled walls', { of: ({ width }) => Math.min(40, width / 2 - 2), said: 'half the width less 2, at most 40' }, [8, { of: ({ width }) => width / 2 - 1, said: 'half the width less 1' }]),
    allowance('roof', 'top of a rolled wall, between its two creases', { of: (v) => 1 + 3 * v.caliper, said: '1 and three calipers: wall, corner flap and wall' }, [1, 10]),
    allowance('innerLess', 'by how much the inner wall is lower, so that it stands on the base', { of: (v) => Math.max(0.5, v.caliper), said: 'the caliper, at least 0.5' }, [0, 3]),
    allowance('tabWidth', 'width of each locking tab', { of: ({ width }) => Math.min(20, width / 6), said: 'a sixth of the width, at most 20' }, [5, { of: ({ width }) => width / 5, said: 'a fifth of the width' }]),
    allowance('tabLength', 'length of the locking tabs', { of: (v) => 2 + 2 * v.caliper, said: '2 and two calipers' }, [1, 8]),
    allowance('slotPlay', 'by how much the slots in the base are wider than the board and longer than the tabs', 0.8, [0.3, 3]),
  ],
  build: (v) => {
    const corner = (id: string): Edge => hung((length) => cornerFlap(id, length, v), { inset: v.clearance });
    const long = (id: string) => hung((length) => panel(id, length, v.depth, { start: corner(`${id} left corner flap`), end: corner(`${id} right corner flap`) }), { inset: v.clearance });
    return tray(v, long, (id) => rolledWall(id, v), { openings: slots(v) });
  },
};

function cornerFlap(id: string, length: number, { cornerFlap: reach, depth }: Values): Flap {
  const slope = Math.min(reach / 6, depth / 6);
  return { id, side: side([[0, 0], [slope, -reach, { radius: 3 }], [length - slope, -reach, { radius: 3 }], [length, 0]]) };
}

/** Outer wall, roof, inner wall with two tabs. The inner wall stands between the long walls, so it is narrower. */
function rolledWall(id: string, v: Values): Edge {
  const within = v.caliper + v.clearance;
  const inner = (length: number) => panel(`${id} inside`, length, v.depth - v.innerLess, { far: (across) => tabs(across, v) });
  const roof = (length: number) => panel(`${id} roof`, length, v.roof, { far: hung(inner, { inset: within }) });
  return hung((length) => panel(id, length, v.depth, { far: hung(roof) }), { inset: v.clearance });
}

/** Distance of the middle of each tab from the middle of the wall, as a part of the width. */
const TAB_PLACE = 1 / 4;

function tabs(across: number, { width, tabWidth, tabLength }: Values) {
  const slope = tabLength / 4;
  const tab = (middle: number) => [[middle - tabWidth / 2, 0], [middle - tabWidth / 2 + slope, -tabLength], [middle + tabWidth / 2 - slope, -tabLength], [middle + tabWidth / 2, 0]] as const;
  return side([[0, 0], ...tab(across / 2 - TAB_PLACE * width), ...tab(across / 2 + TAB_PLACE * width), [across, 0]]);
}

/** Four slots: where the inner walls stand, a roof's width from the creases. */
function slots({ length, width, roof, caliper: board, tabWidth, slotPlay }: Values) {
  const half = { x: (board + slotPlay) / 2, y: (tabWidth + slotPlay) / 2 };
  const slot = (x: number, y: number) => loop([[x - half.x, y - half.y], [x + half.x, y - half.y], [x + half.x, y + half.y], [x - half.x, y + half.y]]);
  const places = [-width / 2 - TAB_PLACE * width, -width / 2 + TAB_PLACE * width];
  const inset = Math.max(roof, half.x + 1);
  return [inset, length - inset].flatMap((x) => places.map((y) => slot(x, y)));
}

