import { describe, expect, test } from 'vitest';
import { prepare } from '../../src/nesting/prepare.ts';
import { problemOf, rectangle, roundOutline, type PointMm } from '../support/problems.ts';

const turnsKept = (outline: readonly PointMm[]) => {
  const { poses, posesOf } = prepare(problemOf(outline, [700, 500], 3, [0, 1, 2, 3]));
  return posesOf[0].map((pose) => poses[pose].turn);
};

describe('rotations that give the same outline again are dropped', () => {
  test.each<[string, readonly PointMm[], number[]]>([
    ['a round', roundOutline(50), [0]],
    ['a square', rectangle(40, 40), [0]],
    ['a rectangle', rectangle(40, 60), [0, 1]],
    ['a parallelogram', [[0, 0], [50, 0], [70, 30], [20, 30]], [0, 1]],
    ['a trapezoid', [[0, 0], [50, 0], [40, 30], [10, 30]], [0, 1, 2, 3]],
    // Every corner lies on the outline turned by 180°, yet its inlet is on the other side.
    ['a U', [[0, 0], [60, 0], [60, 40], [40, 40], [40, 20], [20, 20], [20, 40], [0, 40]], [0, 1, 2, 3]],
  ])('%s', (_, outline, kept) => {
    expect(turnsKept(outline)).toEqual(kept);
  });
});

test('a dropped rotation is found as the pose that looks like it', () => {
  const { poses, poseOfTurn } = prepare(problemOf(rectangle(40, 60), [700, 500], 3, [2, 1]));
  expect(poseOfTurn[0].map((pose) => poses[pose].turn)).toEqual([2, 1, 2, 1]);
});

test('the centre stays inside the usable area, and the bleed inside the printable one', () => {
  const problem = problemOf(rectangle(40, 60), [700, 500], 6, [0], {
    usable: { minX: 1000, minY: 12_000, maxX: 699_000, maxY: 490_000 },
    printable: { minX: 0, minY: 10_000, maxX: 700_000, maxY: 500_000 },
    rules: { gap: 6000, bleed: 3000, bleedMeeting: 'apart', commonKnife: false },
  });
  expect(prepare(problem).poses[0]).toMatchObject({ minX: 23_000, minY: 43_000, maxX: 677_000, maxY: 460_000 });
});

test('a common measure is used only where it is a good part of the blank', () => {
  const pitch = (outline: readonly PointMm[], gap: number) => prepare(problemOf(outline, [400, 400], gap, [0])).pitch;
  expect(pitch([[0, 0], [60, 0], [60, 20], [20, 20], [20, 60], [0, 60]], 0)).toBe(20_000);
  expect(pitch([[0, 0], [60, 0], [60, 20], [20, 20], [20, 60], [0, 60]], 3)).toBe(0);
  expect(pitch(rectangle(61, 37), 0)).toBe(0);
});
