import type { Box, Ring } from '../geometry/point.ts';
import type { StatedProblem } from './checked-problem.ts';

type Side = 'x' | 'y';

/**
 * The problem on each piece of the usable area that bands cut apart, from the gripper or from the left. A band is a keep-out that is an upright rectangle
 * and runs out of the area at both ends. A blank is of one piece and cannot pass it, so no layout has more blanks than its pieces allow together.
 */
export function piecesOf(stated: StatedProblem): StatedProblem[] {
  for (const { ring, clearance } of stated.keepOuts) {
    for (const across of ['y', 'x'] as const) {
      const cut = cutAcross(stated, ring, clearance, across);
      if (cut) return cut.flatMap((usable) => piecesOf({ ...stated, usable }));
    }
  }
  return [stated];
}

/** The area before and after the band, along `across`; undefined when the keep-out is no band that cuts the area. */
function cutAcross({ usable, outlineExcess, tolerance }: StatedProblem, ring: Ring, clearance: number, across: Side): Box[] | undefined {
  const along = across === 'y' ? 'x' : 'y';
  // By so much a judged layout may have less of the ring and more of the area than stated, twice over.
  const spare = 4 * tolerance + 2 * outlineExcess;
  const [low, high] = spanOf(ring, across);
  const [start, end] = spanOf(ring, along);
  const [first, last] = rangeOf(usable, across);
  const [from, to] = rangeOf(usable, along);
  const isBand = isRectangle(ring) && high - low > 2 * spare && end - start > 2 * spare && start + spare <= from && end - spare >= to;
  if (!isBand) return undefined;
  // Every edge of a piece is granted one tolerance; where no distance is asked for, the judge lets two pass.
  const away = clearance > tolerance ? clearance : -tolerance;
  if (low - away >= last || high + away <= first) return undefined;
  return [withRange(usable, across, first, low - away), withRange(usable, across, high + away, last)].filter((piece) => rangeOf(piece, across)[0] < rangeOf(piece, across)[1]);
}

/** Upright, corner after corner. */
function isRectangle(ring: Ring): boolean {
  return ring.length === 4 && ring.every((p, k) => {
    const before = ring[(k + 3) % 4]!;
    const after = ring[(k + 1) % 4]!;
    return (p.x === before.x && p.y === after.y && p.y !== before.y && p.x !== after.x) || (p.y === before.y && p.x === after.x && p.x !== before.x && p.y !== after.y);
  });
}

function spanOf(ring: Ring, side: Side): [number, number] {
  const values = ring.map((p) => p[side]);
  return [Math.min(...values), Math.max(...values)];
}

function rangeOf(box: Box, side: Side): [number, number] {
  return side === 'x' ? [box.minX, box.maxX] : [box.minY, box.maxY];
}

function withRange(box: Box, side: Side, low: number, high: number): Box {
  return side === 'x' ? { ...box, minX: low, maxX: high } : { ...box, minY: low, maxY: high };
}
