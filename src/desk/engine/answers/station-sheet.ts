import { toMillimetres } from '../../../base/units.ts';
import { writePathData } from '../../../geometry/path-data.ts';
import { placedRings } from '../../../estimate/placed-rings.ts';
import { LENGTH_DECIMALS } from '../../../render/plain.ts';
import { scaleFor } from '../../../render/scale.ts';
import { polyline } from '../../../render/shapes.ts';
import { stationNumbers } from '../../../render/stations.ts';
import { viewOfLayout } from '../../../render/view-of-layout.ts';
import type { LayoutFile } from '../../../layout/layout-file.ts';
import type { Host } from '../host.ts';
import type { StationSheet } from '../protocol.ts';
import { picture } from './picture.ts';

/** The sheet without station numbers, and where each station lies: the page marks what it prints. */
export function stationSheet(file: LayoutFile, host: Pick<Host<'stationSheet'>, 'locale' | 'unit'>): StationSheet {
  const scene = picture({ file, grain: undefined, small: true }, host);
  const places = stationNumbers(viewOfLayout(file, { figures: [] }), scaleFor(file.sheet));
  const rings = placedRings(file).map((ring) => ring.map(({ x, y }) => ({ x: toMillimetres(x), y: toMillimetres(y) })));
  return {
    scene: { ...scene, layers: scene.layers.filter(({ name }) => name !== 'Stations') },
    stations: rings.map((ring, i) => ({ outline: writePathData(polyline(ring, true), LENGTH_DECIMALS), ...places[i]! })),
  };
}
