import { toMicrons } from '../base/units.ts';
import { boxOf, ringArea, type Ring } from '../geometry/point.ts';
import type { LayoutFile, PlacedBlank } from '../layout/layout-file.ts';
import type { Coverage } from '../press/inks.ts';
import { placedRings } from './placed-rings.ts';

/** What one ink asks of the zones of a press: strips along the travel of the sheet, side by side across it. */
export interface InkZones {
  readonly zoneMm: number;
  /** Where the first zone begins, from the left edge of the sheet: the zones lie centred, so 0 or less. */
  readonly fromMm: number;
  /** Inked share of the sheet within each zone, from left to right, 0 … 1. */
  readonly shares: readonly number[];
  /** The same if no blank stood on its head. */
  readonly upright: readonly number[];
}

/** Coverage by zones of a layout, seen on the printed side. Bleed is not counted. Rotations must be quarter turns. */
export function inkZones(layout: LayoutFile, coverage: Coverage, zoneMm: number): InkZones {
  const { width } = layout.sheet;
  const count = Math.ceil(width / zoneMm);
  const fromMm = (width - count * zoneMm) / 2;
  const shares = (of: LayoutFile) => sharesOf(inked(of, coverage), Array.from({ length: count + 1 }, (_, zone) => Math.min(width, Math.max(0, fromMm + zone * zoneMm))), layout.sheet.height);
  return { zoneMm, fromMm, shares: shares(layout), upright: shares({ ...layout, placements: uprightPlacements(layout) }) };
}

/** m² of ink on one blank of a design: of the outline where the coverage is one figure, else of the cells of its box. */
export function inkedM2(outline: LayoutFile['designs'][number]['outline'], coverage: Coverage): number {
  const ring = outline.map(([x, y]) => ({ x, y }));
  if (typeof coverage === 'number') return (coverage * ringArea(ring)) / 1e6;
  const { minX, minY, maxX, maxY } = boxOf(ring);
  const cells = coverage.flat();
  return ((maxX - minX) * (maxY - minY) * cells.reduce((sum, share) => sum + share, 0)) / cells.length / 1e6;
}

interface Inked {
  readonly ring: Ring;
  readonly share: number;
}

/** The inked areas where they lie on the sheet. */
function inked(layout: LayoutFile, coverage: Coverage): Inked[] {
  if (typeof coverage === 'number') return placedRings(layout).map((ring) => ({ ring, share: coverage }));
  return coverage.flatMap((row, r) => row.flatMap((share, c) => (share === 0 ? [] : placedRings(layout, (outline) => cellOf(outline, coverage.length, row.length, r, c)).map((ring) => ({ ring, share })))));
}

/** One cell of an outline's box; rows are counted from the top. */
function cellOf(outline: Ring, rows: number, columns: number, row: number, column: number): Ring {
  const { minX, minY, maxX, maxY } = boxOf(outline);
  const x = (edge: number) => minX + ((maxX - minX) * edge) / columns;
  const y = (edge: number) => maxY - ((maxY - minY) * edge) / rows;
  return [{ x: x(column), y: y(row + 1) }, { x: x(column + 1), y: y(row + 1) }, { x: x(column + 1), y: y(row) }, { x: x(column), y: y(row) }];
}

function sharesOf(areas: readonly Inked[], edges: readonly number[], heightMm: number): number[] {
  const cuts = edges.map(toMicrons);
  const sums = new Array<number>(edges.length - 1).fill(0);
  for (const { ring, share } of areas) {
    const { minX, maxX } = boxOf(ring);
    for (let zone = 0; zone < sums.length; zone++) {
      const [from, to] = [cuts[zone]!, cuts[zone + 1]!];
      if (to > minX && from < maxX) sums[zone]! += share * (areaLeftOf(ring, to) - areaLeftOf(ring, from));
    }
  }
  return sums.map((sum, zone) => (cuts[zone + 1]! > cuts[zone]! ? sum / ((cuts[zone + 1]! - cuts[zone]!) * toMicrons(heightMm)) : 0));
}

/** Area of what of a ring lies left of a line: the ring with everything beyond drawn onto the line (Sutherland and Hodgman 1974). */
function areaLeftOf(ring: Ring, x: number): number {
  const kept = ring.flatMap((point, i) => {
    const before = ring.at(i - 1)!;
    const crosses = before.x < x !== point.x < x;
    const crossing = crosses ? [{ x, y: before.y + ((point.y - before.y) * (x - before.x)) / (point.x - before.x) }] : [];
    return point.x < x ? [...crossing, point] : crossing;
  });
  return kept.length < 3 ? 0 : Math.abs(ringArea(kept));
}

/** Every blank that stands on its head set upright in its own box. */
function uprightPlacements({ designs, placements }: LayoutFile): PlacedBlank[] {
  const sizes = new Map(designs.map(({ id, outline }) => [id, [Math.max(...outline.map(([x]) => x)), Math.max(...outline.map(([, y]) => y))] as const]));
  return placements.map((placed) => {
    const [width, height] = sizes.get(placed.design)!;
    if (placed.rotation === 180) return { ...placed, rotation: 0, x: placed.x - width, y: placed.y - height };
    return placed.rotation === 270 ? { ...placed, rotation: 90, x: placed.x + height, y: placed.y - width } : placed;
  });
}
