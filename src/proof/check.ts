import type { Turn } from '../geometry/turn.ts';
import { turnRing } from '../geometry/turn.ts';
import type { CheckedProblem, StatedMixture, StatedProblem } from './checked-problem.ts';
import { checkedProblem } from './checked-problem.ts';
import type { ReadBlank, ReadCertificate } from './clique-certificate.ts';
import { readCertificate, readMixture, readPieces } from './clique-certificate.ts';
import { imageOf } from './cells.ts';
import { Conflicts } from './conflicts.ts';
import { Cover, fitsTurned } from './cover.ts';
import { LARGEST } from './forbidden.ts';
import { demand, Refusal } from './demand.ts';
import { isPartInside, isSimple, isStrictlyConvex } from './inside-outline.ts';
import { piecesOf } from './pieces.ts';

export type Checked = { readonly ok: true; readonly ups: number } | { readonly ok: false; readonly reason: string };

/**
 * Recomputes an upper limit from its certificate, in whole numbers and with sums of convex parts of its own; it shares no code with the search for
 * limits. The theorem: sets of placements of which any two conflict, with weights that sum to at least 1 on every placement, allow no more blanks
 * than all weights together. Of a sheet that bands cut apart, each piece is covered by itself.
 *
 * Guaranteed: `ok` means that no layout of the stated problem that the judge accepts has more than `ups` blanks.
 */
export function checkLimit(certificate: unknown, stated: StatedProblem): Checked {
  return orReason(() => {
    const pieces = readPieces(certificate);
    return { ok: true, ups: pieces ? upsOfPieces(pieces, stated) : upsOfCover(readCertificate(certificate), checkedProblem(stated)) };
  });
}

export type CheckedMixture = { readonly ok: true; readonly worths: readonly number[]; readonly most: number } | { readonly ok: false; readonly reason: string };

/**
 * The same for several designs on one sheet, where a blank of each counts its worth. Guaranteed: `ok` means that no layout of the stated designs that the
 * judge accepts has Σ worth × blanks above `most`. The sheet is taken as one, with its bands as keep-outs. Whole numbers.
 */
export function checkMixture(certificate: unknown, stated: StatedMixture): CheckedMixture {
  return orReason(() => {
    const read = readMixture(certificate);
    const { designs, ...sheet } = stated;
    demand(read.blanks.length === designs.length, 'the designs are not those of the problem');
    return { ok: true, worths: read.blanks.map(({ worth }) => worth), most: weightOfCover(read, designs.map((design) => checkedProblem({ ...sheet, ...design }))) };
  });
}

function orReason<Result>(check: () => Result): Result | { readonly ok: false; readonly reason: string } {
  try {
    return check();
  } catch (error) {
    if (error instanceof SyntaxError) return { ok: false, reason: `not a certificate: ${error.message}` };
    if (error instanceof Refusal) return { ok: false, reason: error.message };
    throw error;
  }
}

/** Ups of all pieces that bands cut the sheet into; a piece without a certificate must be too small for a blank. */
function upsOfPieces(certificates: readonly unknown[], stated: StatedProblem): number {
  const pieces = piecesOf(stated);
  demand(certificates.length === pieces.length, 'the pieces are not those of the sheet');
  return pieces.reduce((sum, piece, k) => sum + upsOfPiece(certificates[k], checkedProblem(piece)), 0);
}

function upsOfPiece(certificate: unknown, problem: CheckedProblem): number {
  if (certificate !== null) return upsOfCover(readCertificate(certificate), problem);
  demand(problem.turns.every((turn) => !fitsTurned(problem, turn)), 'a piece that holds blanks has no certificate');
  return 0;
}

function upsOfCover(certificate: ReadCertificate, problem: CheckedProblem): number {
  return Math.floor(weightOfCover(certificate, [problem]) / certificate.blanks[0]!.worth);
}

/** All weights of a cover that holds; `problems`: one for each blank, on the same sheet at the same distances. */
function weightOfCover(certificate: ReadCertificate, problems: readonly CheckedProblem[]): number {
  certificate.blanks.forEach((blank, b) => demandParts(blank, certificate.keepOuts, problems[b]!));
  const conflicts = new Conflicts(certificate, problems[0]!.gap);
  const cover = new Cover(certificate, problems);
  let total = 0;
  for (const { weight, cells } of certificate.cliques) {
    for (const map of certificate.maps) {
      const image = imageOf(cells, map, certificate);
      conflicts.demandClique(image);
      cover.add(image, weight);
      total += weight;
    }
  }
  demand(total <= Number.MAX_SAFE_INTEGER, 'the weights are too large');
  cover.demandWhole();
  return total;
}

/** Everything that the sums of convex parts rest on. */
function demandParts({ parts, symmetry }: ReadBlank, keepOuts: ReadCertificate['keepOuts'], problem: CheckedProblem): void {
  const { outline } = problem;
  demand([outline, ...problem.keepOuts.map(({ ring }) => ring)].flat().every(({ x, y }) => Math.abs(x) <= LARGEST && Math.abs(y) <= LARGEST), 'outline or sheet is too large for exact numbers');
  demand(isSimple(outline), 'the outline crosses itself');
  for (const part of parts) {
    demand(isStrictlyConvex(part), 'a part is not convex');
    for (let turn = 0; turn < 4; turn += 4 / symmetry) demand(isPartInside(turnRing(part, turn as Turn), outline), 'a part stands out of the outline');
  }
  demand(keepOuts.length === problem.keepOuts.length, 'keep-outs are not those of the problem');
  keepOuts.forEach((pieces, k) => {
    const { ring } = problem.keepOuts[k]!;
    demand(pieces.length === 0 || isSimple(ring), 'a keep-out crosses itself');
    demand(pieces.every((piece) => isStrictlyConvex(piece) && isPartInside(piece, ring)), 'a part of a keep-out is not convex or stands out');
  });
}

