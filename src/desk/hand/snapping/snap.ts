import { innerFit } from '../../../geometry/inner-fit.ts';
import type { Axis, FreeInterval } from '../../../geometry/no-fit-slices.ts';
import { boxOf, type Box, type Point } from '../../../geometry/point.ts';
import { blankArea, requiredGap } from '../../../layout/problem.ts';
import { intersect } from '../../../nesting/finish/free-places.ts';
import { groupShifts } from '../../../nesting/group-shifts.ts';
import type { Blank } from '../document.ts';
import { boxAround, boxOnSheet, movedBox, type SheetFrame } from '../sheet-frame.ts';
import { linesNear, snapLines, type SnapLine, type SnapLines } from './lines.ts';
import { near, standingOf, type Standing } from './near-blanks.ts';
import { sharedKnifeShift } from './shared-knife.ts';

/** A move as it begins: who moves, who stands, and what may be met. */
export interface Moving {
  readonly group: readonly Blank[];
  readonly standing: Standing;
  readonly lines: SnapLines;
}

export interface Snapped {
  /** Whole µm. */
  readonly shift: Point;
  /** Whether the place was chosen by what is met there, and is valid; else it is the wanted one, rounded. */
  readonly snapped: boolean;
  /** Whether the group touches, at the distance to be kept, a blank, a keep-out or the edge of the usable area. */
  readonly touching: { readonly x: boolean; readonly y: boolean };
  /** Lines met. */
  readonly lines: readonly SnapLine[];
}

export function beginMove(group: readonly Blank[], others: readonly Blank[], frame: SheetFrame): Moving {
  const standing = standingOf(others, frame);
  return { group, standing, lines: snapLines(group, standing, frame) };
}

/** Lines tried along each axis. */
const MOST_LINES = 4;
/** Pairs of a moved blank and a near one beyond which a hand cannot mean a single contact. */
const MOST_PAIRS = 600;
/** How much nearer, as a part of the reach, a place counts for each thing met there. */
const MERIT = 0.4;

/**
 * The place for a group that is wanted at `wanted` (a shift in µm, any number): at contact with others at the distance the
 * rules ask for, at the edge of the usable area, in line or in step with others, or at two of these at once; at most
 * `reach` away. Where knives may be shared, edge on edge comes first. Every such place is valid for the group against all that stand, exactly, and whole. A group pushed into
 * another slides along it: along each axis the nearest free place is taken from the exact slices of the no-fit polygons.
 */
export function snap(frame: SheetFrame, moving: Moving, wanted: Point, reach: number): Snapped {
  const shared = sharedKnifeShift(moving.group, moving.standing, frame, wanted, reach);
  return shared ? { shift: shared, snapped: true, touching: { x: true, y: true }, lines: [] } : snapApart(frame, moving, wanted, reach);
}

function snapApart(frame: SheetFrame, { group, standing, lines }: Moving, wanted: Point, reach: number): Snapped {
  const at = { x: Math.round(wanted.x) + 0, y: Math.round(wanted.y) + 0 };
  const raw: Snapped = { shift: at, snapped: false, touching: { x: false, y: false }, lines: [] };
  const room = innerFit(blankArea(frame.problem), boxAround(frame, group)!);
  const slice = room && slicer(frame, { group, standing, lines }, room, at, reach);
  if (!slice) return raw;
  const met = { x: firstOf(linesNear(lines.x, at.x, at.y, reach)), y: firstOf(linesNear(lines.y, at.y, at.x, reach)) };
  const candidates = [...alongAxis('x', at, room, met, slice), ...alongAxis('y', at, room, met, slice)];
  const within = (place: Candidate) => (place.shift.x - wanted.x) ** 2 + (place.shift.y - wanted.y) ** 2 <= reach * reach;
  candidates.push(...candidates.filter(within).flatMap((place) => corners(place, at, met, slice)));
  const best = candidates.filter((place) => place.merits > 0 && within(place)).reduce<Candidate | undefined>((a, b) => (a && cost(a, wanted, reach) <= cost(b, wanted, reach) ? a : b), undefined);
  if (!best) return raw;
  return { shift: best.shift, snapped: true, touching: touchingAt(best.shift, slice), lines: linesAt(met, best.shift) };
}

type Lines = { readonly x: readonly SnapLine[]; readonly y: readonly SnapLine[] };

function firstOf(lines: readonly SnapLine[]): SnapLine[] {
  const shifts = new Set([...new Set(lines.map(({ shift }) => shift))].slice(0, MOST_LINES));
  return lines.filter(({ shift }) => shifts.has(shift));
}

interface Candidate {
  readonly shift: Point;
  /** Number of things met, at most one for each axis. */
  readonly merits: number;
  /** Along which axis the group touches something. */
  readonly touches?: Axis;
}

function cost({ shift, merits }: Candidate, wanted: Point, reach: number): number {
  return Math.sqrt((shift.x - wanted.x) ** 2 + (shift.y - wanted.y) ** 2) / reach - MERIT * merits;
}

/** Free shifts along an axis near the wanted one, the shift across it given; ends of intervals that are a contact. */
type Slice = (axis: Axis, across: number) => readonly Free[];

