import type { Point, Ring } from '../../geometry/point.ts';
import { determinant } from '../../geometry/predicates.ts';
import { distanceBetween } from '../../geometry/vector.ts';

/**
 * A polygon inside the ring with fewer corners: outer corners are cut off one after the other, the flattest first, as long as no corner of the ring
 * stands out of the result by more than `tolerance`. Corners stay where they are, so whole coordinates stay whole.
 */
export function innerOutline(ring: Ring, tolerance: number): Ring {
  const corners: Corner[] = ring.map((point) => ({ point, lost: 0 }));
  while (corners.length > 4) {
    let flattest = -1;
    let least = tolerance;
    for (let i = 0; i < corners.length; i++) {
      const height = heightIfCut(corners, i, least);
      if (height < least) {
        least = height;
        flattest = i;
      }
    }
    if (flattest < 0) break;
    for (const i of [flattest - 1, flattest + 1]) {
      const neighbour = corners[(i + corners.length) % corners.length]!;
      neighbour.lost = Math.max(neighbour.lost, least);
    }
    corners.splice(flattest, 1);
  }
  return corners.map(({ point }) => point);
}

interface Corner {
  readonly point: Point;
  /** How far corners cut off next to this one stand out, at most. */
  lost: number;
}

/** How far the ring would stand out with this corner cut off; Infinity for inner corners and where the cut would meet another corner. */
function heightIfCut(corners: readonly Corner[], i: number, enough: number): number {
  const n = corners.length;
  const before = corners[(i + n - 1) % n]!.point;
  const { point, lost } = corners[i]!;
  const after = corners[(i + 1) % n]!.point;
  const area = determinant(before, point, after);
  if (area < 0) return Infinity;
  const base = distanceBetween(before, after);
  const height = base > 0 ? area / base + lost : Infinity;
  if (height >= enough) return Infinity;
  return corners.some(({ point: p }) => p !== before && p !== point && p !== after && inTriangle(p, before, point, after)) ? Infinity : height;
}

function inTriangle(p: Point, a: Point, b: Point, c: Point): boolean {
  return determinant(a, b, p) >= 0 && determinant(b, c, p) >= 0 && determinant(c, a, p) >= 0;
}
