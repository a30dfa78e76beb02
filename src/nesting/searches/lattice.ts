import type { Box } from '../../geometry/point.ts';
import type { Cell, Placement, Problem } from '../../layout/problem.ts';
import { fillWithCell, itemsAt, phasesByCount, type Stops } from '../patterns/cell-fill.ts';
import { cellJobs, cellRows, quarterTurned, sheetCell, type CellJob, type FoundCell } from '../patterns/cells.ts';
import { clearOnes } from '../patterns/clear.ts';
import { fieldSets, hasPartialObstacle, obstacleBoxes } from '../patterns/fields.ts';
import { createFrame, leastSide, patternParts, placeItems, type Frame, type PatternPart } from '../patterns/frame.ts';
import { plainKinds } from '../patterns/row-kinds.ts';
import type { RowKind } from '../patterns/rows.ts';
import { stackedFields } from '../patterns/stacks.ts';
import type { Search, SearchContext, SearchStep } from '../search.ts';

/** Cells laid over the sheet, densest first. */
const CELLS_TRIED = 24;
/** Cells whose rows are stacked along an axis. */
const CELLS_STACKED = 3;
/** Cells laid over keep-outs and locked blanks, and phases of each tried there. */
const CELLS_AMONG_OBSTACLES = 8;
const PHASES_AMONG_OBSTACLES = 30;

/** Lattices and double lattices: dense repeating cells, laid over the sheet at their best phases. */
export const latticeSearch: Search = {
  name: 'lattice',
  *run(context) {
    for (const owner of patternParts(context.problem)) {
      for (const jobs of cellJobs(owner)) {
        const found = yield* findCells(owner, jobs, context);
        const cells = found.flatMap((cell) => [cell, quarterTurned(cell, owner) ?? []].flat());
        if (cells.length > 0) yield* fillFields(owner, cells, context);
        const sheet = found.filter(({ cell }) => cell.items.length > 1).map((cell) => sheetCell(cell, createFrame(owner, context.problem.usable, false)));
        yield* stackCells(owner, sheet, context);
      }
    }
  },
};

function* findCells(owner: PatternPart, jobs: readonly CellJob[], { problem, random }: SearchContext): Generator<SearchStep, FoundCell[]> {
  const found: FoundCell[] = [];
  const frame = createFrame(owner, problem.usable, false);
  for (const { swapped, find } of jobs) {
    const before = owner.asked.count;
    const cells = find(random).slice(0, 2).map((cell) => ({ cell, swapped }));
    found.push(...cells);
    yield { work: owner.asked.count - before };
    for (const cell of cells) yield { work: 0, cell: sheetCell(cell, frame) };
  }
  const areaPerBlank = ({ cell }: FoundCell) => cell.area / cell.items.length;
  return found.toSorted((a, b) => areaPerBlank(a) - areaPerBlank(b)).slice(0, CELLS_TRIED);
}

function* fillFields(owner: PatternPart, cells: readonly FoundCell[], { problem }: SearchContext): Generator<SearchStep> {
  for (const fields of fieldSets(problem, leastSide(owner))) {
    const filled = fields.map((field) => bestFill(owner, cells, field));
    yield { work: cells.length * fields.length, candidate: { placements: [...problem.locked, ...filled.flat()], source: 'repeating pattern' } };
  }
  if (!hasPartialObstacle(problem)) return;
  for (const cell of cells.slice(0, CELLS_AMONG_OBSTACLES)) yield { work: PHASES_AMONG_OBSTACLES, candidate: { placements: [...problem.locked, ...fillAmongObstacles(problem, owner, cell)], source: 'repeating pattern' } };
}

/** Rows of the densest cells stacked in any order with plain rows. */
function* stackCells(owner: PatternPart, cells: readonly Cell[], { problem }: SearchContext): Generator<SearchStep> {
  for (const fields of fieldSets(problem, leastSide(owner))) {
    const before = owner.asked.count;
    const filled = fields.map((field) => stackedFields(owner, field, (frame) => kindsWithCells(cells, frame))[0] ?? { name: '', placements: [] });
    yield { work: owner.asked.count - before, candidate: { placements: [...problem.locked, ...filled.flatMap(({ placements }) => placements)], source: filled[0]?.name ?? '' } };
  }
}

function kindsWithCells(cells: readonly Cell[], frame: Frame): RowKind[] {
  const rows = cellRows(cells, frame, CELLS_STACKED);
  return rows.length === 0 ? [] : [...plainKinds(frame.spacing), ...rows];
}

function bestFill(owner: PatternPart, cells: readonly FoundCell[], field: Box): Placement[] {
  let best: Placement[] = [];
  for (const { cell, swapped } of cells) {
    const frame = createFrame(owner, field, swapped);
    const items = fillWithCell(cell, frame.spacing.sizes, frame.width, frame.height);
    if (items.length > best.length) best = placeItems(frame, items);
  }
  return best;
}

/** The pattern laid over the whole usable area, without the blanks that come too near to what stands there. */
function fillAmongObstacles(problem: Problem, owner: PatternPart, { cell, swapped }: FoundCell): Placement[] {
  const frame = createFrame(owner, problem.usable, swapped);
  const { usable } = problem;
  const boxes = obstacleBoxes(problem);
  const along = { low: [0, ...boxes.map((box) => box.maxX - usable.minX)], high: [usable.maxX - usable.minX, ...boxes.map((box) => box.minX - usable.minX)] };
  const upwards = { low: [0, ...boxes.map((box) => box.maxY - usable.minY)], high: [usable.maxY - usable.minY, ...boxes.map((box) => box.minY - usable.minY)] };
  const [stopsX, stopsY]: [Stops, Stops] = swapped ? [upwards, along] : [along, upwards];
  const { sizes } = frame.spacing;
  let best: Placement[] = [];
  for (const { phase, count } of phasesByCount(cell, sizes, frame.width, frame.height, stopsX, stopsY).slice(0, PHASES_AMONG_OBSTACLES)) {
    if (count <= best.length) return best;
    const placed = clearOnes(problem, placeItems(frame, itemsAt(cell, phase, sizes, frame.width, frame.height)));
    if (placed.length > best.length) best = placed;
  }
  return best;
}
