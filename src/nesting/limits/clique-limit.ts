import { childSeed, createRandom } from '../../base/random.ts';
import type { Limit, Problem } from '../../layout/problem.ts';
import { prepareLinearPrograms } from '../linear-program.ts';
import { boxTable, isInside } from './box-table.ts';
import type { CellGrid, Lines } from './cell-grid.ts';
import { cellGrid, stepOf } from './cell-grid.ts';
import { cellOrbits } from './cell-orbits.ts';
import { cliqueCertificate } from './clique-certificate.ts';
import { CliqueProgram } from './clique-program.ts';
import { conflictGraph } from './conflict-graph.ts';
import { grant } from './granted.ts';
import { chooseGrids, type GridChoice } from './grid-choice.ts';
import type { PlacementSpace } from './placement-space.ts';
import { placementSpace } from './placement-space.ts';

/** How far a limit is sought. */
export interface CoverDepth {
  /** Cells of the first grid, a rotation. */
  readonly cellsPerTurn: number;
  readonly mostGrids: number;
  /** No grid is halved beyond so many cells: the conflicts take cells² / 8 bytes. */
  readonly mostCells: number;
}

/** One grid and its halves: what a few seconds give. */
export const COARSE: CoverDepth = { cellsPerTurn: 1000, mostGrids: 1, mostCells: 8000 };
/** Several grids, as fine as memory allows. */
export const FINE: CoverDepth = { cellsPerTurn: 1400, mostGrids: 4, mostCells: 24_000 };

export interface CliqueOptions {
  /** Ups of the best layout in hand: the search for a limit ends once no more than these are possible. */
  readonly best: number;
  readonly seed: number;
  readonly depth: CoverDepth;
}

export interface CliqueStep {
  /** Counted work since the last step: about a microsecond each. */
  readonly work: number;
  /** A lower limit than any before it, with its certificate. */
  readonly limit?: Limit;
}

/**
 * Upper limits by clique covers of ever finer grids, one step a round: it may be left at any step. Ends when the limit meets `best` or its grids are used up.
 * Same problem and options, same steps. Nothing comes of problems with several designs.
 */
export async function* cliqueLimit(problem: Problem, options: CliqueOptions): AsyncGenerator<CliqueStep, void> {
  await prepareLinearPrograms();
  const granted = grant(problem);
  const space = placementSpace(problem, granted);
  if (!space) return;
  const { cellsPerTurn, mostGrids, mostCells } = options.depth;
  let least = Infinity;
  for (const [index, choice] of gridsToTry(chooseGrids(space, cellsPerTurn), mostGrids).entries()) {
    for (const { program, work } of coverSteps(space, choice, mostCells, childSeed(options.seed, index))) {
      const improves = program.cover.value < least;
      const certificate = improves ? cliqueCertificate(space, granted, program) : undefined;
      if (!certificate || certificate.ups >= least) {
        yield { work };
        continue;
      }
      least = certificate.ups;
      yield { work, limit: { ups: certificate.ups, value: program.cover.value, by: 'pockets', certificate } };
      if (certificate.ups <= options.best) return;
    }
  }
}

/** The best grid, the best aligned one, then the next best ones that differ in both counts. */
function gridsToTry(choices: readonly GridChoice[], most: number): GridChoice[] {
  const aligned = choices.find((choice) => choice.aligned);
  const ranked = [choices[0], aligned, ...choices].filter((choice) => choice !== undefined);
  const apart = ranked.filter((choice, i) => !ranked.slice(0, i).some((other) => other === choice || (i > 1 && (other.x.count === choice.x.count || other.y.count === choice.y.count))));
  return apart.slice(0, most);
}

interface CoverStep {
  readonly program: CliqueProgram;
  readonly work: number;
}

/** A round is idle when the value falls by less than this. */
const LEAST_GAIN = 0.001;
/** So many idle rounds end the work on a grid. */
const IDLE_ROUNDS = 8;

/** Rounds on one grid until they bring nothing, then on the grid of half its cells, and so on. */
function* coverSteps(space: PlacementSpace, choice: GridChoice, mostCells: number, seed: number): Generator<CoverStep, void> {
  let { x, y } = choice;
  let start: readonly number[][] = [];
  for (let level = 0; ; level++) {
    const grid = gridOf(space, x, y);
    if (grid.count > mostCells) return;
    const tables = space.forbidden.map((row) => row.map((set) => boxTable(set, stepOf(x), stepOf(y))));
    if (tables.some((row, turn) => !isInside(row[turn]!, 0, 0))) return;
    const program = new CliqueProgram(grid, conflictGraph(grid, tables), cellOrbits(grid, space.maps), createRandom(childSeed(seed, level)), space.reach, halved(start, grid));
    try {
      yield* rounds(program);
      start = program.usedCliques.map((clique) => clique.flatMap((cell) => [grid.turnOf[cell]!, grid.columnOf[cell]!, grid.rowOf[cell]!]));
    } finally {
      program.dispose();
    }
    x = { span: x.span, count: 2 * x.count };
    y = { span: y.span, count: 2 * y.count };
  }
}

function* rounds(program: CliqueProgram): Generator<CoverStep, void> {
  let reported = 0;
  const step = () => {
    const work = program.work - reported;
    reported = program.work;
    return { program, work };
  };
  yield step();
  for (let idle = 0; idle < IDLE_ROUNDS; ) {
    const before = program.cover.value;
    const cut = program.round();
    yield step();
    if (!cut) return;
    idle = before - program.cover.value < LEAST_GAIN ? idle + 1 : 0;
  }
}

function gridOf(space: PlacementSpace, x: Lines, y: Lines): CellGrid {
  // The middle of cell k lies 2 k + 1 − count half steps from the middle of the sheet.
  const tables = space.barred.map((sets) => sets.map((set) => boxTable(set, stepOf(x) / 2, stepOf(y) / 2)));
  return cellGrid(x, y, space, (turn, column, row) => tables[turn]!.some((table) => isInside(table, 2 * column + 1 - x.count, 2 * row + 1 - y.count)));
}

/** Cliques of cells, three numbers each, as cells of the grid with twice as many lines. */
function halved(cliques: readonly (readonly number[])[], grid: CellGrid): number[][] {
  return cliques.map((cells) => {
    const parts: number[] = [];
    for (let k = 0; k < cells.length; k += 3) {
      for (const [i, j] of QUARTERS) {
        const part = grid.cellAt(cells[k]!, 2 * cells[k + 1]! + i, 2 * cells[k + 2]! + j);
        if (part >= 0) parts.push(part);
      }
    }
    return parts;
  });
}

const QUARTERS = [[0, 0], [0, 1], [1, 0], [1, 1]] as const;
