/** Doubles hold the two sides of the comparison to better than this part of themselves; closer cases go to whole numbers. */
const COMPARISON_FILTER = 2 ** -48;

/**
 * Whether the point p is nearer than `reach` to the closed segment. Exact for whole coordinates whose differences stay
 * within 2²⁵ and for a whole `reach` up to 2²⁵.
 */
export function nearerThan(px: number, py: number, x0: number, y0: number, x1: number, y1: number, reach: number): boolean {
  const ux = px - x0;
  const uy = py - y0;
  const dx = x1 - x0;
  const dy = y1 - y0;
  const along = ux * dx + uy * dy;
  const squaredReach = reach * reach;
  if (along <= 0) return ux * ux + uy * uy < squaredReach;
  const squaredLength = dx * dx + dy * dy;
  if (along >= squaredLength) {
    const vx = px - x1;
    const vy = py - y1;
    return vx * vx + vy * vy < squaredReach;
  }
  const across = dx * uy - dy * ux;
  const left = across * across;
  const right = squaredReach * squaredLength;
  if (Math.abs(left - right) > COMPARISON_FILTER * (left + right)) return left < right;
  const exact = BigInt(across);
  return exact * exact < BigInt(squaredReach) * BigInt(squaredLength);
}
