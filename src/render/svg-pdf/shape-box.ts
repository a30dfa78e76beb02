import type { CurvePath } from '../../geometry/curve.ts';
import { flattenPath } from '../../geometry/flatten.ts';
import { boxOf, type Box } from '../../geometry/point.ts';

/** Boxes of shapes are found by chords within this share of the shape's size. */
const BOX_SHARE = 1e-4;
const LEAST_CHORD = 1e-7;

/** The box of a shape in its own units, whatever their size; undefined where it has no path. */
export function shapeBox(paths: readonly CurvePath[]): Box | undefined {
  const points = paths.flatMap((path) => flattenPath(path, Math.max(LEAST_CHORD, BOX_SHARE * sizeOf(path))));
  return points.length > 0 ? boxOf(points) : undefined;
}

function sizeOf(path: CurvePath): number {
  const { minX, minY, maxX, maxY } = boxOf(path.flatMap(({ from, to }) => [from, to]));
  return Math.max(maxX - minX, maxY - minY);
}

/** A share from 0 to 1; what is no number counts as 1. */
export function clamped(value: number): number {
  return Number.isFinite(value) ? Math.min(1, Math.max(0, value)) : 1;
}
