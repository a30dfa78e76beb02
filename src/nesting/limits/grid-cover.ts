import { createRandom } from '../../base/random.ts';
import { boxTable, isInside } from './box-table.ts';
import type { CellGrid, Lines } from './cell-grid.ts';
import { cellGrid, stepOf } from './cell-grid.ts';
import { cellOrbits } from './cell-orbits.ts';
import { CliqueProgram, type Mixture } from './clique-program.ts';
import { conflictGraph } from './conflict-graph.ts';
import type { CoverSpace } from './placement-space.ts';

/** A grid to cover, and cliques to begin with: cells in threes, turn, column and row. */
export interface GridStart {
  readonly x: Lines;
  readonly y: Lines;
  readonly cliques: readonly (readonly number[])[];
}

export interface CoverStep {
  readonly program: CliqueProgram;
  readonly work: number;
}

/** What a grid came to. */
export interface GridResult extends GridStart {
  readonly value: number;
}

/** A grid is left when in so many rounds … */
const PATIENCE = 8;
/** … the value falls by less than this, and by less than this share of what is missing. */
const LEAST_GAIN = 0.002;
const LEAST_SHARE = 0.12;

/**
 * Covers the cells of one grid, one step a round, until the rounds bring too little to get below `target`. Returns nothing when the grid has more than
 * `mostCells` cells or cells that two blanks fit into. `mixture`: in which proportion several blanks are wanted.
 */
export function* gridCover(space: CoverSpace, { x, y, cliques }: GridStart, mostCells: number, target: number, seed: number, mixture?: Mixture): Generator<CoverStep, GridResult | undefined> {
  const grid = gridOf(space, x, y);
  if (grid.count > mostCells) return undefined;
  const tables = space.forbidden.map((row) => row.map((set) => boxTable(set, stepOf(x), stepOf(y))));
  if (tables.some((row, turn) => !isInside(row[turn]!, 0, 0))) return undefined;
  const program = new CliqueProgram(grid, conflictGraph(grid, tables), cellOrbits(grid, space.maps), createRandom(seed), space.reach, cellsOn(grid, cliques), mixture);
  try {
    yield* rounds(program, target);
    return { x, y, value: program.cover.value, cliques: program.usedCliques.map((clique) => clique.flatMap((cell) => [grid.turnOf[cell]!, grid.columnOf[cell]!, grid.rowOf[cell]!])) };
  } finally {
    program.dispose();
  }
}

function* rounds(program: CliqueProgram, target: number): Generator<CoverStep, void> {
  let reported = 0;
  const step = () => {
    const work = Math.round(program.work - reported);
    reported = program.work;
    return { program, work };
  };
  const values = [program.cover.value];
  yield step();
  for (;;) {
    const cut = program.round();
    yield step();
    if (!cut) return;
    values.push(program.cover.value);
    const value = values.at(-1)!;
    const gain = (values.at(-1 - PATIENCE) ?? Infinity) - value;
    if (gain < Math.max(LEAST_GAIN, LEAST_SHARE * (value - target))) return;
  }
}

/** The same cover on the grid of twice as many lines: every cell becomes four. */
export function halve({ x, y, cliques }: GridStart): GridStart {
  return {
    x: { span: x.span, count: 2 * x.count },
    y: { span: y.span, count: 2 * y.count },
    cliques: cliques.map((cells) => {
      const parts: number[] = [];
      for (let k = 0; k < cells.length; k += 3) {
        const column = 2 * cells[k + 1]!;
        const row = 2 * cells[k + 2]!;
        for (const [i, j] of QUARTERS) parts.push(cells[k]!, column + i, row + j);
      }
      return parts;
    }),
  };
}

const QUARTERS = [[0, 0], [0, 1], [1, 0], [1, 1]] as const;

/** Numbers of the cells, those left out that hold no place. */
function cellsOn(grid: CellGrid, cliques: readonly (readonly number[])[]): number[][] {
  return cliques.flatMap((cells) => {
    const found: number[] = [];
    for (let k = 0; k < cells.length; k += 3) {
      const cell = grid.cellAt(cells[k]!, cells[k + 1]!, cells[k + 2]!);
      if (cell >= 0) found.push(cell);
    }
    return found.length > 0 ? [found] : [];
  });
}

function gridOf(space: CoverSpace, x: Lines, y: Lines): CellGrid {
  // The middle of cell k lies 2 k + 1 − count half steps from the middle of the sheet.
  const tables = space.barred.map((sets) => sets.map((set) => boxTable(set, stepOf(x) / 2, stepOf(y) / 2)));
  return cellGrid(x, y, space, (turn, column, row) => tables[turn]!.some((table) => isInside(table, 2 * column + 1 - x.count, 2 * row + 1 - y.count)));
}
