import { boxOf, type Ring } from '../../geometry/point.ts';
import { turnRing } from '../../geometry/turn.ts';
import type { Limit, Problem } from '../../layout/problem.ts';
import { areaLimit } from './area-limit.ts';
import { grant, type Granted } from './granted.ts';
import { hexagonLimit } from './hexagon-limit.ts';
import { limitOf } from './limit-of.ts';
import { ovalsLimit } from './ovals-limit.ts';
import { rectanglesLimit } from './rectangles-limit.ts';
import { onPiece, sheetPieces } from './sheet-pieces.ts';

/**
 * Upper limits of ups that need no search, tightest first; the one by area always among them, forms that cannot be the tightest perhaps not. No layout
 * that the judge accepts, with its tolerance, has more ups than any of them.
 */
export function closedFormLimits(problem: Problem): Limit[] {
  const pieces = sheetPieces(problem).map((usable) => limitsOf(onPiece(problem, usable)));
  if (pieces.length === 1) return pieces[0]!;
  return [summed(pieces.map(([tightest]) => tightest!)), summed(pieces.map((limits) => limits.find(({ by }) => by === 'area')!))];
}

/** Limits of a sheet that no band cuts apart. */
function limitsOf(problem: Problem): Limit[] {
  const granted = grant(problem);
  const sizes = problem.parts.flatMap(({ outline, turns }) => turns.map((turn) => sizeOf(turnRing(outline, turn))));
  if (!sizes.some(({ width, height }) => width <= granted.width && height <= granted.height)) return [limitOf('area', 0)];
  const quick = limitsBy([areaLimit, rectanglesLimit], problem, granted);
  const slow = valueOfBoxes(sizes[0]!, granted) < quick[0]!.value ? limitsBy([hexagonLimit, ovalsLimit], problem, granted) : [];
  return [...quick, ...slow].toSorted(tightestFirst);
}

type ClosedForm = (problem: Problem, granted: Granted) => Limit | undefined;

function limitsBy(forms: readonly ClosedForm[], problem: Problem, granted: Granted): Limit[] {
  return forms.flatMap((limit) => limit(problem, granted) ?? []).toSorted(tightestFirst);
}

function tightestFirst(a: Limit, b: Limit): number {
  return a.ups - b.ups || a.value - b.value;
}

function sizeOf(ring: Ring): { width: number; height: number } {
  const { minX, minY, maxX, maxY } = boxOf(ring);
  return { width: maxX - minX, height: maxY - minY };
}

/**
 * Sheet by box of the blank, both grown by the gap. The least hexagon is no larger than this box, and neither is the shared body of ovals than twice
 * it, so no value of theirs is less.
 */
function valueOfBoxes({ width, height }: { width: number; height: number }, granted: Granted): number {
  const { gap } = granted;
  return ((granted.width + gap) * (granted.height + gap)) / ((width + gap) * (height + gap));
}

/** Named by the piece that holds most. */
function summed(limits: readonly Limit[]): Limit {
  const most = limits.toSorted((a, b) => b.ups - a.ups)[0];
  return limitOf(most?.by ?? 'area', limits.reduce((sum, { ups }) => sum + ups, 0));
}
