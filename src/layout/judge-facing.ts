import type { Turn } from '../geometry/turn.ts';
import { allowsSides, FACING_SIDES, type CommonKnifePair, type FacingSide } from './common-knife-pairs.ts';
import type { MayShare } from './judge-common-knife.ts';
import type { Shape } from './judge-shape.ts';
import { JUDGE_TOLERANCE_MM } from './judge-tolerance.ts';

/** Where the edges of a turned blank face on its own drawing, and whether two of them may share a knife. Without pairs all may. */
export function mayShareKnife(a: { readonly shape: Shape; readonly turn: Turn }, b: { readonly shape: Shape; readonly turn: Turn }, pairs: readonly CommonKnifePair[] | undefined): MayShare {
  return pairs === undefined ? () => true : (i, j) => allowsSides(pairs, facing(a.shape, i, a.turn), facing(b.shape, j, b.turn));
}

/** Undefined for edges that slant: they face no side. */
function facing(shape: Shape, i: number, turn: Turn): FacingSide | undefined {
  const { xs, ys } = shape;
  const next = (i + 1) % xs.length;
  const way = isCounterClockwise(shape) ? 1 : -1;
  const [dx, dy] = [way * (xs[next]! - xs[i]!), way * (ys[next]! - ys[i]!)];
  const upright = Math.abs(dx) <= JUDGE_TOLERANCE_MM;
  if (!upright && Math.abs(dy) > JUDGE_TOLERANCE_MM) return undefined;
  // The outside of a counter-clockwise outline lies to the right of its edges.
  const turned = upright ? (dy > 0 ? 0 : 2) : dx < 0 ? 1 : 3;
  return FACING_SIDES[(turned - turn + 4) % 4];
}

const senses = new WeakMap<Shape, boolean>();

function isCounterClockwise(shape: Shape): boolean {
  const known = senses.get(shape);
  if (known !== undefined) return known;
  const { xs, ys } = shape;
  let twice = 0;
  for (let i = 0, j = xs.length - 1; i < xs.length; j = i++) twice += xs[j]! * ys[i]! - xs[i]! * ys[j]!;
  senses.set(shape, twice > 0);
  return twice > 0;
}
