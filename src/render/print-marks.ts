import { toMicrons } from '../base/units.ts';
import { segmentDistance } from '../geometry/distance.ts';
import { boxOf, type Box, type Point } from '../geometry/point.ts';
import { locatePoint } from '../geometry/predicates.ts';
import { turnPoint } from '../geometry/turn.ts';
import type { Turn } from '../geometry/turn.ts';
import { registerMarks, type RegisterMark } from './register-marks.ts';
import type { SheetView } from './sheet-view.ts';
import { placedBoxes } from './step-runs.ts';
import { textWidth } from './text-width.ts';

/** A straight stroke. */
export interface Stroke {
  readonly from: Point;
  readonly to: Point;
}

/** Kinds of marks that a sheet is printed with besides its jobs. */
export type MarkKind = 'register' | 'side-lay' | 'centre-gripper' | 'centre-tail' | 'print-to-cut' | 'sheet-id';

/** Marks that are printed in the waste, millimetres of the sheet; none on a blank, in its bleed or in an area kept free. */
export interface PrintMarks {
  readonly register: readonly RegisterMark[];
  /** A bar at the edge that is pushed against the side lay: seen on the side of the pile. */
  readonly sideLay: Box | undefined;
  /** In line with the middle of the sheet, at gripper and tail: where a sheet is folded or cut in half. */
  readonly centre: readonly Stroke[];
  /** In line with outer knives: cut and print agree where a knife goes on as such a line. */
  readonly printToCut: readonly Stroke[];
  /** What the sheet is, in words. */
  readonly id: { readonly text: string; readonly at: Point; readonly size: number; readonly turn: Turn } | undefined;
  /** Patches of the colour bar. */
  readonly patches: readonly { readonly box: Box; readonly cmyk: readonly [number, number, number, number] }[];
  /** Kinds that have no room. */
  readonly missing: readonly MarkKind[];
}

/** Millimetres. */
const LAY = { thick: 2, long: 8 };
const CENTRE_LONG = 5;
const CENTRE_SHORTEST = 2;
const TICK_LONG = 4;
const TICK_SHORTEST = 2;
const TICK_FROM_BLEED = 0.3;
/** Farther beyond the bleed a stroke is hard to see as one with its knife. */
const TICK_FARTHEST = 12;
/** Strokes keep so far from anything else. */
const HALF_STROKE = 0.15;
const MOST_TICKS = 8;
const ID_SIZES = [3, 2.5, 2];
/** Clear of the first figures of the dimensions. */
const ID_FROM_SIDE = 10;
/** Distance of places that are tried. */
const STEP = 2;

export function printMarks(view: SheetView, text: string): PrintMarks {
  const { sheet, printable, lay, keepOuts, bleed } = view;
  const blanks = placedBoxes(view).map(({ minX, minY, maxX, maxY }): Box => ({ minX: minX - bleed, minY: minY - bleed, maxX: maxX + bleed, maxY: maxY + bleed }));
  const register = registerMarks(view);
  const marks = [...keepOuts.map(({ ring }) => boxOf(ring)), ...register.map(({ at: { x, y }, size }) => around(x - size / 2, y - size / 2, x + size / 2, y + size / 2))];
  const taken = [...blanks, ...marks];
  const ink = { minX: printable.x, minY: printable.y, maxX: printable.x + printable.width, maxY: printable.y + printable.height };
  const isFree = (box: Box) => within(box, ink) && taken.every((other) => apart(box, other));
  const take = <Mark>(mark: Mark | undefined, boxOfMark: (mark: Mark) => Box): Mark | undefined => {
    if (mark === undefined) return undefined;
    taken.push(boxOfMark(mark));
    marks.push(boxOfMark(mark));
    return mark;
  };

  const sideLay = take(sideLayMark(lay === 'left' ? ink.minX : ink.maxX - LAY.thick, sheet.height, isFree), (box) => box);
  const middle = sheet.width / 2;
  const centreAt = (y: number, inward: 1 | -1) => take(lengths(CENTRE_LONG, CENTRE_SHORTEST).map((long): Stroke => ({ from: { x: middle, y }, to: { x: middle, y: y + inward * long } })).find((stroke) => isFree(strokeBox(stroke))), strokeBox);
  const [gripper, tail] = [centreAt(ink.minY, 1), centreAt(ink.maxY, -1)];
  const isClear = clearOfBlanks(view);
  const printToCut = cutTicks(view, (stroke) => within(strokeBox(stroke), ink) && marks.every((other) => apart(strokeBox(stroke), other)) && isClear(stroke));
  for (const tick of printToCut) taken.push(strokeBox(tick));
  const id = idMark(text, ink, isFree);
  const isThere = { register: register.length === 2, 'side-lay': sideLay, 'centre-gripper': gripper, 'centre-tail': tail, 'print-to-cut': printToCut.length > 0, 'sheet-id': id };
  return {
    register, sideLay, printToCut, id,
    centre: [gripper, tail].filter((stroke) => stroke !== undefined),
    patches: keepOuts.filter(({ kind }) => kind === 'colour-bar').flatMap(({ ring }) => patches(boxOf(ring), ink)),
    missing: (Object.keys(isThere) as MarkKind[]).filter((kind) => !isThere[kind]),
  };
}

