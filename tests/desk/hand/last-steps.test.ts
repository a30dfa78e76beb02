import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { SheetDocument } from '../../../src/desk/hand/document.ts';
import { advance, beginHistory, undo, type History, type Step } from '../../../src/desk/hand/history.ts';
import { lastSteps, withinBounds, type KeptSteps } from '../../../src/desk/hand/last-steps.ts';

interface Kept {
  readonly id: number;
  readonly steps?: KeptSteps | undefined;
}

const sheet = (blanks: number, at: number): SheetDocument => ({ blanks: Array.from({ length: blanks }, (_, i) => ({ id: i + 1, part: 0, turn: 0, x: at, y: 0, locked: false })), nextId: blanks + 1 });
const VIEW = { zoom: 1, left: 0, top: 0, width: 0, height: 0 };

/** So many moves on a sheet with so many blanks, some of them taken back. */
function moved(blanks: number, steps: number, back = 0): KeptSteps {
  let history: History<SheetDocument> = beginHistory(sheet(blanks, 0));
  for (let step = 1; step <= steps; step++) history = advance(history, sheet(blanks, step), 'drag');
  for (let step = 0; step < back; step++) history = undo(history);
  return { history, view: VIEW, selected: new Set([1]), active: 1 };
}

const chain = (step: Step<SheetDocument> | undefined): SheetDocument[] => (step ? [step.state, ...chain(step.next)] : []);
const lengths = ({ steps }: Kept) => (steps ? [chain(steps.history.past).length, chain(steps.history.future).length] : undefined);
const places = ({ steps }: Kept) => (steps ? [...chain(steps.history.past), ...chain(steps.history.future)].reduce((sum, { blanks }) => sum + blanks.length, 0) : 0);

/** Layouts changed one after the other. */
function changed(memories: readonly KeptSteps[]): Kept[] {
  return memories.reduce<Kept[]>((layouts, memory, id) => withinBounds([...layouts, { id, steps: lastSteps(memory, layouts) }]), []);
}

test('every layout keeps its steps, a hundred each way; what was selected is no step', () => {
  const layouts = changed([moved(20, 30, 10), moved(20, 250), moved(4, 3)]);
  expect(layouts.map(lengths)).toEqual([[20, 10], [100, 0], [3, 0]]);
  expect(layouts.map(({ steps }) => [steps!.selected.size, steps!.active, steps!.change])).toEqual([[0, undefined, 1], [0, undefined, 2], [0, undefined, 3]]);
  // The nearest are those that are kept.
  expect(chain(layouts[1]!.steps!.history.past).at(-1)!.blanks[0]!.x).toBe(150);
});

test('a sheet with many blanks keeps fewer; layouts changed longest ago lose theirs first', () => {
  // 40 000 places are 80 steps of 500 blanks; two such layouts fill a job.
  const layouts = changed([moved(500, 10), moved(500, 100), moved(500, 100)]);
  expect(layouts.map(lengths)).toEqual([undefined, [80, 0], [80, 0]]);
  // Changed again, the first comes back to its own and the second gives way in its farthest steps.
  const [first, ...others] = layouts;
  const again = withinBounds([{ ...first!, steps: lastSteps(moved(500, 30), layouts) }, ...others]);
  expect(again.map(lengths)).toEqual([[30, 0], [50, 0], [80, 0]]);
});

test('the bounds hold for any layouts; one within them is the very same object; the one changed last keeps what it may by itself', () => {
  fc.assert(
    fc.property(fc.array(fc.tuple(fc.integer({ min: 0, max: 900 }), fc.integer({ min: 0, max: 120 }), fc.integer({ min: 0, max: 120 })), { minLength: 1, maxLength: 6 }), (sheets) => {
      const memories = sheets.map(([blanks, steps, back]) => moved(blanks, steps, Math.min(back, steps)));
      const layouts = changed(memories);
      expect(layouts.reduce((sum, one) => sum + places(one), 0)).toBeLessThanOrEqual(80_000);
      for (const one of layouts) expect(places(one)).toBeLessThanOrEqual(40_000);
      expect(withinBounds(layouts)).toEqual(layouts);
      withinBounds(layouts).forEach((one, i) => expect(one).toBe(layouts[i]));
      expect(lengths(layouts.at(-1)!)).toEqual(lengths(changed([memories.at(-1)!])[0]!));
    }),
    { seed: 3, numRuns: 40 },
  );
});

test('steps that were kept before changes were counted give way first', () => {
  const old: Kept = { id: 0, steps: moved(500, 80) };
  const layouts = withinBounds([old, { id: 1, steps: lastSteps(moved(500, 80), [old]) }, { id: 2, steps: { ...moved(500, 80), change: 2 } }]);
  expect(layouts.map(lengths)).toEqual([undefined, [80, 0], [80, 0]]);
});
