import fc from 'fast-check';
import type { Point, Ring } from '../../src/geometry/point.ts';
import { doubleArea } from '../../src/geometry/point.ts';

/** A star-shaped, so simple, counter-clockwise ring in whole micrometres: distances from a centre at equal angles. */
export function starRing(distances: readonly number[], centre: Point = { x: 0, y: 0 }): Ring {
  return distances.map((distance, i) => {
    const angle = (2 * Math.PI * i) / distances.length;
    return { x: Math.round(centre.x + distance * Math.cos(angle)) + 0, y: Math.round(centre.y + distance * Math.sin(angle)) + 0 };
  });
}

/** No two edges share a point but neighbours their common one. Every pair is tried. */
export function isSimple(ring: Ring): boolean {
  const n = ring.length;
  const side = (a: Point, b: Point, c: Point) => Math.sign((b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x));
  const within = (p: Point, a: Point, b: Point) =>
    side(a, b, p) === 0 && Math.min(a.x, b.x) <= p.x && p.x <= Math.max(a.x, b.x) && Math.min(a.y, b.y) <= p.y && p.y <= Math.max(a.y, b.y);
  for (let i = 0; i < n; i++) {
    const a = ring[i];
    const b = ring[(i + 1) % n];
    if (a.x === b.x && a.y === b.y) return false;
    if (within(ring[(i + 2) % n], a, b) || within(a, b, ring[(i + 2) % n])) return false;
    for (let j = i + 2; j < n; j++) {
      if (i === 0 && j === n - 1) continue;
      const c = ring[j];
      const d = ring[(j + 1) % n];
      if (side(a, b, c) !== side(a, b, d) && side(c, d, a) !== side(c, d, b)) return false;
      if (within(c, a, b) || within(d, a, b)) return false;
    }
  }
  return n >= 3;
}

export const starRings = (mostPoints = 24, size = 100_000): fc.Arbitrary<Ring> =>
  fc.array(fc.integer({ min: Math.round(size / 10), max: size }), { minLength: 5, maxLength: mostPoints }).map((distances) => starRing(distances)).filter(isSimple);

/**
 * Rings with axis-parallel edges and many coordinates in common: columns of whole cells standing on one line, so plenty
 * of flat runs, inlets of equal width and exact fits.
 */
export const skylineRings = (mostColumns = 8, cell = 10_000): fc.Arbitrary<Ring> =>
  fc.array(fc.record({ below: fc.integer({ min: 0, max: 3 }), above: fc.integer({ min: 1, max: 3 }) }), { minLength: 1, maxLength: mostColumns }).map((columns) => {
    const lower: Point[] = [];
    const upper: Point[] = [];
    columns.forEach(({ below, above }, i) => {
      lower.push({ x: i * cell, y: -below * cell }, { x: (i + 1) * cell, y: -below * cell });
      upper.push({ x: i * cell, y: above * cell }, { x: (i + 1) * cell, y: above * cell });
    });
    return withoutRepeats([...lower, ...upper.toReversed()]);
  });

function withoutRepeats(points: readonly Point[]): Ring {
  return points.filter((p, i) => {
    const before = points[(i + points.length - 1) % points.length]!;
    return p.x !== before.x || p.y !== before.y;
  });
}

/** The ring with every edge cut into `pieces` at whole micrometres: flat vertices in plenty. */
export function withFlatVertices(ring: Ring, pieces: number): Ring {
  return ring.flatMap((p, i) => {
    const q = ring[(i + 1) % ring.length]!;
    const steps = pieces > 1 && (q.x - p.x) % pieces === 0 && (q.y - p.y) % pieces === 0 ? pieces : 1;
    return Array.from({ length: steps }, (_, k) => ({ x: p.x + ((q.x - p.x) / steps) * k, y: p.y + ((q.y - p.y) / steps) * k }));
  });
}

/**
 * A reverse-tuck carton blank of four panels with a glue flap, tuck flaps with round corners and dust flaps with slanted
 * and hollow sides; `pointsPerArc` sets the number of points (11 gives 300 or so). Whole micrometres, lower left at 0, 0.
 * The flap shapes are our own.
 */