/** Low on the side of the lay, where the sheet is pushed; as near as there is room. */
function sideLayMark(x: number, height: number, isFree: (box: Box) => boolean): Box | undefined {
  const wanted = height * 0.22;
  for (let away = 0; away < height / 2; away += STEP) {
    for (const y of [wanted + away, wanted - away]) {
      const box = around(x, y - LAY.long / 2, x + LAY.thick, y + LAY.long / 2);
      if (isFree(box)) return box;
    }
  }
  return undefined;
}

/** Long strokes first. */
function lengths(longest: number, shortest: number): number[] {
  return Array.from({ length: Math.floor((longest - shortest) / 0.5) + 1 }, (_, i) => longest - i * 0.5);
}

/** Strokes that continue straight knives along the sheet's axes beyond the bleed, those nearest to the corners of the sheet first, two a corner at most. */
function cutTicks({ sheet, designs, placements, bleed }: SheetView, isFree: (stroke: Stroke) => boolean): Stroke[] {
  const ticks = placements.flatMap(({ design, turn, x, y }) => {
    const ring = designs[design]!.ring.map((point) => {
      const turned = turnPoint(point, turn);
      return { x: turned.x + x, y: turned.y + y };
    });
    return ring.flatMap((from, i) => {
      const to = ring[(i + 1) % ring.length]!;
      const isStraight = Math.abs(from.x - to.x) < 1e-6 || Math.abs(from.y - to.y) < 1e-6;
      return isStraight && Math.hypot(to.x - from.x, to.y - from.y) >= SHORTEST_KNIFE ? [beyond(from, to, bleed, isFree), beyond(to, from, bleed, isFree)].filter((tick) => tick !== undefined) : [];
    });
  });
  const corners = [{ x: 0, y: 0 }, { x: sheet.width, y: 0 }, { x: 0, y: sheet.height }, { x: sheet.width, y: sheet.height }];
  const chosen = corners.flatMap((corner) => {
    const away = ({ to }: Stroke) => Math.hypot(to.x - corner.x, to.y - corner.y);
    const sorted = ticks.toSorted((a, b) => away(a) - away(b));
    return [sorted.find(isUpright), sorted.find((tick) => !isUpright(tick))].filter((tick) => tick !== undefined);
  });
  return [...new Set(chosen)].slice(0, MOST_TICKS);
}

/** Shorter pieces of a knife show no direction, mm. */
const SHORTEST_KNIFE = 8;

function isUpright({ from, to }: Stroke): boolean {
  return Math.abs(from.x - to.x) < 1e-6;
}

function beyond(from: Point, to: Point, bleed: number, isFree: (stroke: Stroke) => boolean): Stroke | undefined {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const [ux, uy] = [(to.x - from.x) / length, (to.y - from.y) / length];
  const at = (away: number): Point => ({ x: to.x + ux * away, y: to.y + uy * away });
  for (let start = bleed + TICK_FROM_BLEED; start <= bleed + TICK_FARTHEST; start++) {
    const found = lengths(TICK_LONG, TICK_SHORTEST).map((long): Stroke => ({ from: at(start), to: at(start + long) })).find(isFree);
    if (found) return found;
  }
  return undefined;
}

