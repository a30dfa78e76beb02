import { toMicrons, toMillimetres } from '../base/units.ts';
import { intersect, subtract, unite } from '../geometry/boolean.ts';
import { indexBoxes } from '../geometry/box-index.ts';
import { growPolygon, shrinkPolygon } from '../geometry/offset.ts';
import { boxOf, reverseRing, shiftRing, type Box, type Point, type Polygon, type Ring } from '../geometry/point.ts';
import { polygonsArea } from '../geometry/polygons-area.ts';
import { turnOfDegrees, turnRing } from '../geometry/turn.ts';
import type { LayoutFile } from '../layout/layout-file.ts';
import { micronRing } from '../layout/rings.ts';
import { LEAST_GRID_MM } from '../press/stripping.ts';
import { placedRings } from './placed-rings.ts';

/**
 * What is stripped off a sheet after cutting: the web round the blanks, loose islands, strips too narrow to hold, straight
 * ways for a blanking grid. Lengths in mm, rings in whole µm of the sheet.
 */
export interface Stripping {
  /** Distance of the nearest knife from each edge of the sheet: what is left to hold the sheet by. */
  readonly frame: Readonly<Record<'gripper' | 'tail' | 'left' | 'right', number>>;
  /** Pieces of waste, those that hang together at the sheet's edges first, then islands, larger before smaller. */
  readonly pieces: readonly WastePiece[];
  /** Parts of the waste narrower than the limit, the largest first. */
  readonly slivers: readonly Sliver[];
  readonly leastWidth: number;
  /** Straight ways from edge to edge that cross no blank, between blanks only. */
  readonly corridors: { readonly x: readonly Corridor[]; readonly y: readonly Corridor[] };
  /** The most blanks that a cell between corridors holds: a blanking grid wants one. */
  readonly blanksInCell: number;
  /** The same between those ways alone that are wide enough for a grid. */
  readonly blanksInGridCell: number;
  /** Straight scrap longer than a stripper likes, with the chopping rules that part it. */
  readonly longScrap: readonly LongScrap[];
}

export interface WastePiece {
  /** Touches the sheet's edge, so that it is pulled off with the frame; an island falls or must be pushed out. */
  readonly island: boolean;
  /** An opening of a blank: there in every layout. */
  readonly opening: boolean;
  /** Has room for a pin as wide as the limit. */
  readonly pinFits: boolean;
  readonly areaMm2: number;
  /** Narrower than this somewhere; undefined where it is at least the limit everywhere. */
  readonly narrowerThan: number | undefined;
  readonly box: Box;
  readonly polygon: Polygon;
}

export interface Sliver {
  /** Somewhere within it. */
  readonly place: Point;
  readonly areaMm2: number;
  /** Every strip of this width or more fits nowhere in it: whole millimetres, at most the limit. */
  readonly narrowerThan: number;
  /** A slot of one blank, as narrow in every layout. */
  readonly inBlank: boolean;
  readonly polygon: Polygon;
}

export interface Corridor {
  readonly from: number;
  readonly width: number;
}

export interface LongScrap {
  readonly where: 'gripper' | 'tail' | 'left' | 'right' | 'corridor x' | 'corridor y';
  readonly from: number;
  readonly width: number;
  readonly length: number;
  readonly choppingRules: number;
}

/** Straight scrap is parted into lengths of at most this, mm: common practice, no source. */
export const LONGEST_SCRAP_MM = 450;

const ROUND_MICRONS = 20;
const MICRONS2_PER_MM2 = 1e6;

