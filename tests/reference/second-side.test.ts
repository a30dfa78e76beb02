import { describe, expect, test } from 'vitest';
import { resolveRules } from '../../src/press/rules.ts';
import { sheetAreas, type Bar } from '../../src/press/sheet-areas.ts';

/**
 * Four rows of 154 mm, gap 4 with bleeds cut at the middle between blanks and whole at bars and edges, bleed 3, bar 6,
 * gripper 12, no ink within 12 mm of a gripper edge. Computed for the trade; common practice, no source.
 */
describe('the shortest sheet for a number of rows of 154 mm', () => {
  const rules = resolveRules({ gap: 4, bleed: 3, bleedMeeting: 'cut' });

  /** Whether the rows stand on a sheet of this depth; the centre bar divides them into two halves. */
  function holds(rows: number, depth: number, bar: Bar | undefined, secondGripper: boolean): boolean {
    const { usable, bar: area } = sheetAreas({ width: 1020, height: depth }, { gripper: 12, tail: 12, inkGripper: 12, inkTail: secondGripper ? 12 : 3, bar, secondGripper }, rules);
    const block = (count: number) => count * 154 + (count - 1) * rules.gap;
    if (bar?.place !== 'centre') return block(rows) <= usable.height;
    const half = area!.y - Math.max(2, rules.bleed) - usable.y;
    return block(Math.ceil(rows / 2)) <= half;
  }

  const shortest = (rows: number, bar: Bar | undefined, secondGripper: boolean) => Array.from({ length: 400 }, (_, k) => 500 + k).find((depth) => holds(rows, depth, bar, secondGripper));

  test('perfected: 666 with the bar in the centre, 670 with a bar at the tail, that is at both ends', () => {
    expect(shortest(4, { place: 'centre', height: 6 }, true)).toBe(666);
    expect(shortest(4, { place: 'tail', height: 6 }, true)).toBe(670);
  });

  test('one side: the bar inside the tail margin is shortest', () => {
    expect(shortest(4, { place: 'tail', height: 6 }, false)!).toBeLessThan(shortest(4, { place: 'centre', height: 6 }, false)!);
  });

  test('with an odd number of rows the bar in the centre is no saving', () => {
    expect(shortest(3, { place: 'centre', height: 6 }, true)!).toBeGreaterThan(shortest(3, { place: 'tail', height: 6 }, true)!);
  });
});
