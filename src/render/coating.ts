import { toMicrons } from '../base/units.ts';
import type { Role } from '../dieline/dieline.ts';
import { intersect, subtract, unite } from '../geometry/boolean.ts';
import type { CurvePath } from '../geometry/curve.ts';
import { flattenPath } from '../geometry/flatten.ts';
import { growPolygon, shrinkPolygon } from '../geometry/offset.ts';
import { counterClockwise, shiftRing, type Point, type Polygon, type Ring } from '../geometry/point.ts';
import { polygonsArea } from '../geometry/polygons-area.ts';
import { turnRing } from '../geometry/turn.ts';
import { distanceBetween, samePoint } from '../geometry/vector.ts';
import type { LayoutFile } from '../layout/layout-file.ts';
import { polygonPaths } from './polygon-paths.ts';
import { printAreas } from './print-areas.ts';
import type { DesignView, SheetView } from './sheet-view.ts';

/** Roles of areas that take no coating: glue would not hold, codes would not be read or written, windows not stick. */
const FREE_ROLES: ReadonlySet<Role> = new Set<Role>(['Gluing', 'VarnishFree', 'InkVarnishFree', 'Positions']);

/** Areas are drawn a little inside flap and knife; one that ends so near to a knife or crease is meant to reach it, µm. */
const REACHES_MICRONS = 2000;

const CHORD_MM = 0.01;
const ROUND_MICRONS = 20;
const MICRONS2_PER_MM2 = 1e6;

/** The coating form of a sheet. */
export interface CoatingForm {
  /** Closed outlines of what is coated; areas are the points that an odd number of them encloses. Sheet millimetres. */
  readonly coated: readonly CurvePath[];
  readonly coatedMm2: number;
  /** Station by station: what is left free within the blank. */
  readonly stations: readonly { readonly freeAreas: number; readonly freeMm2: number }[];
  /** Designs that name no free area, so that all of them is coated. */
  readonly withoutFree: readonly string[];
}

/**
 * What is coated on a whole sheet: every blank with its bleed, less its free areas. A free area that all but reaches a
 * crease or the knife goes on to it, and beyond the knife through the bleed, so that no coating creeps over the edge.
 * Undefined where no design names a free area.
 */
export function coatingForm(layout: LayoutFile, view: SheetView): CoatingForm | undefined {
  const designs = view.designs.map((design) => freeOf(design, toMicrons(layout.rules.bleed)));
  if (designs.every(({ areas }) => areas === 0)) return undefined;
  const coated = printAreas(layout).flatMap((area, station) => {
    const { design, turn, x, y } = view.placements[station]!;
    const place = (ring: Ring) => shiftRing(turnRing(ring, turn), { x: toMicrons(x), y: toMicrons(y) });
    return subtract(area, designs[design]!.free.map(({ outer, holes }) => ({ outer: place(outer), holes: holes.map(place) })));
  });
  return {
    coated: polygonPaths(coated),
    coatedMm2: polygonsArea(coated) / MICRONS2_PER_MM2,
    stations: view.placements.map(({ design }) => ({ freeAreas: designs[design]!.areas, freeMm2: designs[design]!.freeMm2 })),
    withoutFree: view.designs.filter((_, index) => designs[index]!.areas === 0 && view.placements.some(({ design }) => design === index)).map(({ id }) => id),
  };
}

/** Free areas of one design in its own axes, whole µm. */
function freeOf({ ring, rules }: DesignView, bleed: number): { areas: number; freeMm2: number; free: readonly Polygon[] } {
  const named = unite(rules.filter(({ role, curves }) => FREE_ROLES.has(role) && isClosed(curves)).map(({ curves }) => ({ outer: ringOf(curves), holes: [] })));
  const blank: Polygon = { outer: counterClockwise(ring.map(microns)), holes: [] };
  const creases = rules.filter(({ role }) => role === 'Creasing' || role === 'ReverseCreasing').flatMap(({ curves }) => strips(curves));
  const within = unite([...named, ...reached(named, blank, creases)]);
  const beyond = within.flatMap((polygon) => subtract([growPolygon(polygon, bleed, ROUND_MICRONS).polygon], [blank]));
  return { areas: named.length, freeMm2: polygonsArea(intersect(within, [blank])) / MICRONS2_PER_MM2, free: unite([...within, ...beyond]) };
}

/** What lies between a free area and the creases and knives near it. */
function reached(named: readonly Polygon[], blank: Polygon, creases: readonly Polygon[]): Polygon[] {
  const panels = subtract([blank], creases);
  const inner = panels.flatMap((panel) => shrinkPolygon(panel, REACHES_MICRONS, ROUND_MICRONS).polygons);
  const near = named.map((polygon) => growPolygon(polygon, REACHES_MICRONS, ROUND_MICRONS).polygon);
  const parts = intersect(near, unite([...subtract(panels, inner), ...named]));
  return subtract(parts, creases).filter((part) => intersect([part], named).length > 0);
}

/** Creases as bands a hair wide, so that they part what lies on either side. */
function strips(curves: CurvePath): Polygon[] {
  const points = flattenPath(curves, CHORD_MM).map(microns);
  return points.slice(1).flatMap((to, i): Polygon[] => {
    const from = points[i]!;
    const length = distanceBetween(from, to);
    if (length === 0) return [];
    const [ux, uy] = [((to.x - from.x) / length) * CREASE_END_MICRONS, ((to.y - from.y) / length) * CREASE_END_MICRONS];
    const [nx, ny] = [(-uy * HAIR_MICRONS) / CREASE_END_MICRONS, (ux * HAIR_MICRONS) / CREASE_END_MICRONS];
    const corner = (p: Point, along: number, side: number) => ({ x: Math.round(p.x + along * ux + side * nx), y: Math.round(p.y + along * uy + side * ny) });
    return [{ outer: counterClockwise([corner(from, -1, -1), corner(to, 1, -1), corner(to, 1, 1), corner(from, -1, 1)]), holes: [] }];
  });
}

/** Half the width of the band, and how far it goes on beyond the ends of a crease, which stop a little short of the knife. */
const HAIR_MICRONS = 10;
const CREASE_END_MICRONS = 600;

function isClosed(curves: CurvePath): boolean {
  return curves.length > 0 && samePoint(curves[0]!.from, curves.at(-1)!.to);
}

function ringOf(curves: CurvePath): Ring {
  return counterClockwise(flattenPath(curves, CHORD_MM).slice(0, -1).map(microns));
}

function microns({ x, y }: Point): Point {
  return { x: toMicrons(x), y: toMicrons(y) };
}
