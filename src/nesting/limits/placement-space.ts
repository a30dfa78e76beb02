import type { Ring } from '../../geometry/point.ts';
import { boxOf, counterClockwise, shiftRing } from '../../geometry/point.ts';
import type { Turn } from '../../geometry/turn.ts';
import { addTurns, turnRing } from '../../geometry/turn.ts';
import type { Problem } from '../../layout/problem.ts';
import type { Places } from './cell-grid.ts';
import type { SheetMap } from './cell-orbits.ts';
import { forbiddenSet, turnSet, type ForbiddenSet } from './forbidden-set.ts';
import type { Granted } from './granted.ts';
import { innerOutline } from './inner-outline.ts';

/** Placements on the sheet, as clique covers see them; `turns` and what follows it are lists by turn, or by turn of each of several blanks. */
export interface CoverSpace extends Places {
  /** By turn and turn: differences of places that the gap forbids, a little less than all. */
  readonly forbidden: readonly (readonly ForbiddenSet[])[];
  /** By turn: places that each keep-out forbids. */
  readonly barred: readonly (readonly ForbiddenSet[])[];
  /** How far from a place the middles of cliques through it may lie, roughly. */
  readonly reach: number;
  /** Maps of the sheet that layouts may undergo, closed under composition. */
  readonly maps: readonly SheetMap[];
}

/**
 * All placements of one blank on the sheet. The place of a copy is the middle of its box, measured from the middle of the
 * usable area, in half micrometres, so that whole micrometres stay whole numbers.
 */
export interface PlacementSpace extends CoverSpace {
  /** Blank about the middle of its box, turn 0; simplified to the inside. */
  readonly outline: Ring;
  /**
   * Turns that count apart. Turns under which the outline stays the same count as one: 1, 2 or 4 turns a class.
   */
  readonly turns: readonly Turn[];
  readonly symmetry: 1 | 2 | 4;
  /** Least distance less what the judge grants, half micrometres. */
  readonly gap: number;
}

/** Half µm that corners of the blank may be cut off by: fewer convex parts, at a loss far below a cell. */
const SIMPLIFIED_BY = 40;

/** Half µm by which the gap is taken smaller than the checker takes it, so that borderline boxes are never the ones it refuses. */
export const SEARCH_MARGIN = 20;

/** Of the blank's mean side. */
const REACH = 0.4;

/** Of the problem's only design. */
export function placementSpace(problem: Problem, granted: Granted): PlacementSpace {
  const part = problem.parts[0]!;
  const whole = aboutMiddle(part.outline);
  const symmetry = sameAfter(whole, 1) ? 4 : sameAfter(whole, 2) ? 2 : 1;
  const turns = apart(part.turns, symmetry);
  const outline = innerOutline(whole, SIMPLIFIED_BY);
  const gap = 2 * granted.gap;
  const reach = turns.map((turn) => boxOf(turnRing(whole, turn)));
  const space = {
    outline,
    turns,
    symmetry,
    gap,
    halfWidth: reach.map((box) => granted.width - box.maxX),
    halfHeight: reach.map((box) => granted.height - box.maxY),
    reach: REACH * (boxOf(whole).maxX + boxOf(whole).maxY),
    forbidden: turnTable({ outline, turns }, { outline, turns }, gap),
    barred: turns.map((turn) => keepOutSets(granted, turnRing(outline, turn))),
  } as const;
  return { ...space, maps: sheetMaps(whole, turns, granted.width === granted.height) };
}

/** Lengths doubled, the middle of the box at the origin. */
function aboutMiddle(ring: Ring): Ring {
  const { minX, minY, maxX, maxY } = boxOf(ring);
  return ring.map(({ x, y }) => ({ x: 2 * x - minX - maxX, y: 2 * y - minY - maxY }));
}

/** Whether the turned ring is the ring itself, corner for corner. */
function sameAfter(ring: Ring, turn: Turn): boolean {
  return sameRing(ring, turnRing(ring, turn));
}

