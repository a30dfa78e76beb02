import { toMicrons } from '../../base/units.ts';
import type { Box, Ring } from '../../geometry/point.ts';
import { boxOf, ringArea } from '../../geometry/point.ts';
import { JUDGE_TOLERANCE_MM } from '../../layout/judge-tolerance.ts';
import type { KeepOut, Problem } from '../../layout/problem.ts';

const TOLERANCE = toMicrons(JUDGE_TOLERANCE_MM);

/**
 * What bands over the whole width or depth, such as a colour bar in the centre, leave of the usable area. A blank is of one piece and may not cross a
 * band, so it lies in one of these parts, and their limits add up. Each part is granted at its edges what the sheet is granted at its own; the
 * whole area where no band crosses it.
 */
export function sheetPieces(problem: Problem): Box[] {
  // So much less than the ring a band may be in a judged layout, and so much wider than stated the area; with room.
  const slack = 4 * TOLERANCE + 2 * Math.max(0, ...problem.parts.map((part) => part.outlineExcess ?? 0));
  const cuts = problem.keepOuts.filter(({ ring }) => isUpright(ring, boxOf(ring)));
  const cut = (piece: Box): Box[] => {
    for (const keepOut of cuts) {
      const pieces = piecesBeside(piece, keepOut, slack);
      if (pieces) return pieces.flatMap(cut);
    }
    return [piece];
  };
  return cut(problem.usable);
}

/** The problem on one piece of its sheet. */
export function onPiece(problem: Problem, usable: Box): Problem {
  return { ...problem, usable };
}

/** Before and after the band; undefined where it does not cross the piece. */
function piecesBeside(piece: Box, { ring, clearance }: KeepOut, slack: number): Box[] | undefined {
  const band = boxOf(ring);
  // Where no distance is asked for, a blank may reach into the ring by twice the tolerance; one is granted at the edge of every piece.
  const away = clearance > TOLERANCE ? clearance : -TOLERANCE;
  const near = { minX: band.minX - away, minY: band.minY - away, maxX: band.maxX + away, maxY: band.maxY + away };
  const isThick = Math.min(band.maxX - band.minX, band.maxY - band.minY) > 2 * slack;
  if (!isThick) return undefined;
  if (band.minX <= piece.minX - slack && band.maxX >= piece.maxX + slack && near.minY < piece.maxY && near.maxY > piece.minY) {
    return withArea([{ ...piece, maxY: near.minY }, { ...piece, minY: near.maxY }]);
  }
  if (band.minY <= piece.minY - slack && band.maxY >= piece.maxY + slack && near.minX < piece.maxX && near.maxX > piece.minX) {
    return withArea([{ ...piece, maxX: near.minX }, { ...piece, minX: near.maxX }]);
  }
  return undefined;
}

/** Whether the ring goes round its own box. */
function isUpright(ring: Ring, { minX, minY, maxX, maxY }: Box): boolean {
  return ring.length === 4 && ringArea(ring) === (maxX - minX) * (maxY - minY);
}

function withArea(boxes: readonly Box[]): Box[] {
  return boxes.filter(({ minX, minY, maxX, maxY }) => minX < maxX && minY < maxY);
}