/** `leastWidth`: strips of waste narrower than this tear or hang on, whole mm. Designs must be known, rotations quarter turns. */
export function strippingOf(layout: LayoutFile, leastWidth: number): Stripping {
  const sheet = { width: toMicrons(layout.sheet.width), height: toMicrons(layout.sheet.height) };
  const rings = placedRings(layout);
  const isSlot = ownSlots(layout, leastWidth);
  const pieces = wastePieces(layout, sheet, rings).map(({ polygon, opening }) => ({ polygon, opening, own: sliversOf(polygon, leastWidth, sheet, isSlot) }));
  const boxes = rings.map(boxOf);
  const corridors = { x: corridorsOf(boxes, 'x'), y: corridorsOf(boxes, 'y') };
  const frame = frameOf(boxes, sheet);
  return {
    frame,
    pieces: pieces.map(({ polygon, opening, own }) => ({ ...pieceOf(polygon, own, sheet), opening, pinFits: pinFits(polygon, leastWidth) })).toSorted((a, b) => Number(a.island) - Number(b.island) || b.areaMm2 - a.areaMm2),
    slivers: pieces.flatMap(({ own }) => own).toSorted((a, b) => b.areaMm2 - a.areaMm2),
    leastWidth,
    corridors,
    blanksInCell: fullestCell(boxes, corridors),
    blanksInGridCell: blanksInGridCell(boxes, LEAST_GRID_MM),
    longScrap: longScrap(frame, corridors, layout.sheet),
  };
}

function rectangle(minX: number, minY: number, maxX: number, maxY: number): Ring {
  return [{ x: minX, y: minY }, { x: maxX, y: minY }, { x: maxX, y: maxY }, { x: minX, y: maxY }];
}

/** Openings of the blanks are waste as well. */
function wastePieces(layout: LayoutFile, { width, height }: Extent, rings: readonly Ring[]): { polygon: Polygon; opening: boolean }[] {
  const round = subtract([{ outer: rectangle(0, 0, width, height), holes: [] }], unite(rings.map((outer) => ({ outer, holes: [] }))));
  const openings = layout.placements.flatMap(({ design, rotation, x, y }) => {
    const own = layout.designs.find(({ id }) => id === design)!.openings.map(micronRing);
    return own.map((ring): Polygon => ({ outer: reverseRing(shiftRing(turnRing(ring, turnOfDegrees(rotation)!), { x: toMicrons(x), y: toMicrons(y) })), holes: [] }));
  });
  const pieces = [...round.map((polygon) => ({ polygon, opening: false })), ...openings.map((polygon) => ({ polygon, opening: true }))];
  return pieces.filter(({ polygon }) => areaOf(polygon) > LEAST_PIECE_MM2);
}

/** Smaller bits come from the rounding of outlines that touch. */
const LEAST_PIECE_MM2 = 0.05;

function areaOf(...polygons: readonly Polygon[]): number {
  return polygonsArea(polygons) / MICRONS2_PER_MM2;
}

type Extent = { readonly width: number; readonly height: number };

/**
 * What a disc as wide as the limit cannot reach within the piece (Serra, "Image Analysis and Mathematical Morphology",
 * 1982: the residue of an opening). At the sheet's edge nothing is narrow: the waste goes on in the hand that holds it.
 */
function residues(piece: Polygon, leastWidth: number, sheet: Extent): (width: number) => Polygon[] {
  const beyond = reachesEdge(boxOf(piece.outer), sheet) ? extended(piece, sheet, toMicrons(leastWidth)) : [piece];
  // A strip as wide as the limit is wide enough, however its edges were rounded.
  return (width) => subtract([piece], opened(beyond, toMicrons(width) / 2 - ROUND_MICRONS));
}

/** Tips of corners that no disc can fill are left out. */
function beyondTips(polygons: readonly Polygon[], width: number): Polygon[] {
  return polygons.filter((polygon) => areaOf(polygon) >= width * width * TIP_SHARE);
}

