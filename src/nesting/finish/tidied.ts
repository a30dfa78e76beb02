import type { Axis } from '../../geometry/no-fit-slices.ts';
import type { Placement, Problem } from '../../layout/problem.ts';
import { blankArea } from '../../layout/problem.ts';
import { groupShifts } from '../group-shifts.ts';
import { placedBox } from '../rank.ts';
import { bodiesOf } from './bodies.ts';

/** Rounds of pushing to the gripper and to the lay; each brings something nearer or is the last. */
const ROUNDS = 24;

/** Numbers of blanks that move as one. */
type Group = readonly number[];

/**
 * Pushes a valid layout towards the gripper edge and the side lay, by slides alone: no blank ever moves away from either,
 * none jumps, locked ones stay. Blanks whose sides towards the gripper are level stay so: rows move as one, and a row with
 * a locked blank in it stays at its level. Towards the lay, blanks move singly, or as columns or rows, only where the layout
 * stays as regular as it was (`Regularity`). The layout returned is valid, on whole micrometres; pushing it again changes
 * nothing more.
 */
export function tidied(problem: Problem, placements: readonly Placement[]): Placement[] {
  const { movable } = bodiesOf(problem, placements)!;
  const rowsOf = (all: readonly Placement[]) => groupsBy(all, (placement) => placedBox(problem, placement).minY);
  let now: readonly Placement[] = placements;
  for (let round = 0; round < ROUNDS; round++) {
    const before = now;
    now = slidden(problem, now, rowsOf(now), 'y', movable);
    const rows = rowsOf(now);
    for (const groups of waysToLay(problem, now, rows)) {
      const next = slidden(problem, now, groups, 'x', movable);
      if (next !== now && isAsRegular(regularity(problem, next, rows), regularity(problem, now, rows))) now = next;
    }
    if (now === before) break;
  }
  return [...now];
}

/** What may be slid one after another before it is looked whether the layout is as regular as it was: the gentlest first. */
function waysToLay(problem: Problem, placements: readonly Placement[], rows: readonly Group[]): Group[][] {
  const columns = groupsBy(placements, (placement) => laySide(problem, placement));
  const singly = (group: Group) => group.map((i) => [i]);
  return [columns, ...columns.map((column) => [column]), ...rows.map(singly), ...rows.map((row) => [row]), singly(placements.map((_, i) => i))];
}

/** In the order of their keys. */
function groupsBy(placements: readonly Placement[], key: (placement: Placement) => number): Group[] {
  const groups = new Map<number, number[]>();
  placements.forEach((placement, i) => {
    const at = key(placement);
    const group = groups.get(at);
    if (group) group.push(i);
    else groups.set(at, [i]);
  });
  return [...groups].toSorted(([a], [b]) => a - b).map(([, group]) => group);
}

/** How far the side towards the lay lies from the left or right edge that the sheet is pushed to, but for a constant. */
function laySide(problem: Problem, placement: Placement): number {
  const { minX, maxX } = placedBox(problem, placement);
  return problem.lay === 'left' ? minX : -maxX;
}

/** Each group slid to contact, those in front first; the very placements given where none moves. */
function slidden(problem: Problem, placements: readonly Placement[], groups: readonly Group[], axis: Axis, movable: Uint8Array): readonly Placement[] {
  const sign = axis === 'y' || problem.lay === 'left' ? -1 : 1;
  const front = (group: Group) => (axis === 'x' ? laySide(problem, placements[group[0]]) : placedBox(problem, placements[group[0]]).minY);
  let now = placements;
  for (const group of groups.toSorted((a, b) => front(a) - front(b))) {
    if (!group.every((i) => movable[i])) continue;
    const by = slideOf(problem, now, new Set(group), axis, sign);
    if (by !== 0) now = now.map((placement, i) => (group.includes(i) ? { ...placement, [axis]: placement[axis] + by } : placement));
  }
  return now;
}

/** How far a group that stands rightly slides as one, µm; signed. */
function slideOf(problem: Problem, placements: readonly Placement[], group: ReadonlySet<number>, axis: Axis, sign: -1 | 1): number {
  const moving = placements.filter((_, i) => group.has(i));
  const area = blankArea(problem);
  const boxes = moving.map((placement) => placedBox(problem, placement));
  const room = axis === 'y' ? Math.min(...boxes.map(({ minY }) => minY - area.minY)) : sign < 0 ? Math.min(...boxes.map(({ minX }) => minX - area.minX)) : Math.min(...boxes.map(({ maxX }) => area.maxX - maxX));
  if (room <= 0) return 0;
  const window = sign < 0 ? { from: -room, to: 0 } : { from: 0, to: room };
  const stretch = groupShifts(problem, moving, placements.filter((_, i) => !group.has(i)), axis, 0, window).find(({ from, to }) => from <= 0 && to >= 0);
  return stretch ? (sign < 0 ? stretch.from : stretch.to) + 0 : 0;
}

/** How regular a layout looks along the gripper edge. */
interface Regularity {
  /** Lines on which sides towards the lay stand: the fewer, the more columns. */
  readonly lines: number;
  /** Pairs of blanks on one such line. */
  readonly pairs: number;
  /** Different steps from blank to blank, summed over the rows. */
  readonly steps: number;
}

function regularity(problem: Problem, placements: readonly Placement[], rows: readonly Group[]): Regularity {
  const columns = groupsBy(placements, (placement) => laySide(problem, placement));
  const stepsOf = (row: Group) => {
    const along = row.map((i) => laySide(problem, placements[i])).sort((a, b) => a - b);
    return new Set(along.slice(1).map((at, i) => at - along[i])).size;
  };
  return {
    lines: columns.length,
    pairs: columns.reduce((sum, { length }) => sum + (length * (length - 1)) / 2, 0),
    steps: rows.reduce((sum, row) => sum + stepsOf(row), 0),
  };
}

function isAsRegular(after: Regularity, before: Regularity): boolean {
  return after.lines <= before.lines && after.pairs >= before.pairs && after.steps <= before.steps;
}
