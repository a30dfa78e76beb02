import type { Point } from '../../src/geometry/point.ts';
import type { Turn } from '../../src/geometry/turn.ts';
import type { Problem } from '../../src/layout/problem.ts';
import { toMicrons } from '../../src/base/units.ts';

export type PointMm = readonly [number, number];

/** One outline on a plain sheet: no margins, no bleed, as many as fit. Millimetres. */
export function problemOf(outline: readonly PointMm[], sheet: PointMm, gap: number, turns: readonly Turn[], more: Partial<Problem> = {}): Problem {
  const [width, height] = [toMicrons(sheet[0]), toMicrons(sheet[1])];
  const whole = { minX: 0, minY: 0, maxX: width, maxY: height };
  return {
    sheet: { width, height },
    usable: whole,
    printable: whole,
    lay: 'left',
    keepOuts: [],
    rules: { gap: toMicrons(gap), bleed: 0, bleedMeeting: 'apart', commonKnife: false },
    parts: [{ id: 'blank', outline: ringOf(outline), openings: [], turns }],
    demand: { kind: 'most' },
    locked: [],
    symmetry: 'none',
    ...more,
  };
}

export function ringOf(outline: readonly PointMm[]): Point[] {
  return outline.map(([x, y]) => ({ x: toMicrons(x), y: toMicrons(y) }));
}

export function rectangle(width: number, height: number): PointMm[] {
  return [[0, 0], [width, 0], [width, height], [0, height]];
}

/** Tangents all around, so that the circle is held; its box is exact for a number of corners that 4 divides. */
export function roundOutline(diameter: number, corners = 96): PointMm[] {
  const radius = diameter / 2;
  return Array.from({ length: corners }, (_, k): PointMm => {
    const angle = ((k + 0.5) * 2 * Math.PI) / corners;
    const reach = radius / Math.cos(Math.PI / corners);
    return [radius + reach * Math.cos(angle), radius + reach * Math.sin(angle)];
  });
}
