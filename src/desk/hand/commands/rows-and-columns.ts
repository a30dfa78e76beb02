import { chosen, withAdded, type SheetDocument } from '../document.ts';
import type { SheetFrame } from '../sheet-frame.ts';
import { unchanged, type Change } from './change.ts';
import { leastGroupStep, repeated } from './repeat.ts';

export interface GridWish {
  readonly rows: number;
  readonly columns: number;
  /** µm; absent: as tight as the gap allows. */
  readonly stepAlong?: number | undefined;
  readonly stepAway?: number | undefined;
}

/** A sheet with more blanks than this is no work for a hand. */
export const MOST_BLANKS = 5_000;

/**
 * Repeats the chosen blanks in rows (along the gripper edge) and columns, away from the lay and from the gripper. Without
 * given steps each row is as tight as the gap allows, then the rows are.
 */
export function rowsAndColumns(document: SheetDocument, ids: ReadonlySet<number>, { problem }: SheetFrame, { rows, columns, stepAlong, stepAway }: GridWish): Change {
  const group = chosen(document, ids);
  if (group.length === 0) return unchanged(document, 'nothing-selected');
  if (document.blanks.length + group.length * (rows * columns - 1) > MOST_BLANKS) return unchanged(document, 'too-many-blanks');
  const away = problem.lay === 'left' ? 1 : -1;
  const row = repeated(group, 'x', away * (stepAlong ?? leastGroupStep(problem, group, 'x')), columns);
  const block = repeated(row, 'y', stepAway ?? leastGroupStep(problem, row, 'y'), rows);
  const { document: larger, ids: added } = withAdded(document, block.slice(group.length));
  return { document: larger, selected: new Set([...ids, ...added]) };
}
