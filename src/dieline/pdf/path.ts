import { mapPoint, type Affine } from '../../geometry/affine.ts';
import type { Curve, CurvePath } from '../../geometry/curve.ts';
import type { Point } from '../../geometry/point.ts';
import { samePoint } from '../../geometry/vector.ts';

/** The path under construction; points are placed by the matrix of the moment they are given. */
export function createPath() {
  let done: Curve[][] = [];
  let open: Curve[] = [];
  let start: Point | undefined;
  let here: Point | undefined;

  const moveTo = (to: Point) => {
    finish();
    start = here = to;
  };
  const finish = () => {
    if (open.length > 0) done.push(open);
    open = [];
  };
  const lineTo = (to: Point) => {
    if (here && !samePoint(here, to)) open.push({ kind: 'line', from: here, to });
    here = to;
  };
  const curveTo = (control1: Point, control2: Point, to: Point) => {
    if (here) open.push({ kind: 'cubic', from: here, control1, control2, to });
    here = to;
  };
  const close = () => {
    if (start) lineTo(start);
    finish();
  };

  /** Whether the operator builds paths; ISO 32000-1, table 59. */
  const build = (operator: string, numbers: readonly number[], map: Affine): boolean => {
    const point = (i: number) => mapPoint(map, { x: numbers[i] ?? NaN, y: numbers[i + 1] ?? NaN });
    switch (operator) {
      case 'm':
        moveTo(point(0));
        return true;
      case 'l':
        lineTo(point(0));
        return true;
      case 'c':
        curveTo(point(0), point(2), point(4));
        return true;
      case 'v':
        if (here) curveTo(here, point(0), point(2));
        return true;
      case 'y':
        curveTo(point(0), point(2), point(2));
        return true;
      case 'h':
        close();
        return true;
      case 're': {
        const [x = NaN, y = NaN, width = NaN, height = NaN] = numbers;
        const corners = [{ x, y }, { x: x + width, y }, { x: x + width, y: y + height }, { x, y: y + height }].map((corner) => mapPoint(map, corner));
        moveTo(corners[0]!);
        corners.slice(1).forEach(lineTo);
        close();
        return true;
      }
      default:
        return false;
    }
  };

  /** Hands the subpaths over; the next path begins empty. */
  const take = (): CurvePath[] => {
    finish();
    const paths = done;
    done = [];
    start = here = undefined;
    return paths;
  };

  return { build, close, take };
}
