import { convexParts } from '../../geometry/convex-parts.ts';
import type { Ring } from '../../geometry/point.ts';
import type { Lines } from './cell-grid.ts';
import type { SheetMap } from './cell-orbits.ts';
import type { CliqueProgram } from './clique-program.ts';
import type { Granted } from './granted.ts';
import { ROUNDING_SHARE } from './granted.ts';
import type { CoverSpace, PlacementSpace } from './placement-space.ts';
import { onSheet } from './placement-space.ts';

/**
 * A clique cover as plain JSON: all that `proof` needs beside the problem to recompute the limit. Lengths in half micrometres; blanks about the middle
 * of their box, places about the middle of the usable area. Corners as [x, y, x, y, …].
 */
export interface CliqueCertificate {
  readonly kind: 'clique-cover';
  readonly version: 1;
  readonly ups: number;
  /** Convex parts inside the outline at rotation 0. */
  readonly parts: readonly (readonly number[])[];
  /** Convex parts inside each keep-out of the problem, in its order. */
  readonly keepOuts: readonly (readonly (readonly number[])[])[];
  /** Under so many turns in a full one the parts stay inside the outline; rotations that differ by such a turn share a class. */
  readonly symmetry: 1 | 2 | 4;
  /** One rotation a class, in quarter turns. */
  readonly turns: readonly number[];
  readonly x: Lines;
  readonly y: Lines;
  /** Weights count in units of 1 / scale. */
  readonly scale: number;
  /** Every clique stands for its images under all of these, each with its weight; the identity is among them. */
  readonly maps: readonly SheetMap[];
  /** Cells in runs along a column: turn index, column, first row, count, and so on. */
  readonly cliques: readonly { readonly weight: number; readonly cells: readonly number[] }[];
}

/** A power of two, so that weights stay whole and their rounding adds less than a hundredth to the sum. */
export const WEIGHT_SCALE = 2 ** 24;

const IDENTITY = { swap: false, flipX: false, flipY: false } as const;

/** A cover of several designs on one sheet: no layout holds blanks whose worths sum to more than all weights of all images. */
export interface MixtureCertificate extends Pick<CliqueCertificate, 'keepOuts' | 'x' | 'y' | 'maps' | 'cliques'> {
  readonly kind: 'mixture-cover';
  readonly version: 1;
  /** In the order of the problem; worths in the unit of the weights. Turns of cells are counted through all designs. */
  readonly designs: readonly (Pick<CliqueCertificate, 'parts' | 'symmetry' | 'turns'> & { readonly worth: number })[];
  /** All weights of all images. */
  readonly most: number;
}

/** `spaces`: of each design, in order; `space`: of all together. */
export function mixtureCertificate(space: CoverSpace, spaces: readonly PlacementSpace[], granted: Granted, program: CliqueProgram): MixtureCertificate {
  const { worths } = program.cover;
  // Worths of a mixture are of any size: the largest is made 1, so that its weights keep their digits.
  const unit = WEIGHT_SCALE / Math.max(...worths);
  const { total, ...rest } = coverFields(space, granted, program, unit);
  return {
    kind: 'mixture-cover',
    version: 1,
    designs: spaces.map(({ outline, symmetry, turns }, d) => ({ parts: convexParts(outline).map(flat), symmetry, turns, worth: Math.floor(worths[d]! * unit) })),
    most: total,
    ...rest,
  };
}

export function cliqueCertificate(space: PlacementSpace, granted: Granted, program: CliqueProgram): CliqueCertificate {
  const { total, keepOuts, x, y, maps, cliques } = coverFields(space, granted, program, WEIGHT_SCALE);
  return {
    kind: 'clique-cover',
    version: 1,
    ups: Math.floor(total / WEIGHT_SCALE),
    parts: convexParts(space.outline).map(flat),
    keepOuts,
    symmetry: space.symmetry,
    turns: space.turns,
    x,
    y,
    scale: WEIGHT_SCALE,
    maps,
    cliques,
  };
}

/** What certificates of one design and of several have in common; a weight of 1 is written as `unit`. `total`: all weights of all images. */
function coverFields(space: CoverSpace, granted: Granted, program: CliqueProgram, unit: number) {
  const { grid, cover, orbits } = program;
  const maps = [{ ...IDENTITY, turns: space.turns.map((_, turn) => turn) }, ...(orbits.images.length > 1 ? space.maps : [])];
  const weights = wholeWeights(program, maps.length, unit);
  const cliques = cover.cliques.flatMap((cells, k) => (weights[k]! > 0 ? [{ weight: weights[k]!, cells: runsOf(program, cells) }] : []));
  const total = cliques.reduce((sum, clique) => sum + clique.weight * maps.length, 0);
  const keepOuts = granted.keepOuts.map(({ ring }) => convexParts(onSheet(ring, granted)).map(flat));
  return { total, keepOuts, x: grid.x, y: grid.y, maps, cliques };
}

function flat(ring: Ring): number[] {
  return ring.flatMap(({ x, y }) => [x, y]);
}

/** Weights of one image each, rounded up after division by the least cover of a cell. */
function wholeWeights({ cover }: CliqueProgram, images: number, unit: number): number[] {
  const least = cover.least * (1 - ROUNDING_SHARE);
  return Array.from(cover.weights, (weight) => Math.ceil((weight / least / images) * unit));
}

function runsOf({ grid }: CliqueProgram, clique: Int32Array): number[] {
  const { turnOf, columnOf, rowOf } = grid;
  const cells = [...clique].sort((a, b) => turnOf[a]! - turnOf[b]! || columnOf[a]! - columnOf[b]! || rowOf[a]! - rowOf[b]!);
  const runs: number[] = [];
  for (const cell of cells) {
    const last = runs.length - 4;
    const follows = last >= 0 && runs[last] === turnOf[cell] && runs[last + 1] === columnOf[cell] && runs[last + 2]! + runs[last + 3]! === rowOf[cell];
    if (follows) runs[last + 3]!++;
    else runs.push(turnOf[cell]!, columnOf[cell]!, rowOf[cell]!, 1);
  }
  return runs;
}
