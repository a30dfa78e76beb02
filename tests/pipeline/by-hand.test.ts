import { describe, expect, test } from 'vitest';
import { judge } from '../../src/layout/judge.ts';
import type { LayoutFile } from '../../src/layout/layout-file.ts';
import { createTaskHandler } from '../../src/nesting/tasks.ts';
import type { TaskRunner } from '../../src/nesting/tasks.ts';
import { solveRest, tidy } from '../../src/pipeline/by-hand.ts';
import { at, layoutWith, rectangle } from '../support/layouts.ts';
import { carton } from '../desk/hand/frames.ts';

const handle = createTaskHandler();
const runner: TaskRunner = {
  run: (tasks) => Promise.all(tasks.map((task) => handle(task, async () => false))),
  breathe: async () => {},
};
const host = { runner, stop: () => undefined };

/** Cards of 100 × 60 on 660 × 400: six of 106 along and six of 66 away fit, as 6 × 106 − 6 = 630. */
const cards = (placements: LayoutFile['placements']) => layoutWith([{ ...rectangle('card', 100, 60), rotations: [0, 180] }], placements, {
  sheet: { width: 660, height: 400 },
  usable: { x: 10, y: 10, width: 640, height: 380 },
  printable: { x: 0, y: 0, width: 660, height: 400 },
});
const reach = ({ placements }: LayoutFile, axis: 'x' | 'y') => Math.max(...placements.map((placed) => placed[axis]));

describe('solving the rest', () => {
  test('keeps the locked blanks to the micrometre and fills what is left', async () => {
    const layout = cards([at('card', 13.5, 17.25), at('card', 300, 200), at('card', 410, 200)]);
    const solved = await solveRest({ layout, locked: [0] }, { effort: 'quick', seed: 1 }, host);
    expect(judge(solved.layout).state).toBe('sound');
    expect(solved.layout.placements.length).toBeGreaterThanOrEqual(25);
    expect(solved.limit.ups).toBeGreaterThanOrEqual(solved.layout.placements.length);
    expect(solved.locked.map((number) => solved.layout.placements[number])).toEqual([at('card', 13.5, 17.25)]);
  });

  test('refuses locked blanks that are faulty by themselves, naming them', async () => {
    const layout = cards([at('card', 300, 300), at('card', 20, 20), at('card', 60, 40)]);
    await expect(solveRest({ layout, locked: [1, 2] }, { effort: 'quick', seed: 1 }, host)).rejects.toMatchObject({ issues: [{ code: 'locked-not-sound', facts: { kind: 'overlap', blanks: '2 and 3' } }] });
  });
});

describe('tidying', () => {
  test('pushes a loose layout to gripper and lay and leaves no fault', async () => {
    const layout = cards([at('card', 31, 33), at('card', 160, 40), at('card', 290, 29), at('card', 40, 140), at('card', 171, 133)]);
    const { layout: tidied } = await tidy({ layout, locked: [] });
    expect(judge(tidied).state).toBe('sound');
    expect(tidied.placements.map(({ x, y }) => [x, y])).toEqual([[10, 10], [116, 10], [222, 10], [10, 76], [116, 76]]);
  });

  test('moves around what is locked', async () => {
    const layout = cards([at('card', 200, 100), at('card', 31, 33), at('card', 420, 260)]);
    const { layout: tidied, locked } = await tidy({ layout, locked: [0] });
    expect(judge(tidied).state).toBe('sound');
    expect(locked.map((number) => tidied.placements[number])).toEqual([at('card', 200, 100)]);
    expect(reach(tidied, 'y')).toBeLessThan(260);
  });

  test('parts blanks that stand a little too near, of cartons too', async () => {
    const wide = { x: 0, y: 0, width: 900, height: 500 };
    const layout = layoutWith([{ ...carton(5), rotations: [0, 180] }], [at('carton', 30, 40), at('carton', 248.4, 41), at('carton', 500, 60)], { sheet: { width: 900, height: 500 }, usable: wide, printable: wide });
    expect(judge(layout).state).toBe('faulty');
    const { layout: tidied } = await tidy({ layout, locked: [] });
    expect(judge(tidied).state).toBe('sound');
    expect(reach(tidied, 'x')).toBeLessThan(reach(layout, 'x'));
  });

  test('says that overlaps must be mended first where pushing apart does not do', async () => {
    const layout = cards([at('card', 20, 20), at('card', 25, 30)]);
    await expect(tidy({ layout, locked: [] })).rejects.toMatchObject({ issues: [{ code: 'tidy-faulty', facts: { faults: 1 } }] });
  });
});
