import { LEAST_FRAME_MM, STRIPPING_CONDITIONS, type StrippingCondition, type StrippingMode } from '../press/stripping.ts';
import type { Stripping } from './stripping.ts';

/** A condition that a layout does not keep, and how often: strips, islands, edges, or blanks that share a cell. */
export interface BrokenCondition {
  readonly condition: StrippingCondition;
  readonly count: number;
}

/** What no other layout could avoid, slots and openings of the blanks themselves, does not count. */
export function brokenConditions(stripping: Stripping, mode: StrippingMode): BrokenCondition[] {
  const counts: Readonly<Record<StrippingCondition, number>> = {
    strips: stripsBetween(stripping),
    islands: looseIslands(stripping).length,
    pins: looseIslands(stripping).filter(({ pinFits }) => !pinFits).length,
    frame: narrowFrame(stripping).length,
    ways: stripping.blanksInGridCell > 1 ? stripping.blanksInGridCell : 0,
  };
  return STRIPPING_CONDITIONS[mode].filter((condition) => counts[condition] > 0).map((condition) => ({ condition, count: counts[condition] }));
}

/** Strips under the limit that are no slot of a blank. */
export function stripsBetween({ slivers }: Stripping): number {
  return slivers.filter(({ inBlank }) => !inBlank).length;
}

/** Islands that blanks enclose between them. */
export function looseIslands({ pieces }: Stripping): Stripping['pieces'] {
  return pieces.filter(({ island, opening }) => island && !opening);
}

export function narrowFrame({ frame }: Stripping) {
  return (['tail', 'left', 'right'] as const).filter((edge) => frame[edge] < LEAST_FRAME_MM);
}

/** Negative when `a` strips better: fewer broken conditions, strips, islands, blanks in a cell; then more straight ways. */
export function compareStripping(a: Stripping, b: Stripping, mode: StrippingMode): number {
  const ways = ({ corridors }: Stripping) => corridors.x.length + corridors.y.length;
  return (
    brokenConditions(a, mode).length - brokenConditions(b, mode).length ||
    stripsBetween(a) - stripsBetween(b) ||
    looseIslands(a).length - looseIslands(b).length ||
    (mode === 'with-blanking' ? a.blanksInGridCell - b.blanksInGridCell : 0) ||
    ways(b) - ways(a)
  );
}
