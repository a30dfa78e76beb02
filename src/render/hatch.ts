import type { CurvePath } from '../geometry/curve.ts';
import { line } from './shapes.ts';

/** Lines at 45° through a rectangle, rising to the right or falling, a given distance apart. Millimetres. */
export function hatch(minX: number, minY: number, maxX: number, maxY: number, spacing: number, falling = false): CurvePath[] {
  const lines: CurvePath[] = [];
  const width = maxX - minX;
  const height = maxY - minY;
  const step = spacing * Math.SQRT2;
  for (let offset = step / 2; offset < width + height; offset += step) {
    // Along x + y = offset, falling; mirrored for rising lines.
    const from = { x: Math.min(offset, width), y: Math.max(0, offset - width) };
    const to = { x: Math.max(0, offset - height), y: Math.min(offset, height) };
    const place = (p: { x: number; y: number }) => ({ x: falling ? minX + p.x : maxX - p.x, y: minY + p.y });
    lines.push(line(place(from), place(to)));
  }
  return lines;
}
