import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { align } from '../../../src/desk/hand/commands/align.ts';
import { duplicate } from '../../../src/desk/hand/commands/duplicate.ts';
import { equalSteps } from '../../../src/desk/hand/commands/equal-steps.ts';
import { gather } from '../../../src/desk/hand/commands/gather.ts';
import { lock } from '../../../src/desk/hand/commands/lock.ts';
import { move } from '../../../src/desk/hand/commands/move.ts';
import { remove } from '../../../src/desk/hand/commands/remove.ts';
import { mostThatFit, rowsAndColumns } from '../../../src/desk/hand/commands/rows-and-columns.ts';
import { turn } from '../../../src/desk/hand/commands/turn.ts';
import { faultsOf } from '../../../src/desk/hand/facts/live-faults.ts';
import type { SheetDocument } from '../../../src/desk/hand/document.ts';
import { boxOnSheet } from '../../../src/desk/hand/sheet-frame.ts';
import { at, layoutWith } from '../../support/layouts.ts';
import { carton, ids, laid, rectangles } from './frames.ts';

const places = ({ blanks }: SheetDocument) => blanks.map(({ x, y }) => [x / 1000, y / 1000]);

describe('commands', () => {
  test('move takes the chosen blanks along and leaves locked ones, saying so', () => {
    const { frame, document } = rectangles([at('card', 20, 20), at('card', 200, 20)], {});
    const locked = lock(document, ids(2)).document;
    const moved = move(locked, ids(1, 2), { x: 1500, y: -300 });
    expect(places(moved.document)).toEqual([[21.5, 19.7], [200, 20]]);
    expect(moved.notice).toBe('locked-stays');
    expect(move(locked, ids(2), { x: 1, y: 1 })).toEqual({ document: locked, notice: 'all-locked' });
    expect(frame.problem.parts).toHaveLength(1);
  });

  test('turn goes to the next allowed rotation about the middle of the box, and back to the very place', () => {
    const { frame, document } = rectangles([at('card', 200, 300)]);
    const once = turn(document, ids(1), frame, 'next').document;
    expect(once.blanks[0]).toMatchObject({ turn: 1 });
    expect(boxOnSheet(frame, once.blanks[0])).toEqual({ minX: 220_000, maxX: 280_000, minY: 280_000, maxY: 380_000 });
    expect(turn(once, ids(1), frame, 'back').document.blanks[0]).toEqual(document.blanks[0]);
    const headToTail = laid(layoutWith([{ ...carton(), rotations: [0, 180] }], [at('carton', 100, 100)]));
    expect(turn(headToTail.document, ids(1), headToTail.frame, 'next').document.blanks[0].turn).toBe(2);
    expect(turn(headToTail.document, ids(1), headToTail.frame, 'quarter').document.blanks[0].turn).toBe(1);
    const upright = laid(layoutWith([{ ...carton(), rotations: [0] }], [at('carton', 100, 100)]));
    expect(turn(upright.document, ids(1), upright.frame, 'next').notice).toBe('one-rotation');
  });

  test('duplicate goes one step on where it is free, never onto another blank', () => {
    const { frame, document } = rectangles([at('card', 20, 20), at('card', 126, 20)]);
    const copied = duplicate(document, ids(1), frame);
    // To the right stands the neighbour: it goes away from the gripper, by 60 + 6.
    expect(places(copied.document)[2]).toEqual([20, 86]);
    expect([...copied.selected!]).toEqual([3]);
    expect(faultsOf(copied.document, frame)).toEqual([]);
    const again = duplicate(copied.document, ids(2), frame);
    expect(again.document.blanks[3].id).toBe(4);
    expect(places(again.document)[3]).toEqual([232, 20]);
  });

  test('remove takes away what is not locked', () => {
    const { document } = rectangles([at('card', 20, 20), at('card', 200, 20), at('card', 400, 20)]);
    const locked = lock(document, ids(2)).document;
    const left = remove(locked, ids(1, 2));
    expect(left.document.blanks.map(({ id }) => id)).toEqual([2, 3]);
    expect([...left.selected!]).toEqual([2]);
  });

  test('lock locks a mixed choice and frees one that is locked throughout', () => {
    const { document } = rectangles([at('card', 20, 20), at('card', 200, 20)]);
    const one = lock(document, ids(1)).document;
    const both = lock(one, ids(1, 2)).document;
    expect(both.blanks.map(({ locked }) => locked)).toEqual([true, true]);
    expect(lock(both, ids(1, 2)).document.blanks.map(({ locked }) => locked)).toEqual([false, false]);
  });

  test('align brings boxes onto the line of the outermost one, or of the locked one', () => {
    const { frame, document } = rectangles([at('card', 20, 20), at('card', 200, 50), at('card', 400, 95, 90)]);
    expect(align(document, ids(1, 2, 3), frame, 'gripper').document.blanks.map((blank) => boxOnSheet(frame, blank).minY)).toEqual([20_000, 20_000, 20_000]);
    const locked = lock(document, ids(2)).document;
    expect(align(locked, ids(1, 2, 3), frame, 'tail').document.blanks.map((blank) => boxOnSheet(frame, blank).maxY)).toEqual([110_000, 110_000, 110_000]);
    const middles = align(document, ids(1, 3), frame, 'above').document.blanks.map((blank) => boxOnSheet(frame, blank));
    expect(middles[0].minX + middles[0].maxX).toBe(middles[2].minX + middles[2].maxX);
    expect(align(document, ids(1), frame, 'left').notice).toBe('needs-two');
  });

  test('equal steps are one whole number of micrometres each', () => {
    const { frame, document } = rectangles([at('card', 20, 20), at('card', 500.001, 20), at('card', 130, 22), at('card', 300, 20)]);
    const stepped = equalSteps(document, ids(1, 2, 3, 4), frame).document;
    const xs = stepped.blanks.map(({ x }) => x).toSorted((a, b) => a - b);
    expect(xs).toEqual([20_000, 180_000, 340_000, 500_000]);
    expect(stepped.blanks.map(({ y }) => y)).toEqual([20_000, 20_000, 22_000, 20_000]);
  });

  test('equal steps of several rows are those of each row, and a row without room stays as it is', () => {
    const rows = (y: number, along: readonly number[]) => along.map((x) => at('card', x, y));
    const { frame, document } = rectangles([...rows(20, [20, 130, 420]), ...rows(100, [20, 126, 190]), ...rows(300, [20, 180, 360, 500])]);
    const { document: stepped, notice } = equalSteps(document, new Set(document.blanks.map(({ id }) => id)), frame);
    expect(places(stepped)).toEqual([[20, 20], [220, 20], [420, 20], ...[20, 126, 190].map((x) => [x, 100]), [20, 300], [180, 300], [340, 300], [500, 300]]);
    expect(notice).toBe('some-rows-stay');
    expect(equalSteps(document, ids(4, 5, 6), frame)).toEqual({ document, notice: 'no-equal-steps' });
    expect(equalSteps(stepped, ids(1, 2, 3), frame)).toEqual({ document: stepped, notice: 'steps-equal-already' });
    expect(equalSteps(document, ids(1, 4, 10), frame).notice).toBe('needs-three-in-line');
    // A column, away from the gripper.
    const column = rectangles([at('card', 20, 20), at('card', 24, 110), at('card', 20, 420)]);
    expect(places(equalSteps(column.document, ids(1, 2, 3), column.frame).document)).toEqual([[20, 20], [24, 220], [20, 420]]);
  });

  test('equal steps never make a fault on a sound sheet', () => {
    fc.assert(fc.property(fc.array(fc.tuple(fc.integer({ min: 0, max: 40 }), fc.integer({ min: 0, max: 12 })), { minLength: 9, maxLength: 9 }), (shifts) => {
      const { frame, document } = rectangles(shifts.map(([along, away], i) => at('card', 20 + (i % 3) * 150 + along, 20 + Math.floor(i / 3) * 80 + away)));
      fc.pre(faultsOf(document, frame).length === 0);
      const { document: stepped } = equalSteps(document, new Set(document.blanks.map(({ id }) => id)), frame);
      expect(faultsOf(stepped, frame)).toEqual([]);
    }), { numRuns: 60 });
  });

  test('rows × columns are as tight as the gap allows, and sound', () => {
    const { frame, document } = laid(layoutWith([carton(11)], [at('carton', 10, 10)], { sheet: { width: 2000, height: 1400 }, usable: { x: 0, y: 0, width: 2000, height: 1400 }, printable: { x: 0, y: 0, width: 2000, height: 1400 } }));
    const block = rowsAndColumns(document, ids(1), frame, { whole: false, rows: 3, columns: 4 });
    expect(block.document.blanks).toHaveLength(12);
    expect([...block.selected!]).toHaveLength(12);
    expect(faultsOf(block.document, frame)).toEqual([]);
    // One step 3 µm shorter is too near: the judge lets 2 µm pass.
    const [first, second] = [block.document.blanks[0].x, block.document.blanks[1].x];
    const nearer = rowsAndColumns(document, ids(1), frame, { whole: false, rows: 1, columns: 2, stepAlong: second - first - 3 });
    expect(faultsOf(nearer.document, frame)).toHaveLength(1);
  });

  test('rows × columns go away from the lay, by the steps that were given', () => {
    const { frame, document } = rectangles([at('card', 800, 20)], { lay: 'right' });
    const block = rowsAndColumns(document, ids(1), frame, { whole: false, rows: 2, columns: 3, stepAlong: 120_000, stepAway: 70_000 });
    expect(places(block.document)).toEqual([[800, 20], [680, 20], [560, 20], [800, 90], [680, 90], [560, 90]]);
    expect(rowsAndColumns(document, ids(1), frame, { whole: false, rows: 100, columns: 100 })).toEqual({ document, notice: 'grid-does-not-fit' });
  });

  test('rows × columns of a part of the sheet leave out the places where another blank stands', () => {
    const { frame, document } = rectangles([at('card', 20, 20), at('card', 240, 60)]);
    const block = rowsAndColumns(document, ids(1), frame, { whole: false, rows: 2, columns: 3 });
    expect(places(block.document)).toEqual([[20, 20], [240, 60], [126, 20], [20, 86], [126, 86]]);
    expect(block.notice).toBe('places-left-out');
    expect(faultsOf(block.document, frame)).toEqual([]);
  });

  test('rows × columns of the whole sheet begin in the corner, keep what is locked, and hold what is said to fit', () => {
    for (const lay of ['left', 'right'] as const) {
      const { frame, document } = rectangles([at('card', 300, 300), at('card', 500, 90)], { lay });
      // 980 = 9 × 106 + 26, 680 = 10 × 66 + 20: nine columns, and ten rows.
      expect(mostThatFit(document, ids(), frame, { whole: true })).toEqual({ rows: 10, columns: 9 });
      const locked = lock(document, ids(2)).document;
      const block = rowsAndColumns(locked, ids(), frame, { whole: true, rows: 10, columns: 9 });
      expect(faultsOf(block.document, frame)).toEqual([]);
      expect(block.document.blanks[0]).toMatchObject({ id: 2, x: 500_000, y: 90_000, locked: true });
      expect(places(block.document)).toContainEqual([lay === 'left' ? 10 : 890, 10]);
      // The locked one stands in the way of four, or of two by two.
      expect(block.document.blanks.length).toBe(1 + 90 - 4);
      expect(rowsAndColumns(locked, ids(), frame, { whole: true, rows: 11, columns: 9 }).notice).toBe('grid-does-not-fit');
      expect(rowsAndColumns(locked, ids(), frame, { whole: true, rows: 4, columns: 3, stepAlong: 500_000 }).notice).toBe('grid-does-not-fit');
    }
  });

  test('gather pushes into the corner at gripper and lay and makes no fault', () => {
    const { frame, document } = rectangles([at('card', 40, 30), at('card', 300, 37), at('card', 52, 210), at('card', 290, 180), at('card', 700, 500)]);
    const block = gather(document, ids(1, 2, 3, 4), frame).document;
    expect(places(block)).toEqual([[40, 30], [146, 30], [40, 96], [146, 96], [700, 500]]);
    expect(faultsOf(block, frame)).toEqual([]);
    expect(gather(block, ids(1, 2, 3, 4), frame)).toEqual({ document: block, notice: 'gathered-already' });
  });

  test('gather says which blanks it cannot move', () => {
    const { frame, document } = rectangles([at('card', 40, 30), at('card', 90, 30), at('card', 500, 300)]);
    expect(gather(document, ids(1, 2), frame)).toEqual({ document, notice: 'faulty-stays' });
    const { document: gathered, notice } = gather(document, ids(1, 2, 3), frame);
    expect(notice).toBe('faulty-stays');
    expect(places(gathered).slice(0, 2)).toEqual([[40, 30], [90, 30]]);
    expect(places(gathered)[2]).not.toEqual([500, 300]);
  });

  test('gather of cartons keeps every rule and never spreads', () => {
    const spots = [[20, 30, 0], [300, 40, 180], [610, 25, 0], [30, 320, 180], [330, 300, 0], [640, 330, 180]] as const;
    const wide = { x: 0, y: 0, width: 1100, height: 700 };
    const { frame, document } = laid(layoutWith([carton(6)], spots.map(([x, y, rotation]) => at('carton', x + (rotation ? 212.5 : 0), y + (rotation ? 200 : 0), rotation)), { sheet: { width: 1100, height: 700 }, usable: wide, printable: wide }));
    expect(faultsOf(document, frame)).toEqual([]);
    const block = gather(document, ids(1, 2, 3, 4, 5, 6), frame).document;
    expect(faultsOf(block, frame)).toEqual([]);
    const reach = (which: SheetDocument) => Math.max(...which.blanks.map((blank) => boxOnSheet(frame, blank).maxX));
    expect(reach(block)).toBeLessThan(reach(document) - 20_000);
    expect(gather(block, ids(1, 2, 3, 4, 5, 6), frame).document).toBe(block);
  });
});
