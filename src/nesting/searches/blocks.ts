import type { Box } from '../../geometry/point.ts';
import type { Placement } from '../../layout/problem.ts';
import { blockCount, blockItems, blockKinds, type BlockKind } from '../patterns/block-kinds.ts';
import { fieldSets } from '../patterns/fields.ts';
import { createFrame, patternParts, placeItems, type PatternPart } from '../patterns/frame.ts';
import { Guillotine } from '../patterns/guillotine.ts';
import type { Search } from '../search.ts';

/** Straight cuts within straight cuts. */
const DEPTH = 2;

/** Blocks of rows beside blocks of columns: what near-rectangles with quarter turns want. */
export const blocksSearch: Search = {
  name: 'blocks',
  *run({ problem }) {
    for (const owner of patternParts(problem)) {
      const least = Math.min(...owner.versions.map(({ width, height }) => Math.min(width, height)));
      for (const fields of fieldSets(problem, least)) {
        const before = owner.asked.count;
        let counted = 0;
        const placements: Placement[] = [...problem.locked];
        for (const field of fields) {
          const { filled, work } = fillWithBlocks(owner, field);
          counted += work;
          placements.push(...filled);
        }
        yield { work: owner.asked.count - before + counted, candidate: { placements, source: 'blocks of rows and columns' } };
      }
    }
  },
};

/** A block kind along one axis of the sheet. */
interface AxisKind {
  readonly kind: BlockKind;
  readonly swapped: boolean;
}

function fillWithBlocks(owner: PatternPart, field: Box): { filled: Placement[]; work: number } {
  const [width, height] = [field.maxX - field.minX, field.maxY - field.minY];
  const kinds: AxisKind[] = [false, true].flatMap((swapped) => {
    const frame = createFrame(owner, field, swapped);
    return blockKinds(frame.spacing, frame.width, frame.height).map((kind) => ({ kind, swapped }));
  });
  const sizes = (axis: 'x' | 'y') => [...new Set(kinds.flatMap(({ kind, swapped }) => (swapped === (axis === 'y') ? [...kind.widths[0], ...kind.widths[1]] : [...kind.heights])))].toSorted((a, b) => a - b);
  const guillotine = new Guillotine<AxisKind>({
    kinds,
    count: ({ kind, swapped }, w, h) => (swapped ? blockCount(kind, h, w) : blockCount(kind, w, h)),
    widths: sizes('x'),
    heights: sizes('y'),
    gap: owner.upright.gap,
    leastArea: owner.area,
  });
  const blocks = guillotine.blocks(width, height, DEPTH);
  const filled = blocks.flatMap(({ kind: { kind, swapped }, x, y, width: w, height: h }) => {
    const frame = createFrame(owner, { minX: field.minX + x, minY: field.minY + y, maxX: field.minX + x + w, maxY: field.minY + y + h }, swapped);
    return placeItems(frame, blockItems(kind, frame.width, frame.height));
  });
  return { filled, work: guillotine.work };
}
