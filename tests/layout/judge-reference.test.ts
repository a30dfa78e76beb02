import Flatten from '@flatten-js/core';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Ring } from '../../src/geometry/point.ts';
import { judge } from '../../src/layout/judge.ts';
import type { Design, LayoutFile, MmRing, PlacedBlank } from '../../src/layout/layout-file.ts';
import { JUDGE_TOLERANCE_MM } from '../../src/layout/judge-tolerance.ts';
import { mmRing } from '../../src/layout/rings.ts';
import { layoutWith, polygonDesign } from '../support/layouts.ts';
import { cartonRing, skylineRings, starRings } from '../support/rings.ts';
import { sharedArea } from '../support/slow-overlap.ts';

/** On the sheet by trigonometry, apart from the judge's swaps and signs; rounded to the micrometre. */
function standing(outline: MmRing, { rotation, x, y }: PlacedBlank): MmRing {
  const angle = (rotation * Math.PI) / 180;
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  return outline.map(([u, v]) => [Math.round((c * u - s * v + x) * 1000) / 1000, Math.round((s * u + c * v + y) * 1000) / 1000]);
}

/** Slow and obvious: every corner against every edge, both ways; right for outlines that do not cross. */
function distanceApart(a: MmRing, b: MmRing): number {
  const oneWay = (corners: MmRing, edges: MmRing) =>
    Math.min(...corners.flatMap(([x, y]) => edges.map(([x1, y1], i) => {
      const [x2, y2] = edges[(i + 1) % edges.length]!;
      const along = ((x - x1) * (x2 - x1) + (y - y1) * (y2 - y1)) / ((x2 - x1) ** 2 + (y2 - y1) ** 2);
      const t = Math.max(0, Math.min(1, along));
      return Math.hypot(x1 + t * (x2 - x1) - x, y1 + t * (y2 - y1) - y);
    })));
  return Math.min(oneWay(a, b), oneWay(b, a));
}

const sharedMm2 = (a: MmRing, b: MmRing) => (boxesApart(a, b) > 0 ? 0 : sharedArea(asRing(a), asRing(b)));

/** How far the boxes lie apart along x or y; nothing is nearer than that. */
function boxesApart(a: MmRing, b: MmRing): number {
  const reach = (ring: MmRing, axis: 0 | 1) => [Math.min(...ring.map((p) => p[axis])), Math.max(...ring.map((p) => p[axis]))] as const;
  return Math.max(...([0, 1] as const).flatMap((axis) => [reach(a, axis)[0] - reach(b, axis)[1], reach(b, axis)[0] - reach(a, axis)[1]]));
}
const asRing = (ring: MmRing): Ring => ring.map(([x, y]) => ({ x, y }));

/** Below this shared area an overlap may be within the tolerance all along: 0.002 mm times an outline of half a metre. */
const DOUBTFUL_MM2 = 1;

describe('random layouts against an independent clipping library', () => {
  const shapes = fc.oneof(starRings(16, 40_000), skylineRings(5, 12_000)).map(mmRing);
  const placement = fc.record({ design: fc.constantFrom('a', 'b'), rotation: fc.constantFrom(0, 90, 180, 270), x: fc.integer({ min: 0, max: 180_000 }), y: fc.integer({ min: 0, max: 120_000 }) });
  const layouts = fc.record({ a: shapes, b: shapes, placements: fc.array(placement, { minLength: 2, maxLength: 6 }), gap: fc.integer({ min: 0, max: 12 }) });

  test('overlaps and gaps, pair by pair, with their amounts', () => {
    const seen = { overlap: 0, gap: 0, clear: 0 };
    fc.assert(
      fc.property(layouts, ({ a, b, placements, gap }) => {
        const blanks = placements.map((p) => ({ ...p, x: p.x / 1000, y: p.y / 1000 }));
        const whole = { x: -500, y: -500, width: 2000, height: 2000 };
        const rules = { gap, bleed: 0, bleedMeeting: 'apart', commonKnife: false } as const;
        const layout: LayoutFile = layoutWith([polygonDesign('a', a), polygonDesign('b', b)], blanks, { sheet: { width: 1000, height: 1000 }, usable: whole, printable: whole, rules });
        const faults = judge(layout).faults.filter(({ kind }) => kind === 'gap' || kind === 'overlap');
        const rings = blanks.map((blank) => standing(blank.design === 'a' ? a : b, blank));
        for (let i = 0; i < rings.length; i++) {
          for (let j = i + 1; j < rings.length; j++) {
            const found = faults.find(({ blanks: [p, q] }) => p === i && q === j);
            const shared = sharedMm2(rings[i]!, rings[j]!);
            const distance = boxesApart(rings[i]!, rings[j]!) > gap ? Infinity : distanceApart(rings[i]!, rings[j]!);
            if (shared > DOUBTFUL_MM2) {
              expect(found?.kind).toBe('overlap');
              seen.overlap++;
            } else if (shared === 0 && gap - distance > 2 * JUDGE_TOLERANCE_MM) {
              expect(found?.kind).toBe('gap');
              expect(found!.byMm).toBeCloseTo(gap - distance, 2);
              seen.gap++;
            } else if (shared === 0 && distance >= gap) {
              expect(found).toBeUndefined();
              seen.clear++;
            }
          }
        }
      }),
      { seed: 31, numRuns: 2000 },
    );
    // All three answers came up often enough to mean something.
    expect(Math.min(seen.overlap, seen.gap, seen.clear)).toBeGreaterThan(500);
  });

  test('cartons pushed into one another by 10 to 100 µm', () => {
    const ring = mmRing(cartonRing(3));
    const design = polygonDesign('carton', ring);
    const rules = { gap: 0, bleed: 0, bleedMeeting: 'apart', commonKnife: false } as const;
    const room = { sheet: { width: 2000, height: 2000 }, usable: { x: 0, y: 0, width: 2000, height: 2000 }, printable: { x: 0, y: 0, width: 2000, height: 2000 }, rules };
    const first: PlacedBlank = { design: 'carton', rotation: 0, x: 600, y: 600 };
    let overlaps = 0;
    fc.assert(
      fc.property(fc.constantFrom(0, 90, 180, 270), fc.integer({ min: -200, max: 200 }), fc.integer({ min: 10, max: 100 }), (rotation, aside, microns) => {
        // Comes down from above until it touches, by halving on shared area and distance; then some micrometres more.
        const second = (y: number): PlacedBlank => ({ design: 'carton', rotation, x: 600 + aside, y });
        let [free, taken] = [1400, 700];
        while (free - taken > 0.0005) {
          const y = (free + taken) / 2;
          const [a, b] = [standing(ring, first), standing(ring, second(y))];
          if (sharedMm2(a, b) > 0 || distanceApart(a, b) === 0) taken = y;
          else free = y;
        }
        expect(judge(layoutWith([design], [first, second(free + 0.001)], room)).state).toBe('sound');
        const pushed = second(free - microns / 1000 - 0.001);
        // Along a steep side the same push is no deeper than the tolerance.
        if (sharedMm2(standing(ring, first), standing(ring, pushed)) < 0.1) return;
        overlaps++;
        expect(judge(layoutWith([design], [first, pushed], room)).faults.map(({ kind }) => kind)).toEqual(['overlap']);
      }),
      { seed: 5, numRuns: 16 },
    );
    expect(overlaps).toBeGreaterThan(5);
  });
});

