import type { Blank } from './document.ts';
import type { Direction } from './interaction/nudging.ts';
import { boxOnSheet, type SheetFrame } from './sheet-frame.ts';

/** How much a way aside counts against a way ahead. */
const ASIDE = 2;

/** The blank that comes next from another one in a direction, by the middles of their boxes; undefined when none lies there. */
export function nextInDirection(blanks: readonly Blank[], from: Blank, direction: Direction, frame: SheetFrame): Blank | undefined {
  const middle = (blank: Blank) => {
    const { minX, minY, maxX, maxY } = boxOnSheet(frame, blank);
    return { x: (minX + maxX) / 2, y: (minY + maxY) / 2 };
  };
  const start = middle(from);
  let best: Blank | undefined;
  let least = Infinity;
  for (const blank of blanks) {
    const { x, y } = middle(blank);
    const [right, up] = [x - start.x, y - start.y];
    const ahead = { left: -right, right, gripper: -up, tail: up }[direction];
    const aside = Math.abs(direction === 'left' || direction === 'right' ? up : right);
    const way = ahead + ASIDE * aside;
    if (ahead > 0 && aside <= ahead && way < least) [best, least] = [blank, way];
  }
  return best;
}
