import { allowance } from './allowances.ts';
import { hung } from './ends.ts';
import { side, type Corner, type Edge, type Flap } from './flap.ts';
import type { Values } from './parameter.ts';

export const SNAP = [
  allowance('snapOverlap', 'by how much arms and tongue of the bottom reach beyond the middle', { of: ({ width }) => Math.min(18, width / 4), said: 'a quarter of the width, at most 18' }, [3, { of: ({ width }) => width / 3, said: 'a third of the width' }]),
  allowance('tongueWidth', 'width of the tongue of the bottom', { of: ({ length }) => length / 2, said: 'half the length' }, [
    { of: ({ length }) => length / 4, said: 'a quarter of the length' },
    { of: ({ length }) => (2 * length) / 3, said: 'two thirds of the length' },
  ]),
];

/**
 * Pushed in by hand in this order: the back flap with its notch, the two side flaps, then the front flap, whose tongue
 * goes through the notch and under the back flap's middle while its shoulders stay outside.
 */
export function snapBottom(values: Values): readonly [Edge, Edge, Edge, Edge] {
  const { clearance: inset } = values;
  const sides = (id: string) => hung((length) => sideFlap(id, length, values), { inset });
  const back = hung((length) => backFlap(length, values), { inset });
  const front = hung((length) => frontFlap(length, values), { inset });
  return [back, sides('side bottom'), front, sides('other side bottom')];
}

function backFlap(length: number, { width, snapOverlap, tongueWidth, clearance }: Values): Flap {
  const [middle, far] = [width / 2, width / 2 + snapOverlap];
  const [a, b] = [(length - tongueWidth) / 2 - clearance, (length + tongueWidth) / 2 + clearance];
  const taper = Math.min(snapOverlap / 4, a / 4);
  const round = { radius: 3 };
  const corners: Corner[] = [[0, 0], [taper, -far, round], [a - taper, -far, round], [a, -middle, round], [b, -middle, round], [b + taper, -far, round], [length - taper, -far, round], [length, 0]];
  return { id: 'back bottom', side: side(corners) };
}

function frontFlap(length: number, { width, snapOverlap, tongueWidth }: Values): Flap {
  const [middle, far] = [width / 2, width / 2 + snapOverlap];
  const [a, b] = [(length - tongueWidth) / 2, (length + tongueWidth) / 2];
  const shoulder = Math.min(a / 2, middle / 2);
  const corners: Corner[] = [
    [0, 0],
    [shoulder / 4, shoulder - middle],
    [shoulder, -middle],
    [a, -middle, { radius: 1 }],
    [a, -far, { radius: 4 }],
    [b, -far, { radius: 4 }],
    [b, -middle, { radius: 1 }],
    [length - shoulder, -middle],
    [length - shoulder / 4, shoulder - middle],
    [length, 0],
  ];
  return { id: 'front bottom', side: side(corners) };
}

/** Reaches under both the arms of the back flap and the shoulders of the front flap. */
function sideFlap(id: string, length: number, { length: long, tongueWidth, width }: Values): Flap {
  const depth = Math.min(width / 2, (long - tongueWidth) / 2);
  const slant = depth / 2;
  const round = { radius: 3 };
  return { id, side: side([[0, 0], [0, -depth / 3], [slant / 2, -depth, round], [length - slant, -depth, round], [length, -depth / 4], [length, 0]]) };
}
