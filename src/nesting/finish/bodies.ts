import { boxOf } from '../../geometry/point.ts';
import { turnBox } from '../../geometry/turn.ts';
import type { Placement, Problem } from '../../layout/problem.ts';

/**
 * Blanks that may be moved, positions in doubles, µm. Kept: minX ≤ x ≤ maxX and minY ≤ y ≤ maxY hold for every body that
 * fits at all, so that it stays in the usable area and its bleed in the printable one; locked blanks have no room.
 */
export interface Bodies {
  readonly count: number;
  readonly placements: readonly Placement[];
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly minX: Float64Array;
  readonly minY: Float64Array;
  readonly maxX: Float64Array;
  readonly maxY: Float64Array;
  /** 0 for locked blanks. */
  readonly movable: Uint8Array;
}

/** The bodies of a layout, each brought inside its room; undefined when one fits nowhere. */
export function bodiesOf(problem: Problem, placements: readonly Placement[]): Bodies | undefined {
  const { usable, printable, rules, parts } = problem;
  const count = placements.length;
  const array = () => new Float64Array(count);
  const bodies = { count, placements, x: array(), y: array(), minX: array(), minY: array(), maxX: array(), maxY: array(), movable: new Uint8Array(count) };
  for (const [i, placement] of placements.entries()) {
    const { part, turn, x, y } = placement;
    const box = turnBox(boxOf(parts[part].outline), turn);
    const isLocked = problem.locked.some((locked) => locked.part === part && locked.turn === turn && locked.x === x && locked.y === y);
    bodies.movable[i] = isLocked ? 0 : 1;
    bodies.minX[i] = isLocked ? x : Math.max(usable.minX, printable.minX + rules.bleed) - box.minX;
    bodies.minY[i] = isLocked ? y : Math.max(usable.minY, printable.minY + rules.bleed) - box.minY;
    bodies.maxX[i] = isLocked ? x : Math.min(usable.maxX, printable.maxX - rules.bleed) - box.maxX;
    bodies.maxY[i] = isLocked ? y : Math.min(usable.maxY, printable.maxY - rules.bleed) - box.maxY;
    if (bodies.minX[i] > bodies.maxX[i] || bodies.minY[i] > bodies.maxY[i]) return undefined;
    moveTo(bodies, i, x, y);
  }
  return bodies;
}

/** Moves a body as far towards (x, y) as its room allows. */
export function moveTo(bodies: Bodies, i: number, x: number, y: number): void {
  bodies.x[i] = Math.min(bodies.maxX[i], Math.max(bodies.minX[i], x));
  bodies.y[i] = Math.min(bodies.maxY[i], Math.max(bodies.minY[i], y));
}

/** The layout with every blank on the nearest whole micrometre. */
export function wholePlacements({ placements, x, y }: Bodies): Placement[] {
  return placements.map((placement, i) => ({ ...placement, x: Math.round(x[i]) + 0, y: Math.round(y[i]) + 0 }));
}
