import { toMicrons } from '../base/units.ts';
import { intersect, subtract, unite } from '../geometry/boolean.ts';
import { convexHull } from '../geometry/convex-hull.ts';
import { growPolygon } from '../geometry/offset.ts';
import type { Point, Polygon, Ring } from '../geometry/point.ts';
import { polygonsArea } from '../geometry/polygons-area.ts';
import type { LayoutFile } from '../layout/layout-file.ts';
import { requiredGap } from '../layout/problem.ts';
import { micronBox, micronRing } from '../layout/rings.ts';
import { placedRings } from './placed-rings.ts';

/** What becomes of the board of one sheet. Every square millimetre has one cause. */
export const WASTE_CAUSES = ['blanks', 'gripper', 'tail', 'side-margins', 'colour-bar', 'keep-outs', 'gaps', 'between', 'edges'] as const;

export type WasteCause = (typeof WASTE_CAUSES)[number];

/** Areas in mm², adding up to the sheet's. `blanks` is the board that is used, openings included. */
export type Waste = Readonly<Record<WasteCause, number>>;

/** How far the rounded corners of half a gap may stand out, µm: less than the width of a pencil line. */
const CORNER_TOLERANCE = 50;

/** µm² in a mm². */
const MICRONS2_PER_MM2 = 1e6;

/**
 * Splits the sheet by cause. First come the blanks, then the colour bar, then other areas kept free; what is left of the
 * margins belongs to the gripper (full width), the tail (full width) and the sides. Of what is left between the margins,
 * everything within half the required gap of a blank is gap; the rest is offcut, between the blanks where it lies within
 * the convex hull of all blanks, otherwise at the edges. Rotations must be quarter turns.
 */
export function wasteOf(layout: LayoutFile): Waste {
  return wasteOfAreas(wasteAreas(layout));
}

export type WasteAreas = Readonly<Record<WasteCause, readonly Polygon[]>>;

/** The same from polygons that are there already. */
export function wasteOfAreas(areas: WasteAreas): Waste {
  return Object.fromEntries(WASTE_CAUSES.map((cause) => [cause, areaOf(areas[cause])])) as Waste;
}

/** The same as polygons on the sheet, µm; they do not overlap. */
export function wasteAreas(layout: LayoutFile): WasteAreas {
  const sheet = box(0, 0, toMicrons(layout.sheet.width), toMicrons(layout.sheet.height));
  const { minX, minY, maxX, maxY } = micronBox(layout.usable);
  const [width, height] = [toMicrons(layout.sheet.width), toMicrons(layout.sheet.height)];
  const gap = toMicrons(requiredGap(layout.rules));

  const blanks = intersect(unite(placed(layout, 0)), sheet);
  const bars = subtract(intersect(keepOuts(layout, (kind) => kind === 'colour-bar'), sheet), blanks);
  const others = subtract(intersect(keepOuts(layout, (kind) => kind !== 'colour-bar'), sheet), [...blanks, ...bars]);
  const taken = unite([...blanks, ...bars, ...others]);
  const free = (part: readonly Polygon[]) => subtract(part, taken);

  const inside = free(box(minX, minY, maxX, maxY));
  const nearBlanks = unite(placed(layout, Math.ceil(gap / 2)));
  const offcuts = subtract(inside, nearBlanks);
  const hull = asPolygons(convexHull(blanks.flatMap(({ outer }) => outer)));
  return {
    blanks,
    gripper: free(box(0, 0, width, minY)),
    tail: free(box(0, maxY, width, height)),
    'side-margins': free([...box(0, minY, minX, maxY), ...box(maxX, minY, width, maxY)]),
    'colour-bar': bars,
    'keep-outs': others,
    gaps: intersect(inside, nearBlanks),
    between: intersect(offcuts, hull),
    edges: subtract(offcuts, hull),
  };
}

/** All blanks where they stand, grown by so many micrometres. */
function placed(layout: LayoutFile, by: number): Polygon[] {
  const grown = (outer: Ring) => growPolygon({ outer, holes: [] }, by, CORNER_TOLERANCE).polygon.outer;
  return placedRings(layout, grown).map((outer) => ({ outer, holes: [] }));
}

function keepOuts({ keepOut }: LayoutFile, wanted: (kind: string) => boolean): Polygon[] {
  return unite(keepOut.filter(({ kind }) => wanted(kind)).map(({ ring }) => ({ outer: micronRing(ring), holes: [] })));
}

/** No polygon where the box has no area. */
function box(minX: number, minY: number, maxX: number, maxY: number): Polygon[] {
  return minX < maxX && minY < maxY ? asPolygons([{ x: minX, y: minY }, { x: maxX, y: minY }, { x: maxX, y: maxY }, { x: minX, y: maxY }]) : [];
}

function asPolygons(ring: readonly Point[]): Polygon[] {
  return ring.length >= 3 ? [{ outer: ring, holes: [] }] : [];
}

function areaOf(polygons: readonly Polygon[]): number {
  return polygonsArea(polygons) / MICRONS2_PER_MM2;
}
