import type { Box } from '../../geometry/point.ts';
import { fieldSets } from '../patterns/fields.ts';
import { createFrame, leastSide, patternParts, placeItems, type Frame, type PatternPart } from '../patterns/frame.ts';
import { stackName } from '../patterns/pattern-name.ts';
import { bestShifts, rowKinds } from '../patterns/row-kinds.ts';
import { alternatingLifts, itemsOf, type StackedRow } from '../patterns/row-stack.ts';
import { pitchTable } from '../patterns/row-choices.ts';
import { layRow, rowCount, type Row } from '../patterns/rows.ts';
import type { Search, SearchStep } from '../search.ts';

/**
 * Plain grids, the first answer. Where so many rows and columns are asked for, exactly these, as tight as they go: plain,
 * shifted, head-to-tail, every second row turned; nothing when none of them fits.
 */
export const gridSearch: Search = {
  name: 'grid',
  *run({ problem }) {
    for (const owner of patternParts(problem)) {
      for (const fields of fieldSets(problem, leastSide(owner))) {
        if (problem.grid) {
          if (problem.locked.length === 0) for (const field of fields) yield* fixedGrids(owner, field, problem.grid);
          continue;
        }
        const before = owner.asked.count;
        const filled = fields.flatMap((field) => plainGrid(owner, field));
        yield { work: owner.asked.count - before, candidate: { placements: [...problem.locked, ...filled], source: 'plain rows' } };
      }
    }
  },
};

/** The version whose plain grid holds most. */
function plainGrid(owner: PatternPart, field: Box) {
  const frame = createFrame(owner, field, false);
  const grids = owner.versions.map((_, version) => {
    const row = plainRow(frame, version);
    return row ? stackAlike(row, frame) : [];
  });
  return placeItems(frame, grids.map(itemsOf).reduce((best, items) => (items.length > best.length ? items : best), []));
}

function plainRow({ spacing, width }: Frame, version: number): Row | undefined {
  const kind = { items: [{ version, x: 0, y: 0 }], period: Math.max(1, spacing.right(version, version, 0)) };
  const count = rowCount(kind, spacing, width);
  return count > 0 ? layRow(kind, spacing, count) : undefined;
}

function stackAlike(row: Row, { spacing, height, owner, width }: Frame): StackedRow[] {
  const problem = { rows: [row], pitches: pitchTable([row], spacing), depth: height, gap: spacing.gap, limit: (width * height) / owner.area };
  return alternatingLifts(problem, 0, 0).map((y) => ({ row, y }));
}

/** Every arrangement of exactly the wanted rows and columns that fits, along both axes. */
function* fixedGrids(owner: PatternPart, field: Box, grid: { rows: number; columns: number }): Generator<SearchStep> {
  for (const swapped of [false, true]) {
    const frame = createFrame(owner, field, swapped);
    const [across, along] = swapped ? [grid.columns, grid.rows] : [grid.rows, grid.columns];
    const before = owner.asked.count;
    const rows = rowsOfLength(frame, along);
    const problem = { rows, pitches: pitchTable(rows, frame.spacing), depth: frame.height, gap: frame.spacing.gap, limit: across * along };
    yield { work: owner.asked.count - before };
    for (let first = 0; first < rows.length; first++) {
      for (let second = 0; second < rows.length; second++) {
        const lifts = alternatingLifts(problem, first, second).slice(0, across);
        if (lifts.length < across) continue;
        const stack = lifts.map((y, place) => ({ row: rows[place % 2 === 0 ? first : second], y }));
        yield { work: across, candidate: { placements: placeItems(frame, itemsOf(stack)), source: stackName(stack, frame) } };
      }
    }
  }
}

/** Rows of exactly so many blanks, at the left and at the shifts that nest best. */
function rowsOfLength({ spacing, width }: Frame, count: number): Row[] {
  const kinds = rowKinds(spacing);
  return kinds.flatMap((kind) => {
    const partners = kinds.filter((other) => other.period === kind.period);
    const shifts = new Set([0, ...partners.flatMap((lower) => bestShifts(lower, kind, spacing))]);
    return [...shifts].map((shift) => layRow(kind, spacing, count, 0, shift)).filter((row) => row.end <= width);
  });
}
