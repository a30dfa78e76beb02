import { toMicrons } from '../base/units.ts';
import { placedRings } from '../estimate/placed-rings.ts';
import { subtract, unite } from '../geometry/boolean.ts';
import { indexBoxes } from '../geometry/box-index.ts';
import { growPolygon } from '../geometry/offset.ts';
import { boxOf, shiftRing, type Polygon, type Ring } from '../geometry/point.ts';
import { turnOfDegrees, turnRing } from '../geometry/turn.ts';
import type { LayoutFile } from '../layout/layout-file.ts';
import { micronRing } from '../layout/rings.ts';

/** Bands in which the middle between two blanks is followed, µm: print ends at most so far short of it. */
const BAND_MICRONS = 250;

/** How far round corners of a bleed may stand out, µm. */
const CORNER_MICRONS = 20;

/**
 * Where the print of each station may be, in station order, whole µm of the sheet: the blank and all within the bleed of it
 * that is nearer to it than to any other blank. Areas of two stations never overlap. Designs must be known and rotations
 * quarter turns, as the judge has seen to.
 */
export function printAreas(layout: LayoutFile): Polygon[][] {
  const bleed = toMicrons(layout.rules.bleed);
  const rings = placedRings(layout);
  const grown = growers(layout);
  const boxes = rings.map(boxOf);
  const index = indexBoxes(boxes);
  return rings.map((ring, station) => {
    const { minX, minY, maxX, maxY } = boxes[station]!;
    const near = index.search({ minX: minX - 2 * bleed, minY: minY - 2 * bleed, maxX: maxX + 2 * bleed, maxY: maxY + 2 * bleed }).filter((other) => other !== station);
    const own: Polygon = { outer: ring, holes: [] };
    if (bleed === 0) return [own];
    if (near.length === 0) return [grown(station, bleed)];
    // What is within a band's outer edge of this blank and farther than that from all others is nearer to this one.
    const bands = Array.from({ length: Math.ceil(bleed / BAND_MICRONS) }, (_, i) => Math.min(bleed, (i + 1) * BAND_MICRONS));
    return unite([own, ...bands.flatMap((by) => subtract([grown(station, by)], near.map((other) => grown(other, by))))]);
  });
}

/** Grown outlines where they stand; each design is grown once for each distance. */
function growers({ designs, placements }: LayoutFile): (station: number, by: number) => Polygon {
  const outlines = new Map(designs.map(({ id, outline }) => [id, micronRing(outline)]));
  const known = new Map<string, Polygon>();
  const ofDesign = (id: string, by: number): Polygon => {
    const polygon = known.get(`${by} ${id}`) ?? growPolygon({ outer: outlines.get(id)!, holes: [] }, by, CORNER_MICRONS).polygon;
    known.set(`${by} ${id}`, polygon);
    return polygon;
  };
  return (station, by) => {
    const { design, rotation, x, y } = placements[station]!;
    const place = (ring: Ring) => shiftRing(turnRing(ring, turnOfDegrees(rotation)!), { x: toMicrons(x), y: toMicrons(y) });
    const { outer, holes } = ofDesign(design, by);
    return { outer: place(outer), holes: holes.map(place) };
  };
}
