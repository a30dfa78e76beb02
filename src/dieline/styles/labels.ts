import { arcBetween } from '../../geometry/arc.ts';
import type { Curve } from '../../geometry/curve.ts';
import type { Point } from '../../geometry/point.ts';
import { allowance, caliper, dimension } from './allowances.ts';
import { GLUE_MARGIN } from './ends.ts';
import { circle, loop, oval, side } from './flap.ts';
import type { Values } from './parameter.ts';
import type { Style } from './style.ts';

const thin = { ...caliper, usual: 0.08, source: 'label paper 70 to 90 g/m² (from memory)' };

const curves = (id: string, path: readonly Curve[]) => ({ id, side: path.map((curve) => ({ curve })) });

export const wrapLabel: Style = {
  id: 'wrap-label',
  description: 'label once round a bottle or can, glued on itself',
  grain: { along: 'x', source: 'across the axis of the container; some plants want it along the axis: ask the labeller' },
  dimensions: [dimension('diameter', 'of the container', [10, 500], 66), dimension('height', 'of the label', [5, 600], 90)],
  allowances: [thin, allowance('overlap', 'where the label lies on itself', 8, [3, 40])],
  build: ({ diameter, height, overlap, caliper: thickness }) => {
    // The middle of the paper goes round: half a caliper outside the container.
    const width = Math.PI * (diameter + thickness) + overlap;
    const m = GLUE_MARGIN;
    const area = loop([[m, m], [overlap - m, m], [overlap - m, height - m], [m, height - m]]);
    return { id: 'label', side: side([[0, 0], [width, 0], [width, height], [0, height], [0, 0]]), inner: { gluing: [{ area, onto: 'label' }] } };
  },
};

export const roundLabel: Style = {
  id: 'round-label',
  description: 'round label',
  dimensions: [dimension('diameter', 'of the label', [5, 600], 60)],
  allowances: [],
  build: ({ diameter }) => curves('label', circle(diameter / 2, diameter / 2, diameter / 2)),
};

export const ovalLabel: Style = {
  id: 'oval-label',
  description: 'oval label: an ellipse',
  dimensions: [dimension('width', 'along x', [5, 600], 90), dimension('height', 'along y', [5, 600], 60)],
  allowances: [],
  build: ({ width, height }) => curves('label', oval(width / 2, height / 2, width / 2, height / 2)),
};

export const roundedLabel: Style = {
  id: 'rounded-label',
  description: 'rectangular label with rounded corners',
  dimensions: [dimension('width', 'along x', [6, 600], 90), dimension('height', 'along y', [6, 600], 60)],
  allowances: [allowance('corner', 'radius of the corners', { of: (v) => Math.min(5, v.width / 4, v.height / 4), said: '5, at most a quarter of either side' }, [0, { of: (v) => Math.min(v.width, v.height) / 2, said: 'half of the shorter side' }])],
  build: ({ width, height, corner: radius }) => curves('label', loop([[0, 0, { radius }], [width, 0, { radius }], [width, height, { radius }], [0, height, { radius }]])),
};

export const cupFan: Style = {
  id: 'cup-fan',
  description: 'wall of a conical cup: a piece of a ring, glued along its seam',
  grain: { along: 'y', source: 'up the wall, so that the rim rolls (house value)' },
  dimensions: [
    dimension('top', 'diameter of the cup at its rim', [20, 300], 80),
    dimension('bottom', 'diameter of the cup at its foot', [{ of: ({ top }) => top / 3, said: 'a third of the top' }, { of: ({ top }) => 0.95 * top, said: '0.95 of the top' }], 56),
    dimension('height', 'of the cup, upright', [{ of: ({ top }) => top / 2, said: 'half the top' }, 400], 92),
  ],
  allowances: [
    { ...caliper, usual: 0.3 },
    allowance('overlap', 'width of the glued seam', { of: ({ bottom }) => Math.min(8, bottom / 2), said: '8, at most half the bottom' }, [3, { of: ({ bottom }) => Math.min(20, bottom / 2), said: 'half the bottom, and 20' }]),
  ],
  build: fan,
};

/**
 * The wall rolled out: slant s = √(h² + (D − d)²/4), outer radius R = s D/(D − d), inner radius R − s, angle π(D − d)/s.
 * Diameters are taken at the middle of the board. The seam is a strip beside the right edge, of the same width throughout.
 */
function fan({ top, bottom, height, overlap, caliper: thickness }: Values) {
  const [wide, narrow] = [top - thickness, bottom - thickness];
  const slant = Math.sqrt(height ** 2 + ((wide - narrow) / 2) ** 2);
  const outer = (slant * wide) / (wide - narrow);
  const inner = outer - slant;
  const half = (Math.PI * (wide - narrow)) / slant / 2;
  /** A point of the ring, `aside` from the ray that the angle from upright gives. */
  const at = (radius: number, angle: number, aside = 0): Point => {
    const turned = angle + Math.asin(aside / radius);
    return { x: radius * Math.sin(turned), y: radius * Math.cos(turned) };
  };
  const arc = (from: Point, to: Point, radius: number, positive: boolean) => arcBetween({ from, to, radiusX: radius, radiusY: radius, tilt: 0, large: false, positive })!;
  const line = (from: Point, to: Point): Curve => ({ kind: 'line', from, to });
  const [a, b, c, d] = [at(inner, -half), at(inner, half, overlap), at(outer, half, overlap), at(outer, -half)];
  const [foot, crown] = [at(inner, 0), at(outer, 0)];
  const m = GLUE_MARGIN;
  const area = [at(inner + m, half, m), at(inner + m, half, overlap - m), at(outer - m, half, overlap - m), at(outer - m, half, m)];
  return {
    ...curves('wall', [arc(a, foot, inner, false), arc(foot, b, inner, false), line(b, c), arc(c, crown, outer, true), arc(crown, d, outer, true), line(d, a)]),
    inner: { gluing: [{ area: loop(area.map(({ x, y }) => [x, y] as const)), onto: 'wall' }] },
  };
}
