import { InputError, type Issue } from '../base/issue.ts';
import { judge } from '../layout/judge.ts';
import type { LayoutFile, PlacedBlank } from '../layout/layout-file.ts';

/** More of them tell nothing new. */
const MOST_REASONS = 10;

/**
 * Throws an InputError that names every fault of locked blanks which do not lie soundly by themselves. `numberOf` tells the
 * number by which people know a placement.
 */
export function checkLocked(locked: LayoutFile, where: string, numberOf = (placement: number) => placement + 1): void {
  if (locked.placements.length === 0) return;
  const faults = judge(locked).faults.slice(0, MOST_REASONS).map((fault): Issue => ({
    code: 'locked-not-sound',
    severity: 'error',
    where,
    place: fault.place,
    facts: { kind: fault.kind, blanks: fault.blanks.map(numberOf).join(' and '), by: fault.byMm },
  }));
  if (faults.length > 0) throw new InputError(faults);
}

/** The numbers that blanks which did not move have in another layout of the same sheet. */
export function numbersOf(kept: readonly PlacedBlank[], { placements }: LayoutFile): number[] {
  const free = new Map<string, number[]>();
  placements.forEach((placed, number) => free.set(placeKey(placed), [...(free.get(placeKey(placed)) ?? []), number]));
  return kept.flatMap((placed) => free.get(placeKey(placed))?.shift() ?? []).toSorted((a, b) => a - b);
}

function placeKey({ design, rotation, x, y }: PlacedBlank): string {
  return `${design} ${rotation} ${x} ${y}`;
}
