import { childSeed } from '../../base/random.ts';
import type { Limit, Problem } from '../../layout/problem.ts';
import { prepareLinearPrograms } from '../linear-program.ts';
import type { CliqueCertificate } from './clique-certificate.ts';
import { PieceCover, type CoverDepth } from './piece-cover.ts';
import { onPiece, sheetPieces } from './sheet-pieces.ts';

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

/** Certificates of the pieces that bands leave of the sheet, in their order; null where no blank fits. */
export interface PiecesCertificate {
  readonly kind: 'pieces';
  readonly version: 1;
  readonly ups: number;
  readonly pieces: readonly (CliqueCertificate | null)[];
}

/**
 * Upper limits by clique covers of several grids, one step a round: it may be left at any step. Ends when the limit meets `best` or its grids are used up.
 * Same problem and options, same steps. Nothing comes of problems with several designs. The pieces that bands leave of a sheet are covered by turns.
 */
export async function* cliqueLimit(problem: Problem, options: CliqueOptions): AsyncGenerator<CliqueStep, void> {
  if (problem.parts.length !== 1) return;
  await prepareLinearPrograms();
  const pieces = sheetPieces(problem).map((usable) => new PieceCover(onPiece(problem, usable)));
  // What the others hold at most leaves so much of `best` for one piece.
  const left = (piece: PieceCover) => options.best - pieces.reduce((sum, other) => sum + (other === piece ? 0 : other.ups), 0);
  const open = new Set(pieces.map((piece, k) => piece.steps(() => left(piece), k === 0 ? options.seed : childSeed(options.seed, PIECE_SEEDS + k), options.depth)));
  let least = Infinity;
  try {
    while (open.size > 0) {
      for (const steps of open) {
        const { done, value: work } = steps.next();
        if (done) open.delete(steps);
        else {
          const limit = limitOfPieces(pieces);
          yield limit.ups < least ? { work, limit } : { work };
          least = Math.min(least, limit.ups);
          if (least <= options.best) return;
        }
      }
    }
  } finally {
    for (const steps of open) steps.return();
  }
}

/** Keeps the seeds of further pieces apart from those of grids. */
const PIECE_SEEDS = 500;

/** Limit of the whole sheet, Infinity while a piece has none; a sheet in one piece has the piece's own certificate. */
function limitOfPieces(pieces: readonly PieceCover[]): Limit {
  const [first] = pieces;
  if (pieces.length === 1) return { ups: first!.proved, value: first!.value, by: 'pockets', certificate: first!.certificate };
  const ups = pieces.reduce((sum, { proved }) => sum + proved, 0);
  const certificate: PiecesCertificate = { kind: 'pieces', version: 1, ups, pieces: pieces.map((piece) => piece.certificate ?? null) };
  return { ups, value: ups, by: 'pockets', certificate };
}
