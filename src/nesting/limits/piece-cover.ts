import { childSeed } from '../../base/random.ts';
import type { Problem } from '../../layout/problem.ts';
import type { CliqueCertificate } from './clique-certificate.ts';
import { cliqueCertificate } from './clique-certificate.ts';
import { closedFormLimits } from './closed-form.ts';
import type { Granted } from './granted.ts';
import { grant } from './granted.ts';
import { chooseGrids, gridSubject } from './grid-choice.ts';
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

/** The lowest limit so far of a sheet in one piece, and how it is known. */
export class PieceCover {
  private readonly granted: Granted;
  private readonly space: PlacementSpace;
  private readonly closedForm: number;
  /** What the checker can follow: by the certificate, or because no blank fits. */
  proved: number;
  /** Sum of weights of the certificate, before it was rounded down. */
  value: number;
  certificate: CliqueCertificate | undefined;

  /** `problem` has one design. */
  constructor(problem: Problem) {
    this.granted = grant(problem);
    this.space = placementSpace(problem, this.granted);
    this.closedForm = closedFormLimits(problem)[0]!.ups;
    const fits = this.space.turns.some((_, turn) => this.space.halfWidth[turn]! >= 0 && this.space.halfHeight[turn]! >= 0);
    this.proved = fits ? Infinity : 0;
    this.value = this.proved;
  }

  /** No layout has more. */
  get ups(): number {
    return Math.min(this.closedForm, this.proved);
  }

  /** Covers grid after grid until they are used up. `best` is asked for what is worth proving; gives the counted work of each step. */
  *steps(best: () => number, seed: number, depth: CoverDepth): Generator<number, void> {
    if (this.proved === 0) return;
    for (const { program, work } of coverSteps(this.space, best, seed, depth)) {
      if (program.cover.value < this.proved) this.take(cliqueCertificate(this.space, this.granted, program), program.cover.value);
      yield work;
      if (this.proved <= best()) return;
    }
  }

  private take(certificate: CliqueCertificate, value: number): void {
    if (certificate.ups >= this.proved) return;
    this.proved = certificate.ups;
    this.value = value;
    this.certificate = certificate;
  }
}

/** All first grids, then the one with the least value halved, and again. */
function* coverSteps(space: PlacementSpace, best: () => number, seed: number, depth: CoverDepth): Generator<CoverStep, void> {
  const open: GridResult[] = [];
  let grids = 0;
  const cover = function* (start: GridStart): Generator<CoverStep, void> {
    const result = yield* gridCover(space, start, depth.mostCells, best() + 1, childSeed(seed, grids++));
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
  const starts = grids.flatMap(({ cells, aligned = false }) => chooseGrids(gridSubject(space), cells).find((choice) => !aligned || choice.aligned) ?? []);
  const different = starts.filter(({ x, y }, i) => !starts.slice(0, i).some((other) => other.x.count === x.count && other.y.count === y.count && other.x.span === x.span && other.y.span === y.span));
  return different.map(({ x, y }) => ({ x, y, cliques: [] }));
}
