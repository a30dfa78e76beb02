import type { Box } from '../../geometry/point.ts';
import type { Placement, Problem } from '../../layout/problem.ts';
import { mixedBlock, mixedCount, type MixedField, type MixedKind } from './mixed-kinds.ts';

/** Bands tried before a set of counts is given up. */
const MOST_BANDS = 4000;

/**
 * Given counts of every part as one band after another, each right across what the bands before it left, along or across
 * the sheet: what a planner would draw by hand. Undefined when no order tried holds them. Sheets in one field only.
 */
export function bandsFor(problem: Problem, sets: readonly (readonly MixedField[])[], counts: readonly number[]): Placement[] | undefined {
  const single = sets.find((fields) => fields.length === 1)?.[0];
  if (!single || problem.locked.length > 0) return undefined;
  const wanted = counts.flatMap((count, part) => (count > 0 ? [part] : []));
  const kinds = wanted.map((part) => single.kinds.filter(({ owner }) => owner.part === part));
  let tried = 0;
  const gap = single.kinds[0]?.owner.upright.gap ?? 0;
  const place = (left: readonly number[], room: Box): Placement[] | undefined => {
    if (left.length === 0) return [];
    const [width, height] = [room.maxX - room.minX, room.maxY - room.minY];
    for (const index of left) {
      const count = counts[wanted[index]];
      const others = left.filter((other) => other !== index);
      for (const upright of [false, true]) {
        if (tried++ >= MOST_BANDS) return undefined;
        const band = thinnest(kinds[index], count, upright ? height : width, upright ? width : height, upright);
        if (!band) continue;
        const rest = place(others, upright ? { ...room, minX: room.minX + band.depth + gap } : { ...room, minY: room.minY + band.depth + gap });
        if (rest) return [...mixedBlock(band.kind, room.minX, room.minY, upright ? band.depth : width, upright ? height : band.depth).slice(0, count), ...rest];
      }
    }
    return undefined;
  };
  return place(wanted.map((_, index) => index), single.field);
}

/** The band of least depth that holds so many blanks over a length, at most `most` deep; `upright`: depth runs along x. */
function thinnest(kinds: readonly MixedKind[], count: number, length: number, most: number, upright: boolean): { kind: MixedKind; depth: number } | undefined {
  let best: { kind: MixedKind; depth: number } | undefined;
  for (const kind of kinds) {
    for (const depth of depthsOf(kind, upright)) {
      if (depth > Math.min(most, best?.depth ?? Infinity)) break;
      const holds = upright ? mixedCount(kind, depth, length) : mixedCount(kind, length, depth);
      if (holds < count) continue;
      if (depth < (best?.depth ?? Infinity)) best = { kind, depth };
      break;
    }
  }
  return best;
}

/** Rising depths at which a block holds one row or column more. */
function depthsOf({ kind, swapped }: MixedKind, upright: boolean): readonly number[] {
  return swapped === upright ? [...kind.heights] : [...new Set([...kind.widths[0], ...kind.widths[1]])].sort((a, b) => a - b);
}
