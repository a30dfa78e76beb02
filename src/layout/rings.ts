import { toMicrons, toMillimetres } from '../base/units.ts';
import type { Box, Ring } from '../geometry/point.ts';
import type { MmArea, MmRing } from './layout-file.ts';

/** Between the layout file's millimetres and the whole micrometres of searches. */
export function mmRing(ring: Ring): MmRing {
  return ring.map(({ x, y }) => [toMillimetres(x), toMillimetres(y)]);
}

export function micronRing(ring: MmRing): Ring {
  return ring.map(([x, y]) => ({ x: toMicrons(x), y: toMicrons(y) }));
}

export function mmArea({ minX, minY, maxX, maxY }: Box): MmArea {
  return { x: toMillimetres(minX), y: toMillimetres(minY), width: toMillimetres(maxX - minX), height: toMillimetres(maxY - minY) };
}

export function micronBox({ x, y, width, height }: MmArea): Box {
  return { minX: toMicrons(x), minY: toMicrons(y), maxX: toMicrons(x + width), maxY: toMicrons(y + height) };
}