function sliversOf(piece: Polygon, leastWidth: number, sheet: Extent, isSlot: (sliver: Polygon) => boolean): Sliver[] {
  const residue = residues(piece, leastWidth, sheet);
  const found = beyondTips(residue(leastWidth), leastWidth);
  if (found.length === 0) return [];
  const narrower = Array.from({ length: leastWidth - 1 }, (_, i) => ({ width: i + 1, parts: indexed(residue(i + 1)) }));
  return found.map((polygon) => {
    const first = narrower.find(({ width, parts }) => areaOf(...intersect(parts(boxOf(polygon.outer)), [polygon])) >= width * width * TIP_SHARE);
    return { place: placeIn(polygon), areaMm2: areaOf(polygon), narrowerThan: first?.width ?? leastWidth, inBlank: isSlot(polygon), polygon };
  });
}

/** Says of a sliver whether it is all slot of one blank: narrow too where the blank lies alone on the sheet. */
function ownSlots(layout: LayoutFile, leastWidth: number): (sliver: Polygon) => boolean {
  const room = 3 * toMicrons(leastWidth);
  const slots = new Map(layout.designs.map(({ id, outline }) => {
    const ring = micronRing(outline);
    const { minX, minY, maxX, maxY } = boxOf(ring);
    const alone = { width: maxX - minX + 2 * room, height: maxY - minY + 2 * room };
    const to = { x: room - minX, y: room - minY };
    const around = { outer: rectangle(0, 0, alone.width, alone.height), holes: [reverseRing(shiftRing(ring, to))] };
    return [id, beyondTips(residues(around, leastWidth, alone)(leastWidth), leastWidth).map(({ outer }) => shiftRing(outer, { x: -to.x, y: -to.y }))];
  }));
  const near = indexed(layout.placements.flatMap(({ design, rotation, x, y }) => slots.get(design)!.map((ring): Polygon => (
    growPolygon({ outer: shiftRing(turnRing(ring, turnOfDegrees(rotation)!), { x: toMicrons(x), y: toMicrons(y) }), holes: [] }, ROUND_MICRONS, ROUND_MICRONS).polygon
  ))));
  return (sliver) => beyondTips(subtract([sliver], near(boxOf(sliver.outer))), leastWidth).length === 0;
}

function pinFits(piece: Polygon, leastWidth: number): boolean {
  return shrinkPolygon(piece, toMicrons(leastWidth) / 2 - ROUND_MICRONS, ROUND_MICRONS).polygons.length > 0;
}

/** The polygons whose boxes meet a box. */
function indexed(polygons: readonly Polygon[]): (box: Box) => Polygon[] {
  const index = indexBoxes(polygons.map(({ outer }) => boxOf(outer)));
  return (box) => index.search(box).map((i) => polygons[i]!);
}

/** Of the square of the limit: a corner of 45 degrees leaves half as much, a strip as long as it is wide twice. */
const TIP_SHARE = 0.6;

function opened(polygons: readonly Polygon[], by: number): Polygon[] {
  return polygons.flatMap((polygon) => shrinkPolygon(polygon, by, ROUND_MICRONS).polygons).map((core) => growPolygon(core, by, ROUND_MICRONS).polygon);
}

function extended(piece: Polygon, { width, height }: Extent, by: number): Polygon[] {
  const frame: Polygon = { outer: rectangle(-by, -by, width + by, height + by), holes: [reverseRing(rectangle(0, 0, width, height))] };
  return unite([piece, frame]);
}

function reachesEdge(box: Box, { width, height }: Extent): boolean {
  return box.minX <= 0 || box.minY <= 0 || box.maxX >= width || box.maxY >= height;
}

function pieceOf(polygon: Polygon, own: readonly Sliver[], sheet: Extent): Omit<WastePiece, 'opening' | 'pinFits'> {
  const box = boxOf(polygon.outer);
  return { island: !reachesEdge(box, sheet), areaMm2: areaOf(polygon), narrowerThan: own.length > 0 ? Math.min(...own.map(({ narrowerThan }) => narrowerThan)) : undefined, box, polygon };
}

