import type { Placement, Problem } from '../layout/problem.ts';
import type { RankedLayout } from './incumbents.ts';
import { placedBox } from './rank.ts';

/** Two stations count as the same when part and rotation agree and they lie within this share of the blank's shorter side. */
const SAME_PLACE_SHARE = 0.25;
/** Layouts with more common stations than this share are variants of one another, not different. */
const MOST_IN_COMMON = 0.7;

/** The first `count` layouts, in order, each truly different from those before it: not a shift and not a few moved blanks. */
export function differentLayouts(problem: Problem, layouts: readonly RankedLayout[], count: number): RankedLayout[] {
  const chosen: RankedLayout[] = [];
  for (const layout of layouts) {
    if (chosen.length >= count) break;
    if (chosen.every((other) => inCommon(problem, other.placements, layout.placements) <= MOST_IN_COMMON)) chosen.push(layout);
  }
  return chosen;
}

/** Share of the stations that both layouts have, both pushed into the same corner. */
function inCommon(problem: Problem, a: readonly Placement[], b: readonly Placement[]): number {
  const first = stations(problem, a);
  const second = stations(problem, b);
  const free = new Set(second);
  let common = 0;
  for (const station of first) {
    for (const other of free) {
      const near = station.size * SAME_PLACE_SHARE;
      if (other.pose !== station.pose || Math.abs(other.x - station.x) > near || Math.abs(other.y - station.y) > near) continue;
      common++;
      free.delete(other);
      break;
    }
  }
  return common / Math.max(first.length, second.length);
}

function stations(problem: Problem, placements: readonly Placement[]) {
  const boxes = placements.map((placement) => placedBox(problem, placement));
  const left = Math.min(...boxes.map((box) => box.minX));
  const low = Math.min(...boxes.map((box) => box.minY));
  return placements.map(({ part, turn }, i) => {
    const box = boxes[i]!;
    return { pose: `${part}.${turn}`, x: box.minX - left, y: box.minY - low, size: Math.min(box.maxX - box.minX, box.maxY - box.minY) };
  });
}
