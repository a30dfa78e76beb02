import fc from 'fast-check';
import { arcBetween, ellipseArc, ellipsePoint } from '../../src/geometry/arc.ts';
import type { Curve, CurvePath } from '../../src/geometry/curve.ts';
import type { Point } from '../../src/geometry/point.ts';
import { between, lengthOf } from '../../src/geometry/vector.ts';

/** Point of a curve at t in [0, 1], by the textbook formula of its kind. */
export function curvePoint(curve: Curve, t: number): Point {
  switch (curve.kind) {
    case 'line':
      return between(curve.from, curve.to, t);
    case 'arc':
      return ellipsePoint(curve, curve.start + t * curve.sweep);
    case 'cubic': {
      const a = between(curve.from, curve.control1, t);
      const b = between(curve.control1, curve.control2, t);
      const c = between(curve.control2, curve.to, t);
      return between(between(a, b, t), between(b, c, t), t);
    }
  }
}

/** `count` points on each curve of a path. */
export function samplePath(path: CurvePath, count: number): Point[] {
  return path.flatMap((curve) => Array.from({ length: count }, (_, i) => curvePoint(curve, i / count)));
}

/** Numbers with so many decimals, as drawings have them; integers shrink well and never give subnormal noise. */
export function decimal(min: number, max: number, decimals = 3): fc.Arbitrary<number> {
  const scale = 10 ** decimals;
  return fc.integer({ min: Math.ceil(min * scale), max: Math.floor(max * scale) }).map((value) => value / scale);
}

export const ellipseLoop: fc.Arbitrary<CurvePath> = fc
  .tuple(decimal(-300, 300), decimal(-300, 300), decimal(0.5, 200), decimal(0.5, 200), decimal(-3, 3), decimal(-3, 3), fc.boolean())
  .map(([x, y, radiusX, radiusY, tilt, start, forward]) => [
    ellipseArc({ centre: { x, y }, radiusX, radiusY, tilt }, start, (forward ? 2 : -2) * Math.PI),
  ]);

type EdgeStyle = { kind: 'line' } | { kind: 'arc'; bulge: number } | { kind: 'cubic'; bulge1: number; bulge2: number };

const edgeStyle: fc.Arbitrary<EdgeStyle> = fc.oneof(
  fc.record({ kind: fc.constant('line' as const) }),
  fc.record({ kind: fc.constant('arc' as const), bulge: decimal(-0.2, 0.2) }),
  fc.record({ kind: fc.constant('cubic' as const), bulge1: decimal(-0.25, 0.25), bulge2: decimal(-0.25, 0.25) }),
);

/** An edge of a star-shaped loop; bulges are in units of its length, positive to the left. */
function styledEdge(from: Point, to: Point, style: EdgeStyle): Curve {
  const aside = (t: number, bulge: number): Point => {
    const p = between(from, to, t);
    return { x: p.x - bulge * (to.y - from.y), y: p.y + bulge * (to.x - from.x) };
  };
  const length = lengthOf({ x: to.x - from.x, y: to.y - from.y });
  switch (style.kind) {
    case 'line':
      return { kind: 'line', from, to };
    case 'cubic':
      return { kind: 'cubic', from, control1: aside(1 / 3, style.bulge1), control2: aside(2 / 3, style.bulge2), to };
    case 'arc': {
      const sagitta = Math.abs(style.bulge) * length;
      if (sagitta === 0) return { kind: 'line', from, to };
      const radius = (length * length) / (8 * sagitta) + sagitta / 2;
      return arcBetween({ from, to, radiusX: radius, radiusY: radius, tilt: 0, large: false, positive: style.bulge < 0 })!;
    }
  }
}

/** Loops of mixed lines, arcs and cubic curves, some corners sharp, some curves bulging in; either direction. */
export const mixedLoop: fc.Arbitrary<CurvePath> = fc
  .record({
    corners: fc.array(fc.record({ radius: decimal(20, 60), style: edgeStyle }), { minLength: 3, maxLength: 9 }),
    forward: fc.boolean(),
    x: decimal(-200, 200),
    y: decimal(-200, 200),
  })
  .map(({ corners, forward, x, y }) => {
    const step = ((forward ? 2 : -2) * Math.PI) / corners.length;
    const points = corners.map(({ radius }, i) => ({ x: x + radius * Math.cos(i * step), y: y + radius * Math.sin(i * step) }));
    return corners.map(({ style }, i) => styledEdge(points[i], points[(i + 1) % points.length], style));
  });

const gridPoint = fc.record({ x: fc.integer({ min: 0, max: 20 }), y: fc.integer({ min: 0, max: 20 }) });

/** One cubic curve and its chord, controls anywhere on a grid: cusps, loops, turns back, controls upon ends. */
export const wildCubicLoop: fc.Arbitrary<CurvePath> = fc
  .tuple(gridPoint, gridPoint, gridPoint, gridPoint)
  .map(([from, control1, control2, to]) => [
    { kind: 'cubic', from, control1, control2, to },
    { kind: 'line', from: to, to: from },
  ]);
