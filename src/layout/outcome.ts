import { toMillimetres } from '../base/units.ts';
import { ringArea } from '../geometry/point.ts';
import { degreesOf } from '../geometry/turn.ts';
import type { Cell, Limit, Problem, StopReason } from './problem.ts';

/** How a search ended: best, limit and reason to stop travel together. */
export interface Outcome {
  readonly ups: number;
  readonly limit: Limit;
  /** Which search found the best layout. */
  readonly source: string;
  readonly cell?: Cell | undefined;
  readonly seed: number;
  readonly stopped: StopReason;
}

/**
 * The `result` of a layout file. `yield` is outline area × ups / sheet area, openings not taken off; with several
 * designs `areaMicrons2` is the sum over the placed blanks.
 */
export function resultOf(outcome: Outcome, problem: Problem, areaMicrons2: number): Readonly<Record<string, unknown>> {
  const { ups, limit, source, cell, seed, stopped } = outcome;
  const share = areaMicrons2 / (problem.sheet.width * problem.sheet.height);
  return {
    ups,
    upperBound: limit.ups,
    boundBy: limit.by,
    optimal: ups === limit.ups,
    yield: rounded(share),
    waste: rounded(1 - share),
    source,
    ...(cell && { bestCell: cellResult(cell, problem) }),
    seed,
    stopped,
  };
}

/** Outline area of all placed blanks, µm². */
export function placedArea(problem: Problem, placements: readonly { readonly part: number }[]): number {
  const areas = problem.parts.map((part) => ringArea(part.outline));
  return placements.reduce((sum, { part }) => sum + areas[part]!, 0);
}

function cellResult({ density, vectors, blanks }: Cell, problem: Problem): Readonly<Record<string, unknown>> {
  return {
    density: rounded(density),
    blanks: blanks.length,
    vectors: vectors.map(({ x, y }) => [toMillimetres(x), toMillimetres(y)]),
    placements: blanks.map(({ part, turn, x, y }) => ({ design: problem.parts[part]!.id, rotation: degreesOf(turn), x: toMillimetres(x), y: toMillimetres(y) })),
  };
}

/** Shares with six decimals: a thousandth of a blank on the largest sheets. */
function rounded(share: number): number {
  return Math.round(share * 1e6) / 1e6;
}