/** The middle of the longest stretch that a level line through the middle of the box has in common with the polygon. */
function placeIn({ outer, holes }: Polygon): Point {
  const { minY, maxY } = boxOf(outer);
  const y = (minY + maxY) / 2 + 0.25;
  const crossings = [outer, ...holes].flatMap((ring) => ring.flatMap((a, i) => {
    const b = ring[(i + 1) % ring.length]!;
    return a.y > y === b.y > y ? [] : [a.x + ((y - a.y) / (b.y - a.y)) * (b.x - a.x)];
  })).toSorted((a, b) => a - b);
  let best = { x: outer[0]!.x, wide: -1 };
  for (let i = 0; i + 1 < crossings.length; i += 2) {
    const wide = crossings[i + 1]! - crossings[i]!;
    if (wide > best.wide) best = { x: (crossings[i]! + crossings[i + 1]!) / 2, wide };
  }
  return { x: Math.round(best.x), y: Math.round(y) };
}

function frameOf(boxes: readonly Box[], { width, height }: Extent): Stripping['frame'] {
  const least = (distances: readonly number[]) => toMillimetres(Math.min(...distances));
  return {
    gripper: least(boxes.map(({ minY }) => minY)),
    tail: least(boxes.map(({ maxY }) => height - maxY)),
    left: least(boxes.map(({ minX }) => minX)),
    right: least(boxes.map(({ maxX }) => width - maxX)),
  };
}

/** Stretches of the axis that no blank's box covers, between the first and the last blank. */
function corridorsOf(boxes: readonly Box[], axis: 'x' | 'y'): Corridor[] {
  const [low, high] = axis === 'x' ? (['minX', 'maxX'] as const) : (['minY', 'maxY'] as const);
  const found: Corridor[] = [];
  let end = -Infinity;
  for (const box of boxes.toSorted((a, b) => a[low] - b[low])) {
    if (end !== -Infinity && box[low] >= end) found.push({ from: toMillimetres(end), width: toMillimetres(box[low] - end) });
    end = Math.max(end, box[high]);
  }
  return found;
}

function fullestCell(boxes: readonly Box[], { x, y }: Stripping['corridors']): number {
  const counts = new Map<string, number>();
  for (const { minX, minY } of boxes) {
    const column = x.filter(({ from }) => from <= toMillimetres(minX)).length;
    const row = y.filter(({ from }) => from <= toMillimetres(minY)).length;
    counts.set(`${column} ${row}`, (counts.get(`${column} ${row}`) ?? 0) + 1);
  }
  return Math.max(0, ...counts.values());
}

/** The most blanks in one cell between straight ways of at least `leastWay` mm. Boxes in µm. */
export function blanksInGridCell(boxes: readonly Box[], leastWay: number): number {
  const wide = (axis: 'x' | 'y') => corridorsOf(boxes, axis).filter(({ width }) => width >= leastWay);
  return fullestCell(boxes, { x: wide('x'), y: wide('y') });
}

function longScrap(frame: Stripping['frame'], corridors: Stripping['corridors'], { width, height }: Extent): LongScrap[] {
  const all = [
    { where: 'gripper', from: 0, width: frame.gripper, length: width },
    { where: 'tail', from: height - frame.tail, width: frame.tail, length: width },
    { where: 'left', from: 0, width: frame.left, length: height },
    { where: 'right', from: width - frame.right, width: frame.right, length: height },
    ...corridors.x.map(({ from, width: wide }) => ({ where: 'corridor x', from, width: wide, length: height - frame.gripper - frame.tail }) as const),
    ...corridors.y.map(({ from, width: wide }) => ({ where: 'corridor y', from, width: wide, length: width - frame.left - frame.right }) as const),
  ] as const;
  return all.filter((scrap) => scrap.width > 0 && scrap.length > LONGEST_SCRAP_MM).map((scrap) => ({ ...scrap, choppingRules: Math.ceil(scrap.length / LONGEST_SCRAP_MM) - 1 }));
}