describe('true arcs against a library that has them', () => {
  /** A label with four corners of their own radii. */
  const label = fc.record({ width: fc.integer({ min: 30, max: 90 }), height: fc.integer({ min: 30, max: 90 }), radii: fc.tuple(...Array.from({ length: 4 }, () => fc.integer({ min: 1, max: 15 }))) });
  type Label = typeof label extends fc.Arbitrary<infer T> ? T : never;

  const corners = ({ width, height, radii: [a, b, c, d] }: Label) =>
    [
      [a!, 0], [width - b!, 0], [width, b!], [width, height - c!], [width - c!, height], [d!, height], [0, height - d!], [0, a!],
    ] as const;

  function design(id: string, shape: Label): Design {
    const p = corners(shape);
    const arc = (radius: number, [x, y]: readonly [number, number]) => `A${radius} ${radius} 0 0 1 ${x} ${y}`;
    const [a, b, c, d] = shape.radii as [number, number, number, number];
    const outline = `M${p[0].join(' ')} L${p[1].join(' ')} ${arc(b, p[2])} L${p[3].join(' ')} ${arc(c, p[4])} L${p[5].join(' ')} ${arc(d, p[6])} L${p[7].join(' ')} ${arc(a, p[0])} Z`;
    // Held by the polygon of the box: too wide for the tolerance at the corners, which the judge has to say.
    return { id, outline: [[0, 0], [shape.width, 0], [shape.width, shape.height], [0, shape.height]], openings: [], rotations: [0], drawing: { outline, paths: [] } };
  }

  function flattenPolygon(shape: Label, x: number, y: number): Flatten.Polygon {
    const p = corners(shape).map(([u, v]) => new Flatten.Point(u + x, v + y));
    const [a, b, c, d] = shape.radii as [number, number, number, number];
    const arc = (cx: number, cy: number, radius: number, quarter: number) =>
      new Flatten.Arc(new Flatten.Point(cx + x, cy + y), radius, (quarter * Math.PI) / 2, ((quarter + 1) * Math.PI) / 2, true);
    const { width, height } = shape;
    const edges = [
      new Flatten.Segment(p[0], p[1]), arc(width - b, b, b, 3),
      new Flatten.Segment(p[2], p[3]), arc(width - c, height - c, c, 0),
      new Flatten.Segment(p[4], p[5]), arc(d, height - d, d, 1),
      new Flatten.Segment(p[6], p[7]), arc(a, a, a, 2),
    ];
    const polygon = new Flatten.Polygon();
    polygon.addFace(edges.filter((edge) => edge.length > 0));
    return polygon;
  }

  test('distances of rounded labels, 500 pairs', () => {
    let near = 0;
    fc.assert(
      fc.property(label, label, fc.integer({ min: -30_000, max: 100_000 }), fc.integer({ min: 200, max: 9000 }), (first, second, aside, above) => {
        const [x, y] = [100 + aside / 1000, 100 + first.height + above / 1000];
        const [distance] = flattenPolygon(first, 100, 100).distanceTo(flattenPolygon(second, x, y));
        const layout = layoutWith([design('first', first), design('second', second)], [{ design: 'first', rotation: 0, x: 100, y: 100 }, { design: 'second', rotation: 0, x, y }], {
          rules: { gap: 6, bleed: 0, bleedMeeting: 'apart', commonKnife: false },
        });
        const found = judge(layout).faults.find(({ kind }) => kind !== 'outline');
        if (distance >= 6 - JUDGE_TOLERANCE_MM / 2) expect(found).toBeUndefined();
        if (6 - distance > 2 * JUDGE_TOLERANCE_MM) {
          near++;
          expect(found?.byMm).toBeCloseTo(6 - distance, 2);
        }
      }),
      { seed: 11, numRuns: 500 },
    );
    expect(near).toBeGreaterThan(100);
  });
});
