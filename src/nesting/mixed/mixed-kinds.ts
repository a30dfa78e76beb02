import type { Box } from '../../geometry/point.ts';
import type { Placement, Problem } from '../../layout/problem.ts';
import { blockCount, blockItems, blockKinds, type BlockKind } from '../patterns/block-kinds.ts';
import { fieldSets } from '../patterns/fields.ts';
import { createFrame, leastSide, patternParts, placeItems, type PatternPart } from '../patterns/frame.ts';
import { rowKinds } from '../patterns/row-kinds.ts';

/** Kinds of blocks a part brings along an axis: the densest. */
const KINDS_OF_PART = 5;

/** A block kind of one part along one axis of the sheet. */
export interface MixedKind {
  readonly owner: PatternPart;
  readonly kind: BlockKind;
  readonly swapped: boolean;
}

/** A field free of keep-outs, and the blocks of every part that fit into it. */
export interface MixedField {
  readonly field: Box;
  readonly kinds: readonly MixedKind[];
}

/** Ways to cut the sheet into fields, each with its blocks. */
export function mixedFields(problem: Problem): MixedField[][] {
  const owners = patternParts(problem);
  return fieldSets(problem, Math.min(...owners.map(leastSide))).map((fields) => fields.map((field) => ({ field, kinds: owners.flatMap((owner) => kindsIn(owner, field)) })));
}

function kindsIn(owner: PatternPart, field: Box): MixedKind[] {
  return [false, true].flatMap((swapped) => {
    const { spacing, width, height } = createFrame(owner, field, swapped);
    return blockKinds(rowKinds(spacing), spacing, width, height).slice(0, KINDS_OF_PART).map((kind) => ({ owner, kind, swapped }));
  });
}

export function mixedCount({ kind, swapped }: MixedKind, width: number, height: number): number {
  return swapped ? blockCount(kind, height, width) : blockCount(kind, width, height);
}

/** The blanks of a block with its lower left corner at x, y. */
export function mixedBlock({ owner, kind, swapped }: MixedKind, x: number, y: number, width: number, height: number): Placement[] {
  const frame = createFrame(owner, { minX: x, minY: y, maxX: x + width, maxY: y + height }, swapped);
  return placeItems(frame, blockItems(kind, frame.width, frame.height));
}
