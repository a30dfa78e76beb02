import { describe, expect, test } from 'vitest';
import type { Blank } from '../../src/dieline/dieline.ts';
import { inlineRunner } from '../../src/nesting/tasks.ts';
import { leastSheet, type LeastSheetWish } from '../../src/pipeline/least-sheet.ts';
import { nest, type NestJob } from '../../src/pipeline/nest.ts';
import { polyline } from '../../src/render/shapes.ts';

const search = { effort: 'quick', seed: 1, runner: inlineRunner(), stop: () => undefined } as const;
const corners = [{ x: 0, y: 0 }, { x: 50, y: 0 }, { x: 50, y: 80 }, { x: 0, y: 80 }];
const blank: Blank = { number: 1, outline: polyline(corners, true), openings: [], rules: [], box: { minX: 0, minY: 0, maxX: 50, maxY: 80 }, areaMm2: 4000 };

function find(wish: LeastSheetWish, more: Partial<NestJob> = {}) {
  const job: NestJob = { id: 'blank', blank, drawing: { fingerprint: 'f' }, settings: {}, machines: {}, layouts: 1, sheet: { width: 330, height: 459 }, ...more };
  return leastSheet(job, wish, search);
}

/** 50 × 80 upright, gap 6, sides 6 and 6, gripper 13 with the bleed, tail 10: columns and rows are all there is. */
describe('the least sheet of rectangles', () => {
  test.each([
    ['depth', { width: 330, height: 189 }, 189], // five columns, two rows: 2 × 86 − 6 + 23
    ['width', { width: 118, height: 459 }, 118], // five rows, two columns: 2 × 56 − 6 + 12
  ] as const)('ten, least %s', async (least, sheet, impossibleBelowMm) => {
    const found = await find({ ups: 10, least, stepMm: 1 });
    expect(found).toMatchObject({ sheet, impossibleBelowMm });
    const { layouts } = await nest(found.job, search);
    expect(layouts[0]!.file).toMatchObject({ sheet });
    expect(layouts[0]!.file.placements).toHaveLength(10);
  });

  test('ten, least area: 118 × 447 is less than 286 × 189', async () => {
    expect((await find({ ups: 10, least: 'area', stepMm: 4 })).sheet).toEqual({ width: 118, height: 447 });
  });

  test('sheets that are only tried announce nothing: the story of the search is that of the sheet found', async () => {
    const told: unknown[] = [];
    const job: NestJob = { id: 'blank', blank, drawing: { fingerprint: 'f' }, settings: {}, machines: {}, layouts: 1, sheet: { width: 330, height: 459 } };
    const listening = { ...search, onImprovement: (event: unknown) => void told.push(event) };
    const found = await leastSheet(job, { ups: 10, least: 'depth', stepMm: 1 }, listening);
    expect(told).toEqual([]);
    await nest(found.job, listening);
    expect(told).toContainEqual(expect.objectContaining({ kind: 'layout', ups: 10 }));
  });

  test('not under what the die-cutter takes', async () => {
    const machines = { cutter: { minSheet: { width: 300, height: 250 } } } as NestJob['machines'];
    expect((await find({ ups: 4, least: 'depth', stepMm: 1 }, { machines })).sheet).toEqual({ width: 330, height: 250 });
  });

  test('long grain stays the grain of the sheet that was given', async () => {
    const turned = await find({ ups: 5, least: 'depth', stepMm: 1 }, { sheet: { width: 300, height: 461 }, grain: 'y', sheetGrain: 'long' });
    expect(turned.job.sheetGrain).toBe('y');
    expect(turned.sheet.height).toBe(103);
  });

  test('more than go onto the sheet are refused with the most there can be', async () => {
    await expect(find({ ups: 26, least: 'depth', stepMm: 1 })).rejects.toMatchObject({ issues: [{ code: 'least-sheet-too-many', facts: { ups: 26, most: 25 } }] });
  });
});
