import { boxOf } from '../../geometry/point.ts';
import { turnRing } from '../../geometry/turn.ts';
import type { Limit, Problem } from '../../layout/problem.ts';
import { areaLimit } from './area-limit.ts';
import { grant } from './granted.ts';
import { hexagonLimit } from './hexagon-limit.ts';
import { limitOf } from './limit-of.ts';
import { ovalsLimit } from './ovals-limit.ts';
import { rectanglesLimit } from './rectangles-limit.ts';
import { onPiece, sheetPieces } from './sheet-pieces.ts';

/**
 * Upper limits of ups that need no search, tightest first; the one by area always among them. No layout that the judge accepts, with its tolerance,
 * has more ups than any of them.
 */
export function closedFormLimits(problem: Problem): Limit[] {
  const pieces = sheetPieces(problem).map((usable) => limitsOf(onPiece(problem, usable)));
  if (pieces.length === 1) return pieces[0]!;
  return [summed(pieces.map(([tightest]) => tightest!)), summed(pieces.map((limits) => limits.find(({ by }) => by === 'area')!))];
}

/** Limits of a sheet that no band cuts apart. */
function limitsOf(problem: Problem): Limit[] {
  const granted = grant(problem);
  const fits = problem.parts.some(({ outline, turns }) =>
    turns.some((turn) => {
      const { minX, minY, maxX, maxY } = boxOf(turnRing(outline, turn));
      return maxX - minX <= granted.width && maxY - minY <= granted.height;
    }),
  );
  if (!fits) return [limitOf('area', 0)];
  return [areaLimit, rectanglesLimit, hexagonLimit, ovalsLimit]
    .flatMap((limit) => limit(problem, granted) ?? [])
    .sort((a, b) => a.ups - b.ups || a.value - b.value);
}

/** Named by the piece that holds most. */
function summed(limits: readonly Limit[]): Limit {
  const most = limits.toSorted((a, b) => b.ups - a.ups)[0];
  return limitOf(most?.by ?? 'area', limits.reduce((sum, { ups }) => sum + ups, 0));
}
