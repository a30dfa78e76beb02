import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cutSequence, type CutSequence } from '../../src/estimate/guillotine/cut-sequence.ts';
import { cuttingMinutes, cuttingTime } from '../../src/estimate/guillotine/cutting-time.ts';
import type { Box } from '../../src/geometry/point.ts';
import { mixedStraightCuts } from '../../src/nesting/patterns/rectangles/mixed-straight-cuts.ts';
import { straightCuts } from '../../src/nesting/patterns/rectangles/straight-cuts.ts';
import { INVENTED_GUILLOTINE } from '../../src/press/guillotine.ts';

const box = (minX: number, minY: number, width: number, height: number): Box => ({ minX, minY, maxX: minX + width, maxY: minY + height });

/** Cuts a sheet as the lines say, step by step: each must go right through the piece it lies in. */
function cutApart(sheet: Box, { lines }: CutSequence): Box[] {
  let pieces = [sheet];
  for (const { axis, at, from, to } of lines) {
    const [low, high, start, end] = axis === 'x' ? (['minX', 'maxX', 'minY', 'maxY'] as const) : (['minY', 'maxY', 'minX', 'maxX'] as const);
    const cut = pieces.filter((piece) => piece[low] < at && at < piece[high] && piece[start] === from && piece[end] === to);
    expect(cut).toHaveLength(1);
    pieces = pieces.flatMap((piece) => (piece === cut[0] ? [{ ...piece, [high]: at }, { ...piece, [low]: at }] : [piece]));
  }
  return pieces;
}

function expectCutOut(sheet: Box, boxes: readonly Box[], sequence: CutSequence): void {
  const pieces = new Set(cutApart(sheet, sequence).map((piece) => JSON.stringify(piece)));
  for (const one of boxes) expect(pieces.has(JSON.stringify(one))).toBe(true);
}

describe('cut lists', () => {
  test('2 × 3 with margins and gaps: two cuts at every gap, one at every margin', () => {
    const boxes = [0, 1].flatMap((row) => [0, 1, 2].map((column) => box(10 + column * 32, 20 + row * 45, 30, 40)));
    const sheet = box(0, 0, 120, 120);
    const sequence = cutSequence(sheet, boxes, 200)!;
    expectCutOut(sheet, boxes, sequence);
    expect(sequence.steps[0]).toMatchObject({ turned: false, piles: 1 });
    // Four cuts along one side; then two strips alike, side by side, with six cuts.
    expect(sequence.steps.map(({ places, piles, turned }) => [places.length, piles, turned])).toEqual([[4, 1, false], [6, 2, true]]);
    expect(sequence).toMatchObject({ strokes: 10, turns: 2 });
  });

  test('a knife too short for all strips side by side takes them in loads', () => {
    const boxes = [0, 1].flatMap((row) => [0, 1, 2, 3, 4, 5].map((column) => box(column * 40, row * 50, 40, 50)));
    expect(cutSequence(box(0, 0, 240, 100), boxes, 240)!.strokes).toBe(6);
    // Five cuts into columns; three columns a load, one cut each.
    expect(cutSequence(box(0, 0, 240, 100), boxes, 120)!.strokes).toBe(7);
  });

  test('five blocks like the sails of a windmill cannot be cut through', () => {
    const sails = [box(0, 0, 2, 1), box(2, 0, 1, 2), box(1, 2, 2, 1), box(0, 1, 1, 2)];
    expect(cutSequence(box(0, 0, 3, 3), sails, 10)).toBeUndefined();
  });

  test('a sheet longer than the knife on both sides cannot be cut', () => {
    expect(cutSequence(box(0, 0, 30, 30), [box(0, 0, 10, 10)], 20)).toBeUndefined();
    expect(cutSequence(box(0, 0, 30, 20), [box(0, 0, 10, 10)], 20)).toBeDefined();
  });

  test('every pattern of straight cuts has a cut list that cuts it out', () => {
    fc.assert(
      fc.property(fc.integer({ min: 20, max: 90 }), fc.integer({ min: 20, max: 90 }), fc.integer({ min: 5, max: 19 }), fc.integer({ min: 5, max: 19 }), fc.boolean(), (width, height, a, b, mayTurn) => {
        const { boxes } = straightCuts(width, height, a, b, mayTurn);
        const placed = boxes.map(({ x, y, turned }) => (turned ? box(x, y, b, a) : box(x, y, a, b)));
        if (placed.length === 0) return;
        const sheet = box(0, 0, width, height);
        const sequence = cutSequence(sheet, placed, 100);
        expect(sequence).toBeDefined();
        expectCutOut(sheet, placed, sequence!);
      }),
      { seed: 61, numRuns: 120 },
    );
  });

  test('time: lifts in whole numbers, set-up once', () => {
    const time = cuttingTime({ strokes: 25, turns: 10 }, { ...INVENTED_GUILLOTINE, secondsPerCut: 8, secondsPerTurn: 10, secondsPerLift: 70, setUpMinutes: 12 }, 0.1);
    expect(time.sheetsPerLift).toBe(1000);
    expect(time.minutesPerLift).toBeCloseTo((70 + 200 + 100) / 60, 9);
    expect(cuttingMinutes(time, 2500, { ...INVENTED_GUILLOTINE, setUpMinutes: 12 })).toBeCloseTo(12 + 3 * time.minutesPerLift, 9);
    expect(cuttingTime({ strokes: 1, turns: 0 }, INVENTED_GUILLOTINE, undefined).minutesPerThousandSheets).toBeUndefined();
  });
});

