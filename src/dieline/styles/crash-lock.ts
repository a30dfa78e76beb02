import { allowance } from './allowances.ts';
import { GLUE_MARGIN, hung } from './ends.ts';
import { loop, side, type Corner, type Edge, type Flap } from './flap.ts';
import type { Values } from './parameter.ts';

export const CRASH_LOCK = [
  allowance(
    'lockOverlap', 'by how much the long half of each main bottom flap reaches beyond the middle', { of: ({ width }) => Math.min(15, width / 4), said: 'a quarter of the width, at most 15' },
    [2, { of: ({ width }) => width / 3, said: 'a third of the width' }],
  ),
];

/**
 * Main flaps on back and front, each with a long and a short half, which hook into one another at the centre of the
 * bottom; side flaps with a triangular tab beyond a crease at 45°. A tab is glued to the main flap next to it: at 45°
 * the carton folds flat and springs open, since then half of the right angle between the two hinges lies on either flap.
 */
export function crashLockBottom(values: Values): readonly [Edge, Edge, Edge, Edge] {
  const main = (id: string) => hung((length) => mainFlap(id, length, values), { inset: values.clearance });
  return [main('back bottom'), sideFlap('side bottom', 'back bottom', values), main('front bottom'), sideFlap('other side bottom', 'front bottom', values)];
}

/** The long half is at the end: there the side flap's tab is glued. */
function mainFlap(id: string, length: number, { width, lockOverlap, clearance }: Values): Flap {
  const middle = length / 2;
  const [short, long] = [width / 2, width / 2 + lockOverlap];
  const taper = Math.min(short / 4, length / 8);
  const hook = Math.min(lockOverlap / 3, length / 12);
  const corners: Corner[] = [
    [0, 0],
    [taper, -short, { radius: 2 }],
    [middle, -short],
    [middle + hook, -long, { radius: Math.min(3, hook) }],
    [length - 2 * clearance, -long, { radius: lockOverlap / 2 }],
    [length - 2 * clearance, -short],
    [length, 0],
  ];
  return { id, side: side(corners) };
}

/** At the start lies the main flap that the tab is glued to. */
function sideFlap(id: string, onto: string, { width, clearance }: Values): Edge {
  const reach = width / 2 - clearance;
  const c = clearance;
  return hung((length) => {
    // The tab's triangle, moved in by the margin on all three sides.
    const slant = GLUE_MARGIN * (1 + Math.SQRT2);
    const tab: Corner[] = [[c + GLUE_MARGIN, -2 * c - slant], [c + GLUE_MARGIN, GLUE_MARGIN - reach], [reach - c - slant, GLUE_MARGIN - reach]];
    const corners: Corner[] = [
      [0, 0],
      [c, -2 * c],
      [c, -reach, { radius: 1 }],
      [reach - c, -reach],
      [Math.max(reach, length - reach / 2), -reach, { radius: 3 }],
      [length, 0],
    ];
    const diagonal = [{ kind: 'line', from: { x: c, y: -2 * c }, to: { x: reach - c, y: -reach } }] as const;
    return { id, side: side(corners), inner: { creases: [diagonal], gluing: [{ area: loop(tab), onto }] } };
  }, { inset: c });
}

