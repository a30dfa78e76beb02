import { childSeed } from '../../base/random.ts';
import type { Problem } from '../../layout/problem.ts';
import { mixtureCertificate, type MixtureCertificate } from './clique-certificate.ts';
import type { CliqueProgram } from './clique-program.ts';
import { grant } from './granted.ts';
import { chooseGrids } from './grid-choice.ts';
import { gridCover, halve, type GridResult, type GridStart } from './grid-cover.ts';
import { mixedSpace, type MixedSpace } from './mixed-space.ts';

/** How far limits of a mixture are sought. */
export interface MixtureDepth {
  /** Cells of the first grids, all designs and rotations together; of every size the best grid. */
  readonly grids: readonly number[];
  /** How often the best grid so far is halved. */
  readonly halvings: number;
  /** No grid has more cells: their conflicts take cells² / 8 bytes. */
  readonly mostCells: number;
  /** Counted work, about a microsecond each; a grid is left when it is used up. */
  readonly work: number;
}

/**
 * Covers the placements of all designs of a problem, wanted in the proportion of `quantities`; `most`: of each by itself, as proved. One certificate a
 * grid, the tightest last: what a blank of each design is worth, and how much no layout is worth more than. Needs `prepareLinearPrograms`.
 * Same problem and arguments, same certificates; `stop` only cuts the sequence short.
 */
export function mixtureCovers(problem: Problem, quantities: readonly number[], most: readonly number[], seed: number, depth: MixtureDepth, stop = () => false): MixtureCertificate[] {
  const granted = grant(problem);
  const space = mixedSpace(problem, granted);
  const whole = quantities.reduce((sum, quantity) => sum + quantity, 0);
  const mixture = { designOf: space.designOf, shares: quantities.map((quantity) => quantity / whole), most };
  const covered: CliqueProgram[] = [];
  const open: GridResult[] = [];
  let left = depth.work;
  const cover = (start: GridStart) => {
    const steps = gridCover(space, start, depth.mostCells, Infinity, childSeed(seed, covered.length), mixture);
    let step = steps.next();
    if (!step.done) covered.push(step.value.program);
    while (!step.done) {
      left -= step.value.work;
      step = left > 0 && !stop() ? steps.next() : steps.return(undefined);
    }
    if (step.value) open.push(step.value);
  };
  for (const start of firstGrids(space, depth)) if (left > 0 && !stop()) cover(start);
  for (let k = 0; k < depth.halvings && left > 0 && !stop(); k++) {
    const next = open.sort((a, b) => a.value - b.value).shift();
    if (next) cover(halve(next));
  }
  // Nothing comes of a sheet that some design does not fit on.
  const useful = covered.filter(({ cover: { value } }) => value > 0 && value < Infinity).sort((a, b) => b.cover.value - a.cover.value);
  return useful.map((program) => mixtureCertificate(space, space.spaces, granted, program));
}

/** Grids are chosen by how they keep each design's distances to its own kind. */
function firstGrids({ spaces, halfWidth, halfHeight, designOf }: MixedSpace, { grids }: MixtureDepth): GridStart[] {
  const { outline, gap } = spaces[0]!;
  const scored = spaces.flatMap(({ forbidden }) => forbidden[0]!);
  return grids.flatMap((cells) => chooseGrids({ outline, gap, halfWidth, halfHeight, scored }, Math.ceil(cells / designOf.length)).slice(0, 1).map(({ x, y }) => ({ x, y, cliques: [] })));
}
