import { boxOf, type Point, type Ring } from '../geometry/point.ts';
import { locatePoint, orient } from '../geometry/predicates.ts';

export interface RingLocator {
  /** Exact on whole µm; the same answer as `locatePoint`. */
  locate(point: Point): ReturnType<typeof locatePoint>;
}

/** Rows of the box by height, each holding the edges that reach into it: one look-up costs the edges of one row. */
export function createRingLocator(ring: Ring): RingLocator {
  const box = boxOf(ring);
  const rows = Math.max(1, Math.min(4096, ring.length >> 1));
  const height = (box.maxY - box.minY) / rows || 1;
  const rowOf = (y: number) => Math.max(0, Math.min(rows - 1, Math.floor((y - box.minY) / height)));
  const edges: (readonly [Point, Point])[][] = Array.from({ length: rows }, () => []);
  ring.forEach((b, i) => {
    const a = ring[(i + ring.length - 1) % ring.length];
    for (let row = rowOf(Math.min(a.y, b.y)); row <= rowOf(Math.max(a.y, b.y)); row++) edges[row].push([a, b]);
  });
  return {
    locate(point) {
      const { x, y } = point;
      if (x < box.minX || x > box.maxX || y < box.minY || y > box.maxY) return 'outside';
      let inside = false;
      for (const [a, b] of edges[rowOf(y)]) {
        if (a.y > y !== b.y > y) {
          const side = orient(a, b, point);
          if (side === 0) return 'boundary';
          if (side > 0 === b.y > a.y) inside = !inside;
        } else if (a.y === y && b.y === y ? x >= Math.min(a.x, b.x) && x <= Math.max(a.x, b.x) : x === b.x && y === b.y) {
          return 'boundary';
        }
      }
      return inside ? 'inside' : 'outside';
    },
  };
}
