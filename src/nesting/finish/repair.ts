import type { FreeInterval } from '../../geometry/no-fit-slices.ts';
import type { Placement, Problem } from '../../layout/problem.ts';
import { requiredGap } from '../../layout/problem.ts';
import { noFitTable } from '../no-fit-table.ts';
import { placedBox } from '../rank.ts';
import { nearPairs } from '../valid.ts';
import { freePlaces } from './free-places.ts';

/** Rounds over the pairs that stand too near. */
const ROUNDS = 12;

/**
 * Rounding to whole micrometres can leave pairs a micrometre or two too near. Each such blank is moved along one axis to
 * the nearest place where it keeps every rule, at most `reach` away, blank after blank. Exact; the layout returned may
 * still hold pairs that no single move could part.
 */
export function repair(problem: Problem, placements: readonly Placement[], reach: number): Placement[] {
  const table = noFitTable(problem);
  const repaired = placements.slice();
  for (let round = 0; round < ROUNDS; round++) {
    const near = nearPairs(repaired.map((placement) => placedBox(problem, placement)), requiredGap(problem.rules));
    const wrong = new Set(near.filter(([i, j]) => table.forbidsPair(repaired[i], repaired[j])).flat());
    repaired.forEach((placement, i) => table.forbidsPlace(placement) && wrong.add(i));
    if (wrong.size === 0) break;
    let moved = false;
    for (const i of [...wrong].sort((p, q) => p - q)) {
      const better = nearestPlace(problem, repaired, i, reach);
      if (!better) continue;
      moved ||= better.x !== repaired[i].x || better.y !== repaired[i].y;
      repaired[i] = better;
    }
    if (!moved) break;
  }
  return repaired;
}

function nearestPlace(problem: Problem, placements: readonly Placement[], i: number, reach: number): Placement | undefined {
  const { x, y } = placements[i];
  const alongX = nearestIn(freePlaces(problem, placements, i, 'x'), x);
  const alongY = nearestIn(freePlaces(problem, placements, i, 'y'), y);
  const least = Math.min(Math.abs(alongX - x), Math.abs(alongY - y));
  if (least > reach) return undefined;
  return Math.abs(alongX - x) === least ? { ...placements[i], x: alongX } : { ...placements[i], y: alongY };
}

function nearestIn(intervals: readonly FreeInterval[], at: number): number {
  let best = Infinity;
  for (const { from, to } of intervals) {
    const place = Math.min(to, Math.max(from, at));
    if (Math.abs(place - at) < Math.abs(best - at)) best = place;
  }
  return best;
}

