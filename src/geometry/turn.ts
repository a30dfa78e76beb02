import type { Box, Point, Ring } from './point.ts';

/** Quarter turns counter-clockwise. Exact: only swaps and signs. */
export type Turn = 0 | 1 | 2 | 3;

export const TURNS: readonly Turn[] = [0, 1, 2, 3];

const COS = [1, 0, -1, 0] as const;
const SIN = [0, 1, 0, -1] as const;

export function turnOfDegrees(degrees: number): Turn | undefined {
  const turn = (((degrees / 90) % 4) + 4) % 4;
  return Number.isInteger(turn) ? (turn as Turn) : undefined;
}

export function degreesOf(turn: Turn): number {
  return turn * 90;
}

export function addTurns(a: Turn, b: number): Turn {
  return ((((a + b) % 4) + 4) % 4) as Turn;
}

/** The point turned about the origin. Adding 0 turns −0 into 0, so that equal points are equal by Object.is too. */
export function turnPoint({ x, y }: Point, turn: Turn): Point {
  const c = COS[turn];
  const s = SIN[turn];
  return { x: c * x - s * y + 0, y: s * x + c * y + 0 };
}

export function turnRing(ring: Ring, turn: Turn): Ring {
  return turn === 0 ? ring : ring.map((p) => turnPoint(p, turn));
}

export function turnBox(box: Box, turn: Turn): Box {
  const a = turnPoint({ x: box.minX, y: box.minY }, turn);
  const b = turnPoint({ x: box.maxX, y: box.maxY }, turn);
  return { minX: Math.min(a.x, b.x), minY: Math.min(a.y, b.y), maxX: Math.max(a.x, b.x), maxY: Math.max(a.y, b.y) };
}
