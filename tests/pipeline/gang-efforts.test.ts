import { describe, expect, test, vi } from 'vitest';
import { DEFAULT_READ_OPTIONS } from '../../src/dieline/options.ts';
import { readSvgDrawing } from '../../src/dieline/read-svg.ts';
import type { Effort } from '../../src/nesting/effort.ts';
import { inlineRunner, type Task, type TaskRunner } from '../../src/nesting/tasks.ts';
import { gangOutlines } from '../../src/pipeline/gang/outlines.ts';
import { readOutlinesJob } from '../../src/pipeline/gang/outlines-job.ts';

// The cover only tightens the bound, at forty seconds of counted work a job; the plans are what is looked at here.
vi.mock('../../src/pipeline/gang/cover-shares.ts', () => ({ coverShares: () => [] }));

const SHAPES = { ell: 'M0 0H60V20H20V70H0Z', tee: 'M0 0H80V18H52V60H28V18H0Z', wedge: 'M0 0H70L20 50Z', trough: 'M0 0H60V50H44V16H16V50H0Z', step: 'M0 0H40V20H64V44H24V24H0Z' };
type Shape = keyof typeof SHAPES;

async function jobOf(sheet: string, forms: number, quantities: Partial<Record<Shape, number>>) {
  const plain = { gap: 2, bleed: 0, gripper: 0, tail: 0, sideMargins: 0, inkGripper: 0, inkTail: 0, inkSides: 0 };
  const designs = Object.entries(quantities).map(([id, quantity]) => ({ file: id, id, quantity, rotations: [0, 180] }));
  const drawing = async (name: string) =>
    readSvgDrawing(new TextEncoder().encode(`<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="100mm" viewBox="0 0 100 100"><path id="Cutting" d="${SHAPES[name as Shape]}" fill="none" stroke="#000"/></svg>`), DEFAULT_READ_OPTIONS);
  return readOutlinesJob({ ...plain, sheet, forms, designs }, 'job', { json: () => undefined, drawing, nameOf: (file) => file });
}

/** Runs a job and keeps what was asked of the threads. */
async function ganged(job: Awaited<ReturnType<typeof jobOf>>, effort: Effort) {
  const asked: string[] = [];
  const inline = inlineRunner();
  const runner: TaskRunner = {
    breathe: inline.breathe,
    run: (tasks, stop) => {
      asked.push(...tasks.map((task: Task) => JSON.stringify({ ...task, problem: undefined })));
      return inline.run(tasks, stop);
    },
  };
  return { facts: await gangOutlines(job, { effort, seed: 1, runner, stop: () => undefined }), asked };
}

describe('a deeper effort goes on where a lighter one ends', () => {
  test.each([
    ['one form', '200x150', 1, { ell: 1000, tee: 700 }],
    ['two forms', '240x180', 2, { ell: 1000, tee: 700, trough: 900, wedge: 400 }],
    ['three designs, one form', '220x160', 1, { step: 1500, trough: 700, wedge: 900 }],
  ] as const)('%s: normal takes no more pressings than quick, and does all that quick does first', { timeout: 180_000 }, async (_, sheet, forms, quantities) => {
    const job = await jobOf(sheet, forms, quantities);
    const quick = await ganged(job, 'quick');
    const normal = await ganged(job, 'normal');
    expect(normal.facts.pressings).toBeLessThanOrEqual(quick.facts.pressings);
    expect(normal.facts.lowerBound).toBeGreaterThanOrEqual(quick.facts.lowerBound);
    expect(quick.asked.length).toBeGreaterThan(0);
    expect(normal.asked.slice(0, quick.asked.length)).toEqual(quick.asked);
    expect(normal.asked.length).toBeGreaterThan(quick.asked.length);
  });
});
