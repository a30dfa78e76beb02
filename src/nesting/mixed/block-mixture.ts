import type { Placement, Problem } from '../../layout/problem.ts';
import type { PatternPart } from '../patterns/frame.ts';
import { Guillotine } from '../patterns/guillotine.ts';
import { mixedBlock, mixedCount, type MixedField, type MixedKind } from './mixed-kinds.ts';

/** Places to cut at along an axis, over all parts. */
const MOST_CUTS = 60;
/** Worths become whole numbers up to this, so that sums are exact. */
const WORTH_SCALE = 10_000;

/**
 * The layout of blocks whose blanks are together worth most, straight cuts nested to a depth. `worths` from 0 up, part by
 * part, in any unit. The best of its kind, not of all layouts.
 */
export function blockMixture(problem: Problem, sets: readonly (readonly MixedField[])[], worths: readonly number[], depth: number): Placement[] {
  const highest = Math.max(...worths);
  const whole = worths.map((worth) => Math.round((WORTH_SCALE * worth) / highest));
  const worthOf = (placements: readonly Placement[]) => placements.reduce((sum, { part }) => sum + whole[part], 0);
  const filled = sets.map((fields) => [...problem.locked, ...fields.flatMap((field) => fillField(field, whole, depth))]);
  return filled.reduce((best, placements) => (worthOf(placements) > worthOf(best) ? placements : best));
}

function fillField({ field, kinds: all }: MixedField, worths: readonly number[], depth: number): Placement[] {
  const kinds = all.filter(({ owner }) => worths[owner.part] > 0);
  if (kinds.length === 0) return [];
  const guillotine = new Guillotine<MixedKind>({
    kinds,
    count: (kind, width, height) => worths[kind.owner.part] * mixedCount(kind, width, height),
    widths: cutsOf(kinds, false),
    heights: cutsOf(kinds, true),
    gap: kinds[0].owner.upright.gap,
    leastArea: Math.min(...kinds.map(({ owner }) => owner.area / worths[owner.part])),
  });
  const blocks = guillotine.blocks(field.maxX - field.minX, field.maxY - field.minY, depth);
  return blocks.flatMap(({ kind, x, y, width, height }) => mixedBlock(kind, field.minX + x, field.minY + y, width, height));
}

/** Block sizes along x (or y) to cut at, every part's densest kinds in turn, rising. */
function cutsOf(kinds: readonly MixedKind[], alongY: boolean): number[] {
  const cuts = new Set<number>();
  const share = MOST_CUTS / new Set(kinds.map(({ owner }) => owner)).size;
  const taken = new Map<PatternPart, number>();
  for (const { owner, kind, swapped } of kinds.toSorted((a, b) => a.kind.areaPerBlank - b.kind.areaPerBlank)) {
    const sizes = swapped === alongY ? [...kind.widths[0], ...kind.widths[1]] : [...kind.heights];
    const before = taken.get(owner) ?? 0;
    if (before > 0 && before + sizes.length > share) continue;
    taken.set(owner, before + sizes.length);
    for (const size of sizes) cuts.add(size);
  }
  return [...cuts].toSorted((a, b) => a - b);
}
