import type { Point, Ring } from '../../geometry/point.ts';
import { boxOf } from '../../geometry/point.ts';

/** Left edges tried for a given width, besides those at vertices. */
const EVEN_PLACES = 16;
/** Of vertices nearer to one another than a millimetre, as on arcs, one is tried: any place gives a true rectangle. */
const VERTEX_STEP = 1000;

/**
 * The height, rounded down to whole µm, of a rectangle of the given width inside the ring: the tallest with its left or right side at a vertex or at one of a
 * few even places. 0 if there is none.
 */
export function innerHeight(ring: Ring, width: number): number {
  const { minX, maxX } = boxOf(ring);
  const room = maxX - minX - width;
  if (room < 0 || width <= 0) return 0;
  const places = new Set(Array.from({ length: EVEN_PLACES + 1 }, (_, k) => minX + Math.floor((room * k) / EVEN_PLACES)));
  for (const x of apart(ring)) for (const left of [x, x - width]) if (left >= minX && left <= minX + room) places.add(left);
  const edges = sidewaysEdges(ring);
  let tallest = 0;
  for (const left of places) tallest = Math.max(tallest, freeHeight(edges, left, left + width));
  return tallest;
}

function apart(ring: Ring): Iterable<number> {
  return new Map(ring.map(({ x }) => [Math.round(x / VERTEX_STEP), x])).values();
}

interface SidewaysEdge {
  readonly left: Point;
  readonly right: Point;
}

function sidewaysEdges(ring: Ring): SidewaysEdge[] {
  return ring.map((b, i) => {
    const a = ring.at(i - 1)!;
    return a.x <= b.x ? { left: a, right: b } : { left: b, right: a };
  });
}

/** The tallest stretch of the vertical strip left … right that no edge enters and that lies inside the ring; whole µm. */
function freeHeight(edges: readonly SidewaysEdge[], left: number, right: number): number {
  const middle = (left + right) / 2;
  const blocks: { low: number; high: number; crossings: number }[] = [];
  for (const edge of edges) {
    const { left: a, right: b } = edge;
    if (b.x <= left || a.x >= right) continue;
    const from = a.x < left ? heightOn(edge, left) : a.y;
    const to = b.x > right ? heightOn(edge, right) : b.y;
    blocks.push({ low: Math.floor(Math.min(from, to)), high: Math.ceil(Math.max(from, to)), crossings: a.x < middle !== b.x < middle ? 1 : 0 });
  }
  blocks.sort((p, q) => p.low - q.low);
  let tallest = 0;
  let top = -Infinity;
  let crossed = 0;
  for (const { low, high, crossings } of blocks) {
    if (low > top && crossed % 2 === 1) tallest = Math.max(tallest, low - top);
    top = Math.max(top, high);
    crossed += crossings;
  }
  return tallest;
}

function heightOn({ left: a, right: b }: SidewaysEdge, x: number): number {
  return a.y + ((b.y - a.y) * (x - a.x)) / (b.x - a.x);
}
