import type { Point } from '../../geometry/point.ts';

export type ArrowKey = 'ArrowLeft' | 'ArrowRight' | 'ArrowUp' | 'ArrowDown';

/** Where each arrow points on a sheet whose y runs up. */
const WAYS: Readonly<Record<ArrowKey, Point>> = { ArrowLeft: { x: -1, y: 0 }, ArrowRight: { x: 1, y: 0 }, ArrowUp: { x: 0, y: 1 }, ArrowDown: { x: 0, y: -1 } };
/** How much farther a station seems for every unit that it lies off the line. */
const ASIDE = 2.5;

export function isArrow(key: string): key is ArrowKey {
  return Object.hasOwn(WAYS, key);
}

/** The station that comes next the way an arrow points; the same one where there is none. */
export function stationTowards(places: readonly Point[], from: number, key: ArrowKey): number {
  const [way, start] = [WAYS[key], places[from]!];
  let best = from;
  let least = Infinity;
  places.forEach(({ x, y }, station) => {
    const [dx, dy] = [x - start.x, y - start.y];
    const along = dx * way.x + dy * way.y;
    const aside = Math.abs(dx * way.y) + Math.abs(dy * way.x);
    const seems = along + aside * ASIDE;
    if (station !== from && along > 0 && seems < least) [best, least] = [station, seems];
  });
  return best;
}