export function cartonRing(pointsPerArc: number, { length = 62, width = 38, depth = 94 } = {}): Ring {
  const points: Point[] = [];
  const put = (x: number, y: number) => points.push({ x: Math.round(x * 1000), y: Math.round(y * 1000) });
  /** Quarter round from the last direction to the next about (cx, cy); degrees. */
  const arc = (cx: number, cy: number, radius: number, from: number, to: number) => {
    for (let k = 0; k < pointsPerArc; k++) {
      const angle = ((from + ((to - from) * k) / (pointsPerArc - 1)) * Math.PI) / 180;
      put(cx + radius * Math.cos(angle), cy + radius * Math.sin(angle));
    }
  };
  const glue = 13;
  const tuck = 15;
  const cover = width + tuck;
  const dust = width * 0.7;
  const x1 = glue;
  const x2 = x1 + length;
  const x3 = x2 + width;
  const x4 = x3 + length;
  const x5 = x4 + width - 0.5;
  const bottom = cover;
  const top = cover + depth;
  const r = 9;
  /** A cover with its tuck flap standing up from `base` between two lines; `sign` −1 hangs it down. */
  const tuckUp = (left: number, right: number) => {
    put(right - 0.4, top);
    put(right - 0.4, top + width - 1);
    put(right - 1, top + width);
    arc(right - 1 - r, top + cover - r, r, 0, 90);
    arc(left + 1 + r, top + cover - r, r, 90, 180);
    put(left + 1, top + width);
    put(left + 0.4, top + width - 1);
    put(left + 0.4, top);
  };
  const tuckDown = (left: number, right: number) => {
    put(left + 0.4, bottom);
    put(left + 0.4, bottom - width + 1);
    put(left + 1, bottom - width);
    arc(left + 1 + r, bottom - cover + r, r, 180, 270);
    arc(right - 1 - r, bottom - cover + r, r, 270, 360);
    put(right - 1, bottom - width);
    put(right - 0.4, bottom - width + 1);
    put(right - 0.4, bottom);
  };
  /** A dust flap with one slanted side, one hollow side and a round corner. */
  const dustUp = (left: number, right: number) => {
    put(right - 0.6, top);
    put(right - 0.6, top + 4);
    put(right - 5, top + 8);
    arc(right - 5 - 4, top + dust - 4, 4, 0, 90);
    arc(left + 9, top + dust - 5, 5, 90, 180);
    arc(left + 1, top + 8 + 3, 3, 0, -90);
    put(left + 0.6, top + 8);
    put(left + 0.6, top);
  };
  const dustDown = (left: number, right: number) => {
    put(left + 0.6, bottom);
    put(left + 0.6, bottom - 4);
    put(left + 5, bottom - 8);
    arc(left + 5 + 4, bottom - dust + 4, 4, 180, 270);
    arc(right - 9, bottom - dust + 5, 5, 270, 360);
    arc(right - 1, bottom - 8 - 3, 3, 180, 90);
    put(right - 0.6, bottom - 8);
    put(right - 0.6, bottom);
  };
  tuckDown(x1, x2);
  dustDown(x2, x3);
  put(x3, bottom + 0.5);
  put(x4 - 0.5, bottom + 0.5);
  dustDown(x4, x5);
  put(x5, bottom + 1);
  put(x5, top - 1);
  dustUp(x4, x5);
  tuckUp(x3, x4);
  dustUp(x2, x3);
  put(x2 - 0.5, top - 0.5);
  put(x1, top - 0.5);
  put(x1, top - 1.5);
  arc(x1 - glue + 2, top - 8, 2, 90, 180);
  arc(x1 - glue + 2, bottom + 8, 2, 180, 270);
  put(x1, bottom + 1.5);
  const ring = withoutRepeats(points);
  if (doubleArea(ring) <= 0) throw new RangeError('The carton runs clockwise.');
  return ring;
}

/**
 * The outline of unit cells drawn as rows of '#', top row first, lower left of the picture at the origin. The cells must
 * hang together by edges, leave no hole and touch nowhere by corners alone.
 */
export function cellRing(rows: readonly string[], cell = 1): Ring {
  const isCell = (x: number, y: number) => rows[rows.length - 1 - y]?.[x] === '#';
  const next = new Map<string, Point>();
  const edge = (x0: number, y0: number, x1: number, y1: number) => next.set(`${x0},${y0}`, { x: x1, y: y1 });
  rows.forEach((row, y) => {
    for (let x = 0; x < row.length; x++) {
      if (!isCell(x, y)) continue;
      if (!isCell(x, y - 1)) edge(x, y, x + 1, y);
      if (!isCell(x + 1, y)) edge(x + 1, y, x + 1, y + 1);
      if (!isCell(x, y + 1)) edge(x + 1, y + 1, x, y + 1);
      if (!isCell(x - 1, y)) edge(x, y + 1, x, y);
    }
  });
  const [start] = next.keys();
  const corners: Point[] = [];
  for (let key = start; corners.length < next.size; ) {
    const to = next.get(key)!;
    corners.push(to);
    key = `${to.x},${to.y}`;
    if (key === start && corners.length < next.size) throw new RangeError('The cells have more than one outline.');
  }
  const straight = corners.filter((p, i) => {
    const before = corners[(i + corners.length - 1) % corners.length];
    const after = corners[(i + 1) % corners.length];
    return (p.x - before.x) * (after.y - p.y) !== (p.y - before.y) * (after.x - p.x);
  });
  return straight.map((p) => ({ x: p.x * cell, y: p.y * cell }));
}
