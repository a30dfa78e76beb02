import { childSeed } from '../../base/random.ts';
import type { Limit, Problem } from '../../layout/problem.ts';
import { prepareLinearPrograms } from '../linear-program.ts';
import { cliqueCertificate } from './clique-certificate.ts';
import { grant } from './granted.ts';
import { chooseGrids } from './grid-choice.ts';
import type { CoverStep, GridResult, GridStart } from './grid-cover.ts';
import { gridCover, halve } from './grid-cover.ts';
import type { PlacementSpace } from './placement-space.ts';
import { placementSpace } from './placement-space.ts';

/** How far a limit is sought. */
export interface CoverDepth {
  /** Cells a rotation of the first grids, in this order; of every size the best one, or the best one in step with columns and rows of blanks. */
  readonly grids: readonly { readonly cells: number; readonly aligned?: boolean }[];
  /** How often the best grid so far is halved. */
  readonly halvings: number;
  /** No grid has more cells: their conflicts take cells² / 8 bytes. */
  readonly mostCells: number;
}

/** Several small grids and the best one halved: what some seconds give. */
export const COARSE: CoverDepth = {
  grids: [{ cells: 500 }, { cells: 1000 }, { cells: 1000, aligned: true }, { cells: 1400 }],
  halvings: 1,
  mostCells: 8000,
};

/** More grids, as fine as memory allows. */
export const FINE: CoverDepth = {
  grids: [...COARSE.grids, { cells: 1400, aligned: true }, { cells: 2000 }, { cells: 2000, aligned: true }],
  halvings: 6,
  mostCells: 24_000,
};

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
 * Upper limits by clique covers of several grids, one step a round: it may be left at any step. Ends when the limit meets `best` or its grids are used up.
 * Same problem and options, same steps. Nothing comes of problems with several designs.
 */
export async function* cliqueLimit(problem: Problem, options: CliqueOptions): AsyncGenerator<CliqueStep, void> {
  await prepareLinearPrograms();
  const granted = grant(problem);
  const space = placementSpace(problem, granted);
  if (!space) return;
  let least = Infinity;
  for (const { program, work } of coverSteps(space, options)) {
    const certificate = program.cover.value < least ? cliqueCertificate(space, granted, program) : undefined;
    if (!certificate || certificate.ups >= least) {
      yield { work };
      continue;
    }
    least = certificate.ups;
    yield { work, limit: { ups: least, value: program.cover.value, by: 'pockets', certificate } };
    if (least <= options.best) return;
  }
}

/** All first grids, then the one with the least value halved, and again. */
function* coverSteps(space: PlacementSpace, { best, seed, depth }: CliqueOptions): Generator<CoverStep, void> {
  const open: GridResult[] = [];
  let grids = 0;
  const cover = function* (start: GridStart): Generator<CoverStep, void> {
    const result = yield* gridCover(space, start, depth.mostCells, best + 1, childSeed(seed, grids++));
    if (result) open.push(result);
  };
  for (const start of firstGrids(space, depth)) yield* cover(start);
  for (let k = 0; k < depth.halvings; k++) {
    open.sort((a, b) => a.value - b.value);
    const next = open.shift();
    if (!next) return;
    yield* cover(halve(next));
  }
}

function firstGrids(space: PlacementSpace, { grids }: CoverDepth): GridStart[] {
  const starts = grids.flatMap(({ cells, aligned = false }) => chooseGrids(space, cells).find((choice) => !aligned || choice.aligned) ?? []);
  const different = starts.filter(({ x, y }, i) => !starts.slice(0, i).some((other) => other.x.count === x.count && other.y.count === y.count && other.x.span === x.span && other.y.span === y.span));
  return different.map(({ x, y }) => ({ x, y, cliques: [] }));
}
