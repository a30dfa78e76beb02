import { toMillimetres } from '../../../base/units.ts';
import { WASTE_CAUSES, type WasteAreas } from '../../../estimate/waste.ts';
import type { Polygon, Ring } from '../../../geometry/point.ts';
import type { Scene } from '../../../render/scene.ts';
import { polyline } from '../../../render/shapes.ts';

/** The sheet with one layer a cause; the page gives each cause its own hatch. */
export function wasteScene(areas: WasteAreas, { sheet, title, description }: Scene): Scene {
  return {
    title,
    description,
    box: { minX: 0, minY: 0, maxX: sheet.width, maxY: sheet.height },
    sheet,
    symbols: [],
    layers: WASTE_CAUSES.filter((cause) => areas[cause].length > 0).map((cause) => ({
      name: cause,
      items: [{ kind: 'path', paths: areas[cause].flatMap(ringsOf).map(outlineOf), look: { fill: 'light' } }],
    })),
  };
}

function ringsOf({ outer, holes }: Polygon): readonly Ring[] {
  return [outer, ...holes];
}

function outlineOf(ring: Ring) {
  return polyline(ring.map(({ x, y }) => ({ x: toMillimetres(x), y: toMillimetres(y) })), true);
}
