import { boxOf, shiftRing, type Box } from '../../geometry/point.ts';
import { turnRing } from '../../geometry/turn.ts';
import { requiredGap, type Problem } from '../../layout/problem.ts';

/**
 * Ways to cut the usable area into fields, rectangles free of keep-outs and locked blanks and the required gap apart, so
 * that each can be filled by itself. Without obstacles the only field is the whole. A band across the sheet leaves one
 * field on either side of it. A field is at least `least` wide and high.
 */
export function fieldSets(problem: Problem, least: number): Box[][] {
  const { usable } = problem;
  const obstacles = obstacleBoxes(problem).filter((box) => overlaps(box, usable));
  if (obstacles.length === 0) return [[usable]];
  const width = (box: Box) => box.maxX - box.minX;
  const height = (box: Box) => box.maxY - box.minY;
  const orders = [(box: Box) => width(box) * height(box), width, height];
  const sets = orders.map((worth) => emptyFields(usable, obstacles, requiredGap(problem.rules), least, worth).toSorted((a, b) => a.minY - b.minY || a.minX - b.minX));
  return sets.filter((set, i) => sets.findIndex((other) => JSON.stringify(other) === JSON.stringify(set)) === i);
}

/** Whether something stands on the sheet that is not simply a band right across it. */
export function hasPartialObstacle(problem: Problem): boolean {
  const { minX, minY, maxX, maxY } = problem.usable;
  return obstacleBoxes(problem).some((box) => overlaps(box, problem.usable) && (box.minX > minX || box.maxX < maxX) && (box.minY > minY || box.maxY < maxY));
}

/** Boxes that a blank's box may touch but not enter, around all keep-outs and locked blanks. */
export function obstacleBoxes(problem: Problem): Box[] {
  const gap = requiredGap(problem.rules);
  const locked = problem.locked.map(({ part, turn, x, y }) => grown(boxOf(shiftRing(turnRing(problem.parts[part].outline, turn), { x, y })), gap));
  return [...problem.keepOuts.map(({ ring, clearance }) => grown(boxOf(ring), clearance)), ...locked];
}

export function grown({ minX, minY, maxX, maxY }: Box, by: number): Box {
  return { minX: minX - by, minY: minY - by, maxX: maxX + by, maxY: maxY + by };
}

export function overlaps(a: Box, b: Box): boolean {
  return a.minX < b.maxX && b.minX < a.maxX && a.minY < b.maxY && b.minY < a.maxY;
}

/** Takes the empty rectangle of most worth, then the next one the gap away from it, until none is wide or high enough. */
function emptyFields(usable: Box, obstacles: readonly Box[], gap: number, least: number, worth: (box: Box) => number): Box[] {
  const fields: Box[] = [];
  const taken = [...obstacles];
  for (;;) {
    const next = emptyRectangles(usable, taken)
      .filter((box) => box.maxX - box.minX >= least && box.maxY - box.minY >= least)
      .reduce<Box | undefined>((best, box) => (best && worth(best) >= worth(box) ? best : box), undefined);
    if (!next) return fields;
    fields.push(next);
    taken.push(grown(next, gap));
  }
}

/** Empty rectangles that cannot grow to any side: every span between two upright sides, cut at what stands in it. */
function emptyRectangles(usable: Box, taken: readonly Box[]): Box[] {
  const within = (x: number) => x > usable.minX && x < usable.maxX;
  const lefts = new Set([usable.minX, ...taken.map((box) => box.maxX).filter(within)]);
  const rights = new Set([usable.maxX, ...taken.map((box) => box.minX).filter(within)]);
  const found: Box[] = [];
  for (const minX of lefts) {
    for (const maxX of rights) {
      if (maxX <= minX) continue;
      const standing = taken.filter((box) => box.minX < maxX && box.maxX > minX).toSorted((a, b) => a.minY - b.minY);
      let minY = usable.minY;
      for (const { minY: from, maxY: to } of [...standing, { minY: usable.maxY, maxY: Infinity }]) {
        const maxY = Math.min(from, usable.maxY);
        if (maxY > minY) found.push({ minX, minY, maxX, maxY });
        minY = Math.max(minY, to);
      }
    }
  }
  return found;
}
