import type { Blank, Role, RulePath } from '../../../dieline/dieline.ts';
import type { CurvePath } from '../../../geometry/curve.ts';
import { readPathData } from '../../../geometry/path-data.ts';
import type { Design, MmRing } from '../../../layout/layout-file.ts';
import { dielineSvg } from '../../../render/dieline-svg.ts';

/** A design of a layout as an SVG drawing: its true lines where the layout has them, else the outline as cuts. */
export function ownDrawing({ id, outline, openings, drawing }: Design): string {
  const loops = [outline, ...openings].map(loopOf);
  const lines = (drawing?.paths ?? []).flatMap(({ role, d }) => readPathData(d).map((curves) => ruleOf(role as Role, curves)));
  const rules = lines.length > 0 ? lines : loops.map((loop) => ruleOf('Cutting', loop));
  const [xs, ys] = ([0, 1] as const).map((axis) => outline.map((point) => point[axis]));
  const box = { minX: Math.min(...xs!), minY: Math.min(...ys!), maxX: Math.max(...xs!), maxY: Math.max(...ys!) };
  const blank: Blank = { number: 1, outline: loops[0]!, openings: loops.slice(1), rules, box, areaMm2: 0 };
  return dielineSvg(id, { blanks: [blank], rest: [], scale: { mmPerUnit: 1, from: 'unit' }, yAxis: 'down', fingerprint: '', issues: [] });
}

function ruleOf(role: Role, curves: CurvePath): RulePath {
  return { role, reason: 'name', curves, closed: false, source: '' };
}

function loopOf(ring: MmRing): CurvePath {
  const points = ring.map(([x, y]) => ({ x, y }));
  return points.map((from, i) => ({ kind: 'line', from, to: points[(i + 1) % points.length]! }));
}