function sameRing(a: Ring, b: Ring): boolean {
  if (a.length !== b.length) return false;
  const start = b.findIndex((p) => p.x === a[0]!.x && p.y === a[0]!.y);
  return start >= 0 && a.every((p, i) => p.x === b[(start + i) % b.length]!.x && p.y === b[(start + i) % b.length]!.y);
}

function apart(turns: readonly Turn[], symmetry: number): Turn[] {
  const classes = [...turns].sort((a, b) => a - b);
  const period = 4 / symmetry;
  return classes.filter((turn, i) => !classes.slice(0, i).some((other) => (turn - other) % period === 0));
}

type TurnedBlank = Pick<PlacementSpace, 'outline' | 'turns'>;

/** By turn of `a` and of `b`. N of turns r and s is N of 0 and s − r, turned by r. */
export function turnTable(a: TurnedBlank, b: TurnedBlank, gap: number): ForbiddenSet[][] {
  const made = new Map<Turn, ForbiddenSet>();
  const ofDifference = (turn: Turn) => {
    const set = made.get(turn) ?? forbiddenSet(a.outline, turnRing(b.outline, turn), gap - SEARCH_MARGIN);
    made.set(turn, set);
    return set;
  };
  return a.turns.map((r) => b.turns.map((s) => turnSet(ofDifference(addTurns(s, -r)), r)));
}

function keepOutSets(granted: Granted, blank: Ring): ForbiddenSet[] {
  return granted.keepOuts.map(({ ring, clearance }) => forbiddenSet(onSheet(ring, granted), blank, 2 * clearance - SEARCH_MARGIN));
}

/** The ring counter-clockwise, in half micrometres about the middle of the usable area. */
export function onSheet(ring: Ring, { usable }: Granted): Ring {
  const doubled = counterClockwise(ring).map(({ x, y }) => ({ x: 2 * x, y: 2 * y }));
  return shiftRing(doubled, { x: -usable.minX - usable.maxX, y: -usable.minY - usable.maxY });
}

/** The half turn, the mirror images and, on a square sheet, the quarter turn, as far as blank and rotations allow them. */
function sheetMaps(outline: Ring, turns: readonly Turn[], square: boolean): SheetMap[] {
  const generators: SheetMap[] = [];
  const add = (swap: boolean, flipX: boolean, flipY: boolean, turned: (turn: Turn) => Turn | undefined) => {
    const images = turns.map((turn) => {
      const image = turned(turn);
      return image === undefined ? -1 : turns.findIndex((other) => sameRing(turnRing(outline, image), turnRing(outline, other)));
    });
    if (!images.includes(-1)) generators.push({ swap, flipX, flipY, turns: images });
  };
  add(false, true, true, (turn) => addTurns(turn, 2));
  if (square) add(true, true, false, (turn) => addTurns(turn, 1));
  const mirrored = outline.map(({ x, y }) => ({ x: -x, y })).toReversed();
  const mirrorTurn = ([0, 1, 2, 3] as const).find((turn) => sameRing(turnRing(outline, turn), mirrored));
  // The mirror image of the blank turned by t is the mirrored blank turned by −t.
  if (mirrorTurn !== undefined) add(false, true, false, (turn) => addTurns(mirrorTurn, -turn));
  return closure(generators);
}

/** All compositions of the maps but the identity. */
function closure(generators: readonly SheetMap[]): SheetMap[] {
  const found = new Map<string, SheetMap>();
  const open = [...generators];
  while (open.length > 0) {
    const map = open.pop()!;
    const key = JSON.stringify(map);
    if (found.has(key)) continue;
    found.set(key, map);
    for (const next of generators) open.push(after(map, next));
  }
  return [...found.values()].filter((map) => map.swap || map.flipX || map.flipY || map.turns.some((image, turn) => image !== turn));
}

/** First `first`, then `second`. */
function after(first: SheetMap, second: SheetMap): SheetMap {
  return {
    swap: first.swap !== second.swap,
    flipX: (second.swap ? first.flipY : first.flipX) !== second.flipX,
    flipY: (second.swap ? first.flipX : first.flipY) !== second.flipY,
    turns: first.turns.map((image) => second.turns[image]!),
  };
}
