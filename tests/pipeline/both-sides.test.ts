import { describe, expect, test } from 'vitest';
import type { MmRing } from '../../src/layout/layout-file.ts';
import { backUpPlace } from '../../src/layout/back-up.ts';
import { turnOfDegrees, turnPoint } from '../../src/geometry/turn.ts';
import { inlineRunner } from '../../src/nesting/tasks.ts';
import { nest, type NestJob } from '../../src/pipeline/nest.ts';
import { readSample } from '../support/sample-figures.ts';

const drawing = readSample('reverse-tuck-small.svg');
const job = (more: Partial<NestJob>): NestJob => ({ id: 'carton', blank: drawing.blanks[0]!, drawing, sheet: { width: 1020, height: 720 }, settings: {}, machines: {}, layouts: 1, ...more });
const search = { effort: 'quick', seed: 1, runner: inlineRunner(), stop: () => undefined } as const;

describe.each(['work-and-turn', 'work-and-tumble'] as const)('%s', (back) => {
  test('every front has its mirror image where the second pass prints it', async () => {
    const { layouts, limit } = await nest(job({ back }), search);
    const { designs, placements, sheet, result } = layouts[0]!.file;
    expect(placements.length).toBeGreaterThanOrEqual(back === 'work-and-turn' ? 16 : 12);
    expect(placements.filter(({ design }) => design === 'carton')).toHaveLength(placements.length / 2);
    expect(result).toMatchObject({ ups: placements.length, upperBound: limit.ups });
    const corners = (design: string): MmRing => designs.find(({ id }) => id === design)!.outline;
    const centres = (design: string, reflect: boolean) =>
      placements.filter((placed) => placed.design === design).map(({ rotation, x, y }) => {
        const points = corners(design).map(([px, py]) => turnPoint({ x: px!, y: py! }, turnOfDegrees(rotation)!));
        const xs = points.map((p) => p.x + x);
        const ys = points.map((p) => p.y + y);
        const centre = { x: (Math.min(...xs) + Math.max(...xs)) / 2, y: (Math.min(...ys) + Math.max(...ys)) / 2 };
        const at = reflect ? backUpPlace(centre, sheet, back) : centre;
        return `${at.x.toFixed(2)} ${at.y.toFixed(2)}`;
      }).toSorted();
    expect(centres('carton-back', false)).toEqual(centres('carton', true));
  });

  test('neither forced rows nor kept blanks go with it', async () => {
    await expect(nest(job({ back, grid: { rows: 2, columns: 2 } }), search)).rejects.toMatchObject({ issues: [{ code: 'options-contradict' }] });
  });
});

test('perfecting grips the tail as well', async () => {
  const usable = async (back: NestJob['back']) => (await nest(job({ back }), search)).layouts[0]!.file.usable;
  expect(await usable('sheetwise')).toEqual(await usable(undefined));
  expect(await usable('perfecting')).toMatchObject({ y: 13, height: 694 });
});