interface Free extends FreeInterval {
  readonly fromTouches: boolean;
  readonly toTouches: boolean;
}

/** Undefined where the group fits on the sheet nowhere near, or too much stands around it. */
function slicer(frame: SheetFrame, { group, standing }: Moving, room: Box, at: Point, reach: number): Slice | undefined {
  const { problem } = frame;
  const far = Math.ceil(reach);
  const window = { minX: at.x - far, minY: at.y - far, maxX: at.x + far, maxY: at.y + far };
  if (!meets(room, window)) return undefined;
  const distance = requiredGap(problem.rules) + far;
  const boxes = group.map((blank) => movedBox(boxOnSheet(frame, blank), at));
  const around = near(standing, boxes, distance);
  const obstacles = [...around.map((i) => standing.boxes[i]), ...problem.keepOuts.map(({ ring, clearance }) => grown(boxOf(ring), clearance))];
  const involved = group.filter((_, i) => obstacles.some((box) => meets(grown(boxes[i], distance), box)));
  if (involved.length * obstacles.length > MOST_PAIRS) return undefined;
  const stands = around.map((i) => standing.blanks[i]);
  const remembered = new Map<string, readonly Free[]>();
  return (axis, across) => {
    const key = axis + across;
    let free = remembered.get(key);
    if (!free) {
      const [from, to] = axis === 'x' ? [window.minX, window.maxX] : [window.minY, window.maxY];
      const [low, high, least, most] = axis === 'x' ? [room.minX, room.maxX, room.minY, room.maxY] : [room.minY, room.maxY, room.minX, room.maxX];
      const inside = across >= least && across <= most ? groupShifts(problem, involved, stands, axis, across, { from, to }) : [];
      free = intersect(inside, [{ from: low, to: high }], 0).map((interval) => ({
        ...interval,
        fromTouches: interval.from > from || interval.from === low,
        toTouches: interval.to < to || interval.to === high,
      }));
      remembered.set(key, free);
    }
    return free;
  };
}

/** Places on slices along one axis: at the wanted shift across it (or at the sheet's edge), on each line across it and, at their ends, at contact. */
function alongAxis(axis: Axis, at: Point, room: Box, met: Lines, slice: Slice): Candidate[] {
  const across = axis === 'x' ? 'y' : 'x';
  const inRoom = across === 'x' ? Math.min(room.maxX, Math.max(room.minX, at.x)) : Math.min(room.maxY, Math.max(room.minY, at.y));
  const levels = [{ level: inRoom, merit: inRoom === at[across] ? 0 : 1 }, ...met[across].map(({ shift }) => ({ level: shift, merit: 1 }))];
  return levels.flatMap(({ level, merit }) => placesOn(axis, level, at[axis], met[axis], slice).map((place) => ({ ...place, merits: place.merits + merit })));
}

function placesOn(axis: Axis, level: number, wanted: number, lines: readonly SnapLine[], slice: Slice): Candidate[] {
  const place = (shift: number) => (axis === 'x' ? { x: shift, y: level } : { x: level, y: shift });
  return slice(axis, level).flatMap(({ from, to, fromTouches, toTouches }): Candidate[] => [
    ...(fromTouches ? [{ shift: place(from), merits: 1, touches: axis }] : []),
    ...(toTouches ? [{ shift: place(to), merits: 1, touches: axis }] : []),
    ...(wanted >= from && wanted <= to ? [{ shift: place(wanted), merits: 0 }] : []),
    ...lines.filter(({ shift }) => shift >= from && shift <= to).map(({ shift }) => ({ shift: place(shift), merits: 1 })),
  ]);
}

/** From a place at contact along one axis on to what is met along the other. */
function corners({ shift, touches, merits }: Candidate, at: Point, met: Lines, slice: Slice): Candidate[] {
  if (!touches || merits > 1) return [];
  const other = touches === 'x' ? 'y' : 'x';
  return placesOn(other, shift[touches], at[other], met[other], slice).filter((place) => place.merits > 0).map((place) => ({ ...place, merits: 2 }));
}

function touchingAt({ x, y }: Point, slice: Slice): Snapped['touching'] {
  const ends = (axis: Axis, across: number, at: number) => slice(axis, across).some(({ from, to, fromTouches, toTouches }) => (fromTouches && from === at) || (toTouches && to === at));
  return { x: ends('x', y, x), y: ends('y', x, y) };
}

function linesAt({ x, y }: Lines, shift: Point): SnapLine[] {
  const isMet = (axis: Axis, across: Axis) => (line: SnapLine) => line.shift === shift[axis] && (line.lane ?? shift[across]) === shift[across];
  return [...x.filter(isMet('x', 'y')), ...y.filter(isMet('y', 'x'))];
}

function grown({ minX, minY, maxX, maxY }: Box, by: number): Box {
  return { minX: minX - by, minY: minY - by, maxX: maxX + by, maxY: maxY + by };
}

function meets(a: Box, b: Box): boolean {
  return a.minX <= b.maxX && b.minX <= a.maxX && a.minY <= b.maxY && b.minY <= a.maxY;
}
