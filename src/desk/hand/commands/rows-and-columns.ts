import { blankArea, type Placement } from '../../../layout/problem.ts';
import { chosen, stationsOf, withAdded, type SheetDocument } from '../document.ts';
import { boxAround, boxOnSheet, type SheetFrame } from '../sheet-frame.ts';
import { unchanged, type Change } from './change.ts';
import { leastGroupStep, repeated } from './repeat.ts';
import { standsFree } from './stands-free.ts';

/** How rows and columns are laid out, whatever their number. */
export interface GridSteps {
  /** The whole sheet anew, from the corner at gripper and lay: only locked blanks stay. Else the chosen blanks are repeated. */
  readonly whole: boolean;
  /** µm; absent: as tight as the gap allows. */
  readonly stepAlong?: number | undefined;
  readonly stepAway?: number | undefined;
}

export interface GridWish extends GridSteps {
  readonly rows: number;
  readonly columns: number;
}

/** A sheet with more blanks than this is no work for a hand. */
export const MOST_BLANKS = 5_000;

/**
 * Repeats the chosen blanks in rows (along the gripper edge) and columns, away from the lay and from the gripper; or fills
 * the whole sheet so. Without given steps each row is as tight as the gap allows, then the rows are. Places where a blank
 * that stays, or an area that must stay free, is in the way are left out. Nothing happens where it does not fit the sheet.
 */
export function rowsAndColumns(document: SheetDocument, ids: ReadonlySet<number>, frame: SheetFrame, wish: GridWish): Change {
  const group = groupOf(document, ids, frame, wish);
  if (group.length === 0) return unchanged(document, 'nothing-selected');
  const { rows, columns } = mostThatFit(document, ids, frame, wish, wish.columns);
  if (wish.rows > rows || wish.columns > columns) return unchanged(document, 'grid-does-not-fit');
  const staying = document.blanks.filter(({ id, locked }) => (wish.whole ? locked : !ids.has(id)));
  if (document.blanks.length + group.length * (wish.rows * wish.columns - 1) > MOST_BLANKS) return unchanged(document, 'too-many-blanks');
  const row = rowOf(group, frame, wish, wish.columns);
  const block = repeated(row, 'y', stepAwayOf(row, frame, wish), wish.rows);
  const copies = wish.whole ? block : block.slice(group.length);
  const free = copies.filter((placement) => standsFree(placement, staying, frame));
  const { document: laid, ids: added } = withAdded(wish.whole ? { ...document, blanks: staying } : document, free);
  return { document: laid, selected: new Set([...(wish.whole ? [] : ids), ...added]), ...(free.length < copies.length && { notice: 'places-left-out' }) };
}

/** The most rows and columns that the area for blanks holds; at least one each. `columns`: how many the rows are to have, where it is known. */
export function mostThatFit(document: SheetDocument, ids: ReadonlySet<number>, frame: SheetFrame, steps: GridSteps, columns = Infinity): { readonly rows: number; readonly columns: number } {
  const group = groupOf(document, ids, frame, steps);
  if (group.length === 0) return { rows: 1, columns: 1 };
  const [area, box] = [blankArea(frame.problem), boxAround(frame, group)!];
  const along = frame.problem.lay === 'left' ? area.maxX - box.maxX : box.minX - area.minX;
  const most = Math.max(1, 1 + Math.floor(along / stepAlongOf(group, frame, steps)));
  const row = rowOf(group, frame, steps, Math.max(1, Math.min(columns, most)));
  return { columns: most, rows: Math.max(1, 1 + Math.floor((area.maxY - box.maxY) / stepAwayOf(row, frame, steps))) };
}

/** What is repeated. Of the whole sheet: a blank as the chosen one or the first station, brought to the corner. */
function groupOf(document: SheetDocument, ids: ReadonlySet<number>, frame: SheetFrame, { whole }: GridSteps): readonly Placement[] {
  if (!whole) return chosen(document, ids);
  const { problem } = frame;
  const { part, turn } = (ids.size < document.blanks.length ? chosen(document, ids)[0] : undefined) ?? stationsOf(document, frame)[0] ?? { part: 0, turn: problem.parts[0].turns[0] };
  const [area, box] = [blankArea(problem), boxOnSheet(frame, { part, turn, x: 0, y: 0 })];
  return [{ part, turn, x: problem.lay === 'left' ? area.minX - box.minX : area.maxX - box.maxX, y: area.minY - box.minY }];
}

function rowOf(group: readonly Placement[], frame: SheetFrame, steps: GridSteps, columns: number): Placement[] {
  return repeated(group, 'x', (frame.problem.lay === 'left' ? 1 : -1) * stepAlongOf(group, frame, steps), columns);
}

function stepAlongOf(group: readonly Placement[], { problem }: SheetFrame, { stepAlong }: GridSteps): number {
  return stepAlong ?? leastGroupStep(problem, group, 'x');
}

function stepAwayOf(row: readonly Placement[], { problem }: SheetFrame, { stepAway }: GridSteps): number {
  return stepAway ?? leastGroupStep(problem, row, 'y');
}