/** Slow and obvious: every whole cut of every rectangle. */
function everyCut(pieces: readonly { width: number; height: number; worth: number }[]) {
  const known = new Map<string, number>();
  const most = (width: number, height: number): number => {
    const key = `${width},${height}`;
    const found = known.get(key);
    if (found !== undefined) return found;
    let best = Math.max(0, ...pieces.filter((piece) => piece.width <= width && piece.height <= height).map(({ worth }) => worth));
    for (let x = 1; x < width; x++) best = Math.max(best, most(x, height) + most(width - x, height));
    for (let y = 1; y < height; y++) best = Math.max(best, most(width, y) + most(width, height - y));
    known.set(key, best);
    return best;
  };
  return most;
}

describe('the most that straight cuts get out', () => {
  const side = fc.integer({ min: 2, max: 9 });

  test('one size, turned or not, as trying every cut finds', () => {
    fc.assert(
      fc.property(fc.integer({ min: 5, max: 22 }), fc.integer({ min: 5, max: 22 }), side, side, fc.boolean(), (width, height, a, b, mayTurn) => {
        const pieces = [{ width: a, height: b, worth: 1 }, ...(mayTurn ? [{ width: b, height: a, worth: 1 }] : [])];
        const { boxes, exact } = straightCuts(width, height, a, b, mayTurn);
        expect({ count: boxes.length, exact }).toEqual({ count: everyCut(pieces)(width, height), exact: true });
      }),
      { seed: 62, numRuns: 150 },
    );
  });

  test('several sizes and worths, as trying every cut finds; what is placed is worth it', () => {
    const piece = fc.record({ width: side, height: side, worth: fc.integer({ min: 0, max: 50 }) });
    fc.assert(
      fc.property(fc.integer({ min: 5, max: 22 }), fc.integer({ min: 5, max: 22 }), fc.array(piece, { minLength: 1, maxLength: 4 }), (width, height, pieces) => {
        const found = mixedStraightCuts(width, height, pieces)!;
        expect(found.worth).toBe(everyCut(pieces)(width, height));
        expect(found.placed.reduce((sum, one) => sum + pieces[one.piece]!.worth, 0)).toBe(found.worth);
        const placed = found.placed.map((one) => box(one.x, one.y, pieces[one.piece]!.width, pieces[one.piece]!.height));
        if (placed.length > 0) expectCutOut(box(0, 0, width, height), placed, cutSequence(box(0, 0, width, height), placed, 100)!);
      }),
      { seed: 63, numRuns: 120 },
    );
  });
});
