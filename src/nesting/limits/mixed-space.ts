import type { Problem } from '../../layout/problem.ts';
import type { SheetMap } from './cell-orbits.ts';
import { turnSet, type ForbiddenSet } from './forbidden-set.ts';
import type { Granted } from './granted.ts';
import { placementSpace, turnTable, type CoverSpace, type PlacementSpace } from './placement-space.ts';

/** All placements of several blanks on one sheet: the turns of the first design, then those of the next. */
export interface MixedSpace extends CoverSpace {
  readonly spaces: readonly PlacementSpace[];
  /** By index of turn. */
  readonly designOf: readonly number[];
}

export function mixedSpace(problem: Problem, granted: Granted): MixedSpace {
  const spaces = problem.parts.map((part) => placementSpace({ ...problem, parts: [part] }, granted));
  // By design, design, turn and turn.
  const tables: (readonly (readonly ForbiddenSet[])[])[][] = [];
  spaces.forEach((a, i) => tables.push(spaces.map((b, j) => (j < i ? mirrored(tables[j]![i]!) : i === j ? a.forbidden : turnTable(a, b, a.gap)))));
  return {
    spaces,
    designOf: spaces.flatMap(({ turns }, design) => turns.map(() => design)),
    turns: spaces.flatMap(({ turns }) => turns),
    halfWidth: spaces.flatMap(({ halfWidth }) => halfWidth),
    halfHeight: spaces.flatMap(({ halfHeight }) => halfHeight),
    forbidden: spaces.flatMap((a, i) => a.turns.map((_, turn) => tables[i]!.flatMap((table) => table[turn]!))),
    barred: spaces.flatMap(({ barred }) => barred),
    reach: spaces.reduce((sum, { reach }) => sum + reach / spaces.length, 0),
    maps: commonMaps(spaces),
  };
}

/** Differences taken the other way round. */
function mirrored(table: readonly (readonly ForbiddenSet[])[]): ForbiddenSet[][] {
  return table[0]!.map((_, s) => table.map((row) => turnSet(row[s]!, 2)));
}

/** Maps that the blanks of every design allow. */
function commonMaps(spaces: readonly PlacementSpace[]): SheetMap[] {
  const [first, ...others] = spaces;
  return first!.maps.flatMap((map) => {
    const same = others.map(({ maps }) => maps.find(({ swap, flipX, flipY }) => swap === map.swap && flipX === map.flipX && flipY === map.flipY));
    if (same.includes(undefined)) return [];
    let before = 0;
    const turns = [map, ...same].flatMap((one, design) => {
      const images = one!.turns.map((turn) => before + turn);
      before += spaces[design]!.turns.length;
      return images;
    });
    return [{ ...map, turns }];
  });
}
