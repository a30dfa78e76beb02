import { toMicrons, toMillimetres } from '../base/units.ts';
import { cutsThrough } from '../dieline/knife-roles.ts';
import type { Role } from '../dieline/dieline.ts';
import { segmentDistance } from '../geometry/distance.ts';
import { flattenPath } from '../geometry/flatten.ts';
import { readPathData } from '../geometry/path-data.ts';
import { boxOf, type Box, type Point } from '../geometry/point.ts';
import type { Design } from './layout-file.ts';

/** Text and fine lines stay so far from a knife, mm: print-to-cut tolerance and a little; common practice, no source. */
export const LIVE_MATTER_MM = 2;

/** Chords of one line that is cut, whole µm. */
export interface Knife {
  readonly from: Point;
  readonly to: Point;
  readonly box: Box;
}

const CHORD_MM = 0.05;

/** All that is cut of a design, line by line, whole µm: outline, openings and cuts within. */
export function knivesOf({ outline, openings, drawing }: Design): Knife[][] {
  const cut = (drawing?.paths ?? []).filter(({ role }) => cutsThrough(role as Role)).flatMap(({ d }) => readPathData(d)).map((path) => flattenPath(path, CHORD_MM));
  const rings = [outline, ...openings].map((ring) => [...ring, ring[0]!].map(([x, y]) => ({ x, y })));
  return [...rings, ...cut].map((points) => {
    const whole = points.map(({ x, y }) => ({ x: toMicrons(x), y: toMicrons(y) }));
    return whole.slice(1).map((to, i): Knife => ({ from: whole[i]!, to, box: boxOf([whole[i]!, to]) }));
  });
}

/**
 * How near the closed ring comes to a knife, mm, and where on the ring; undefined where that is `LIVE_MATTER_MM` or more.
 * Whole µm in.
 */
export function nearestKnife(ring: readonly Point[], knives: readonly Knife[]): { readonly mm: number; readonly place: Point } | undefined {
  const cap = toMicrons(LIVE_MATTER_MM);
  const { minX, minY, maxX, maxY } = boxOf(ring);
  const near = knives.filter(({ box }) => box.minX <= maxX + cap && box.maxX >= minX - cap && box.minY <= maxY + cap && box.maxY >= minY - cap);
  let best: { distance: number; from: Point } | undefined;
  for (const { from, to, box } of near) {
    for (let i = 0; i < ring.length; i++) {
      const [a, b] = [ring[i]!, ring[(i + 1) % ring.length]!];
      const most = best?.distance ?? cap;
      if (Math.min(a.x, b.x) > box.maxX + most || Math.max(a.x, b.x) < box.minX - most || Math.min(a.y, b.y) > box.maxY + most || Math.max(a.y, b.y) < box.minY - most) continue;
      const found = segmentDistance(a, b, from, to);
      if (found.distance < most) best = found;
    }
  }
  return best && { mm: toMillimetres(best.distance), place: { x: toMillimetres(best.from.x), y: toMillimetres(best.from.y) } };
}
