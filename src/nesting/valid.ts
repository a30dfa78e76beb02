import type { Box } from '../geometry/point.ts';
import type { Placement, Problem } from '../layout/problem.ts';
import { requiredGap } from '../layout/problem.ts';
import { noFitTable } from './no-fit-table.ts';
import { placedBox } from './rank.ts';

/**
 * The searches' own test before they propose a layout: every blank in an allowed rotation inside the usable area, its
 * bleed inside the printable one, clear of keep-outs, every pair as far apart as the rules require, locked blanks where
 * they were. Exact on whole micrometres, by the no-fit polygons of the problem; the judge tests again by other means.
 */
export function layoutIsValid(problem: Problem, placements: readonly Placement[]): boolean {
  const boxes = placements.map((placement) => placedBox(problem, placement));
  return (
    placements.every((placement, i) => standsRight(problem, placement, boxes[i])) &&
    problem.locked.every((locked) => placements.some((placement) => samePlacement(placement, locked))) &&
    nearPairs(boxes, requiredGap(problem.rules)).every(([i, j]) => !noFitTable(problem).forbidsPair(placements[i], placements[j]))
  );
}

/** The same for one blank alone: whole numbers, rotation, usable and printable area, keep-outs. */
export function placementIsValid(problem: Problem, placement: Placement): boolean {
  return standsRight(problem, placement, placedBox(problem, placement));
}

function standsRight(problem: Problem, placement: Placement, box: Box): boolean {
  const { usable, printable, parts, rules } = problem;
  return (
    Number.isSafeInteger(placement.x) &&
    Number.isSafeInteger(placement.y) &&
    parts[placement.part].turns.includes(placement.turn) &&
    holds(usable, box, 0) &&
    holds(printable, box, rules.bleed) &&
    !noFitTable(problem).forbidsPlace(placement)
  );
}

function holds(outer: Box, inner: Box, margin: number): boolean {
  return (
    inner.minX - margin >= outer.minX && inner.minY - margin >= outer.minY && inner.maxX + margin <= outer.maxX && inner.maxY + margin <= outer.maxY
  );
}

function samePlacement(a: Placement, b: Placement): boolean {
  return a.part === b.part && a.turn === b.turn && a.x === b.x && a.y === b.y;
}

/** Pairs of boxes that come nearer than `reach` along both axes, by a sweep along x. */
export function nearPairs(boxes: readonly Box[], reach: number): [number, number][] {
  const order = boxes.map((_, i) => i).sort((i, j) => boxes[i].minX - boxes[j].minX || i - j);
  const pairs: [number, number][] = [];
  order.forEach((i, at) => {
    for (let next = at + 1; next < order.length; next++) {
      const j = order[next];
      if (boxes[j].minX >= boxes[i].maxX + reach) break;
      if (boxes[j].minY < boxes[i].maxY + reach && boxes[j].maxY > boxes[i].minY - reach) pairs.push(i < j ? [i, j] : [j, i]);
    }
  });
  return pairs;
}
