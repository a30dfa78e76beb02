import { ringArea, type Polygon, type Ring } from './point.ts';

/** Area of polygons that do not overlap, holes taken off: µm² of rings in whole µm. */
export function polygonsArea(polygons: readonly Polygon[]): number {
  const area = (rings: readonly Ring[]) => rings.reduce((sum, ring) => sum + ringArea(ring), 0);
  return polygons.reduce((sum, { outer, holes }) => sum + ringArea(outer) - area(holes), 0);
}
