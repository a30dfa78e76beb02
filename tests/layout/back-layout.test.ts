import { describe, expect, test } from 'vitest';
import { placedRings } from '../../src/estimate/placed-rings.ts';
import { backLayout } from '../../src/layout/back-layout.ts';
import { WORK_STYLES } from '../../src/layout/back-up.ts';
import { judge } from '../../src/layout/judge.ts';
import { at, layoutWith, polygonDesign } from '../support/layouts.ts';

const ell = polygonDesign('ell', [[0, 0], [90, 0], [90, 20], [30, 20], [30, 60], [0, 60]]);
const curved = { ...ell, id: 'curved', drawing: { fingerprint: 'f', outline: 'M0 0 L90 0 L90 20 L30 20 L30 60 L0 60 Z', paths: [{ role: 'Creasing', d: 'M30 0 L30 20' }] } };
const layout = layoutWith([ell, curved], [at('ell', 10, 20), at('curved', 250, 90, 90), at('ell', 400, 200, 180), at('curved', 500, 400, 270)], {
  keepOut: [{ kind: 'colour-bar', ring: [[0, 690], [1000, 690], [1000, 700], [0, 700]] }],
});

/** Points of a ring as texts, where it starts does not matter. */
const points = (ring: readonly { readonly x: number; readonly y: number }[]) => ring.map(({ x, y }) => `${x} ${y}`).toSorted();

describe.each(WORK_STYLES)('%s', (style) => {
  const back = backLayout(layout, style);
  const tumbled = style === 'work-and-tumble' || style === 'perfecting';
  const turned = ({ x, y }: { x: number; y: number }) => (tumbled ? { x, y: 700_000 - y } : { x: 1_000_000 - x, y });

  test('every station lies on the back of its front, and the judge finds it as sound', () => {
    expect(placedRings(back).map(points)).toEqual(placedRings(layout).map((ring) => points(ring.map(turned))));
    expect([judge(layout).faults, judge(back).faults]).toEqual([[], []]);
  });

  test('keep-outs and side lay follow the sheet; the back of the back is the front', () => {
    expect(points(back.keepOut[0]!.ring.map(([x, y]) => ({ x, y })))).toEqual(tumbled ? ['0 0', '0 10', '1000 0', '1000 10'] : ['0 690', '0 700', '1000 690', '1000 700']);
    expect(back.lay).toBe(tumbled ? 'left' : 'right');
    const again = backLayout(back, style);
    expect(again.placements).toEqual(layout.placements);
    expect(placedRings(again).map(points)).toEqual(placedRings(layout).map(points));
  });
});
