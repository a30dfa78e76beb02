import type { Point, Ring } from '../geometry/point.ts';
import { isStrictlyConvex } from './inside-outline.ts';

/**
 * An open convex set of shifts: a x + b y < c for every triple a, b, c. All numbers are whole, products and their sums stay below 2⁵³ for outlines within
 * `LARGEST`, so every answer is exact.
 */
interface ConvexPiece {
  readonly sides: Float64Array;
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

/** Largest coordinate of an outline or keep-out part about its middle, half micrometres (4 m): normals stay within 2²⁴, shifts within 2²⁶. */
export const LARGEST = 2 ** 23;

/** A closed box of shifts with whole corners. */
export interface ShiftBox {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

/** How often a box that no single piece holds is cut in four: along the seam of two pieces the boxes shrink by 2⁹. */
const CUTS = 9;

/** Shifts d for which one of `others` moved by d comes nearer than `gap` to one of `parts`, or runs in deeper than −gap; never too many. */
export function forbiddenPieces(parts: readonly Ring[], others: readonly Ring[], gap: number): ConvexPiece[] {
  const disc = gap > 0 ? discWithin(gap) : [{ x: 0, y: 0 }];
  return parts.flatMap((part) => others.map((other) => convexPiece([part, other.map(({ x, y }) => ({ x: -x, y: -y })), disc], Math.max(0, -gap))));
}

/**
 * The Minkowski sum of convex polygons (a single point is one), less a rim: its sides face as the sides of its terms do, and
 * reach as far as all terms together.
 */
function convexPiece(terms: readonly Ring[], rim: number): ConvexPiece {
  const sides: number[] = [];
  const reach = (a: number, b: number) => terms.reduce((sum, term) => sum + term.reduce((most, p) => Math.max(most, a * p.x + b * p.y), -Infinity), 0);
  for (const term of terms) {
    if (term.length < 3) continue;
    term.forEach((p, i) => {
      const q = term[(i + 1) % term.length]!;
      const a = q.y - p.y;
      const b = p.x - q.x;
      // One more than the rim's exact share, as the root is rounded.
      sides.push(a, b, reach(a, b) - (rim > 0 ? Math.ceil(rim * Math.sqrt(a * a + b * b)) + 1 : 0));
    });
  }
  return { sides: Float64Array.from(sides), minX: -reach(-1, 0), minY: -reach(0, -1), maxX: reach(1, 0), maxY: reach(0, 1) };
}

/** Corners a polygon in a disc may have; fewer where rounding to whole numbers would dent it. */
const CORNERS = [96, 48, 24, 4] as const;

/** A convex polygon with whole corners within the disc of the given radius about the origin. */
function discWithin(radius: number): Point[] {
  for (const count of CORNERS) {
    const polygon = squareDirections(count).map(({ x, y }) => {
      const scale = radius / Math.sqrt(x * x + y * y);
      return { x: Math.trunc(x * scale), y: Math.trunc(y * scale) };
    });
    if (isStrictlyConvex(polygon) && polygon.every(({ x, y }) => x * x + y * y <= radius * radius)) return polygon;
  }
  return [{ x: 0, y: 0 }];
}

/** Points at even steps along a square about the origin, counter-clockwise. */
function squareDirections(count: number): Point[] {
  const quarter = Array.from({ length: count / 4 }, (_, k): Point => {
    const share = k / (count / 4);
    return { x: 1 - share, y: share };
  });
  return [
    ...quarter,
    ...quarter.map(({ x, y }) => ({ x: -y, y: x })),
    ...quarter.map(({ x, y }) => ({ x: -x, y: -y })),
    ...quarter.map(({ x, y }) => ({ x: y, y: -x })),
  ];
}

/** Whether the closed box lies in the union of the pieces. A false answer may only mean that it could not be shown. */
export function isBoxForbidden(box: ShiftBox, pieces: readonly ConvexPiece[], cuts = CUTS): boolean {
  const near = pieces.filter((piece) => piece.minX < box.maxX && piece.maxX > box.minX && piece.minY < box.maxY && piece.maxY > box.minY);
  if (near.some((piece) => holdsBox(piece, box))) return true;
  const x = Math.floor((box.minX + box.maxX) / 2);
  const y = Math.floor((box.minY + box.maxY) / 2);
  const middle = { minX: x, minY: y, maxX: x, maxY: y };
  if (cuts === 0 || !near.some((piece) => holdsBox(piece, middle))) return false;
  return (
    isBoxForbidden({ ...box, maxX: x, maxY: y }, near, cuts - 1) &&
    isBoxForbidden({ ...box, minX: x, maxY: y }, near, cuts - 1) &&
    isBoxForbidden({ ...box, maxX: x, minY: y }, near, cuts - 1) &&
    isBoxForbidden({ ...box, minX: x, minY: y }, near, cuts - 1)
  );
}

/** Whether the piece holds the corner of the box that is worst for each side. */
function holdsBox({ sides }: ConvexPiece, { minX, minY, maxX, maxY }: ShiftBox): boolean {
  for (let k = 0; k < sides.length; k += 3) {
    const a = sides[k]!;
    const b = sides[k + 1]!;
    if (a * (a > 0 ? maxX : minX) + b * (b > 0 ? maxY : minY) >= sides[k + 2]!) return false;
  }
  return true;
}
