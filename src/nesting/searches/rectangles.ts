import type { Placement } from '../../layout/problem.ts';
import { fieldSets } from '../patterns/fields.ts';
import { createFrame, leastSide, patternParts, placeItems, type PatternPart } from '../patterns/frame.ts';
import { packRectangles, type PackingStep } from '../patterns/rectangles/pack-rectangles.ts';
import type { Search } from '../search.ts';

/** Rectangular blanks that may be turned by a quarter: blocks within blocks, close to the most that is possible. */
export const rectanglesSearch: Search = {
  name: 'rectangles',
  *run({ problem, limit }) {
    for (const owner of patternParts(problem)) {
      if (!isRectangleBothWays(owner)) continue;
      for (const fields of fieldSets(problem, leastSide(owner))) {
        const enough = fields.length === 1 ? limit - problem.locked.length : Infinity;
        const filled: Placement[][] = fields.map(() => []);
        for (const [index, field] of fields.entries()) {
          const frame = createFrame(owner, field, false);
          for (const { work, boxes } of packings(frame, enough)) {
            if (!boxes) {
              yield { work };
              continue;
            }
            filled[index] = placeItems(frame, boxes.map(({ x, y, turned }) => ({ version: turned ? 1 : 0, x, y })));
            yield { work, candidate: { placements: [...problem.locked, ...filled.flat()], source: 'blocks of turned rectangles' } };
          }
        }
      }
    }
  },
};

/** An upright rectangle with both of its two directions allowed. */
function isRectangleBothWays({ versions, area }: PatternPart): boolean {
  return versions.length === 2 && versions.every(({ width, height }) => width * height === area);
}

function packings({ spacing, width, height }: ReturnType<typeof createFrame>, enough: number): Generator<PackingStep> {
  const [{ width: a, height: b }] = spacing.sizes;
  return packRectangles(width + spacing.gap, height + spacing.gap, a + spacing.gap, b + spacing.gap, enough);
}
