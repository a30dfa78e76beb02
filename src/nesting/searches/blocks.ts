import type { Box } from '../../geometry/point.ts';
import type { Cell, Placement } from '../../layout/problem.ts';
import { blockCount, blockItems, blockKinds, type BlockKind } from '../patterns/block-kinds.ts';
import { cellRows } from '../patterns/cells.ts';
import { fieldSets } from '../patterns/fields.ts';
import { createFrame, leastSide, patternParts, placeItems, type PatternPart } from '../patterns/frame.ts';
import { Guillotine } from '../patterns/guillotine.ts';
import { rowKinds } from '../patterns/row-kinds.ts';
import type { Search } from '../search.ts';

/** Straight cuts within straight cuts. */
const DEPTH = 2;
/** Cells whose rows are used along an axis. */
const CELLS_USED = 4;
/** Places to cut at along an axis, more or less. */
const MOST_CUTS = 70;

/** Blocks of rows beside blocks of columns: what near-rectangles with quarter turns want. */
export const blocksSearch: Search = {
  name: 'blocks',
  *run({ problem, known }) {
    for (const owner of patternParts(problem)) {
      for (const fields of fieldSets(problem, leastSide(owner))) {
        const before = owner.asked.count;
        let counted = 0;
        const placements: Placement[] = [...problem.locked];
        for (const field of fields) {
          const { filled, work } = fillWithBlocks(owner, field, known.cells);
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

function fillWithBlocks(owner: PatternPart, field: Box, cells: readonly Cell[]): { filled: Placement[]; work: number } {
  const [width, height] = [field.maxX - field.minX, field.maxY - field.minY];
  const kinds: AxisKind[] = [false, true].flatMap((swapped) => {
    const frame = createFrame(owner, field, swapped);
    const rows = [...rowKinds(frame.spacing), ...cellRows(cells, frame, CELLS_USED)];
    return blockKinds(rows, frame.spacing, frame.width, frame.height).map((kind) => ({ kind, swapped }));
  });
  const guillotine = new Guillotine<AxisKind>({
    kinds,
    count: ({ kind, swapped }, w, h) => (swapped ? blockCount(kind, h, w) : blockCount(kind, w, h)),
    widths: cutsOf(kinds, false),
    heights: cutsOf(kinds, true),
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

/** Block sizes along x (or y) to cut at, those of the densest kinds, rising. */
function cutsOf(kinds: readonly AxisKind[], alongY: boolean): number[] {
  const cuts = new Set<number>();
  for (const { kind, swapped } of kinds.toSorted((a, b) => a.kind.areaPerBlank - b.kind.areaPerBlank)) {
    const sizes = swapped === alongY ? [...kind.widths[0], ...kind.widths[1]] : [...kind.heights];
    if (cuts.size + sizes.length <= MOST_CUTS || cuts.size === 0) for (const size of sizes) cuts.add(size);
  }
  return [...cuts].toSorted((a, b) => a - b);
}