/** Whether a stroke is nowhere on a blank or nearer to one than its bleed: by the outlines themselves, so that waste between flaps counts. */
function clearOfBlanks({ designs, placements, bleed }: SheetView): (stroke: Stroke) => boolean {
  const micron = ({ x, y }: Point): Point => ({ x: toMicrons(x), y: toMicrons(y) });
  const rings = placements.map(({ design, turn, x, y }) => designs[design]!.ring.map((point) => {
    const turned = turnPoint(point, turn);
    return micron({ x: turned.x + x, y: turned.y + y });
  }));
  const boxes = rings.map(boxOf);
  const least = toMicrons(bleed + HALF_STROKE);
  return (stroke) => {
    const [from, to] = [micron(stroke.from), micron(stroke.to)];
    const { minX, minY, maxX, maxY } = boxOf([from, to]);
    const reached = around(minX - least, minY - least, maxX + least, maxY + least);
    return rings.every((ring, i) => apart(boxes[i]!, reached) || (locatePoint(from, ring) === 'outside' && ring.every((a, k) => segmentDistance(from, to, a, ring[(k + 1) % ring.length]!).distance >= least)));
  };
}

/** Along the tail, else along the gripper edge, else upright at a side, else anywhere; the largest letters that have room. */
function idMark(text: string, ink: Box, isFree: (box: Box) => boolean): PrintMarks['id'] {
  for (const size of ID_SIZES) {
    const long = textWidth(text, size);
    const lying = (x: number, y: number) => ({ text, size, turn: 0 as Turn, at: { x, y: y + size * 0.22 }, box: around(x, y, x + long, y + size) });
    const upright = (x: number, y: number) => ({ text, size, turn: 1 as Turn, at: { x: x + size * 0.78, y }, box: around(x, y, x + size, y + long) });
    const xs = range(ink.minX + ID_FROM_SIDE, ink.maxX - long);
    const rows = [ink.maxY - size, ink.minY, ...range(ink.minY, ink.maxY - size).toReversed()];
    const places = [
      ...rows.slice(0, 2).flatMap((y) => xs.map((x) => lying(x, y))),
      ...[ink.minX, ink.maxX - size].flatMap((x) => range(ink.minY, ink.maxY - long).map((y) => upright(x, y))),
      ...rows.slice(2).flatMap((y) => xs.map((x) => lying(x, y))),
    ];
    const found = places.find(({ box }) => isFree(box));
    if (found) return { text, at: found.at, size, turn: found.turn };
  }
  return undefined;
}

function range(from: number, to: number): number[] {
  return Array.from({ length: Math.max(0, Math.floor((to - from) / STEP) + 1) }, (_, i) => from + i * STEP);
}

/** Solids and halves of the four process colours and their overprints, one after the other over the width of the ink. */
const PATCHES = [
  [1, 0, 0, 0], [0, 1, 0, 0], [0, 0, 1, 0], [0, 0, 0, 1], [0.5, 0, 0, 0], [0, 0.5, 0, 0], [0, 0, 0.5, 0], [0, 0, 0, 0.5], [0, 1, 1, 0], [1, 0, 1, 0], [1, 1, 0, 0],
] as const;

function patches({ minX, minY, maxX, maxY }: Box, ink: Box): PrintMarks['patches'] {
  const side = maxY - minY;
  const [from, to] = [Math.max(minX, ink.minX), Math.min(maxX, ink.maxX)];
  const count = Math.floor((to - from) / side);
  return Array.from({ length: Math.max(0, count) }, (_, i) => ({ box: around(from + i * side, minY, from + (i + 1) * side, maxY), cmyk: PATCHES[i % PATCHES.length]! }));
}

function around(minX: number, minY: number, maxX: number, maxY: number): Box {
  return { minX, minY, maxX, maxY };
}

function strokeBox({ from, to }: Stroke): Box {
  const { minX, minY, maxX, maxY } = boxOf([from, to]);
  const across = minX === maxX ? { x: HALF_STROKE, y: 0 } : { x: 0, y: HALF_STROKE };
  return around(minX - across.x, minY - across.y, maxX + across.x, maxY + across.y);
}

function within(box: Box, outer: Box): boolean {
  const slack = 1e-6;
  return box.minX >= outer.minX - slack && box.maxX <= outer.maxX + slack && box.minY >= outer.minY - slack && box.maxY <= outer.maxY + slack;
}

function apart(a: Box, b: Box): boolean {
  return a.maxX <= b.minX || b.maxX <= a.minX || a.maxY <= b.minY || b.maxY <= a.minY;
}
