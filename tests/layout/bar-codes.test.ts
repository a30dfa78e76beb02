import { describe, expect, test } from 'vitest';
import { barCodeIssues, barCodesOf, type GivenBarCode } from '../../src/layout/bar-codes.ts';
import { ranges } from '../../src/render/ranges.ts';
import { at, layoutWith, rectangle } from '../support/layouts.ts';

/** A code of 40 × 25 mm is marked in the drawing: its bars stand along the shorter side, y. */
const box = { ...rectangle('box', 100, 60), drawing: { paths: [{ role: 'Positions', d: 'M10 10L50 10L50 35L10 35Z' }, { role: 'Creasing', d: 'M60 0L60 60' }] } };
const marked = { minX: 10, minY: 10, maxX: 50, maxY: 35 };
const placed = (...rotations: number[]) => layoutWith([box], rotations.map((rotation, i) => at('box', 200 * i + 110, 300, rotation)));
const said = (rotations: number[], given: GivenBarCode[] = [], seen: Parameters<typeof barCodesOf>[2] = () => undefined) => {
  const layout = placed(...rotations);
  return barCodeIssues(layout, barCodesOf(layout, given, seen), ranges).map(({ code, severity, facts }) => [code, severity, facts!['stations'] ?? `${facts!['along']} / ${facts!['across']}`, facts!['by']]);
};

describe('bars and the press', () => {
  test('bars that run away from the gripper edge run with the press, turned head down as well', () => {
    expect(said([0, 180, 0])).toEqual([['bar-code-along', 'note', '1–3', 'assumed along the shorter side of the box']]);
  });

  test('across it they are warned of', () => {
    expect(said([90, 270])).toEqual([['bar-code-across', 'warning', '1–2', 'assumed along the shorter side of the box']]);
  });

  test('stations turned by quarters are named', () => {
    expect(said([0, 90, 180, 270])).toEqual([['bar-code-turned', 'warning', '1, 3 / 2, 4', 'assumed along the shorter side of the box']]);
  });

  test('the artwork knows better than the box, the job better than both', () => {
    expect(said([0], [], () => 'x')).toEqual([['bar-code-across', 'warning', '1', 'seen in the artwork']]);
    expect(said([0], [{ design: undefined, box: marked, bars: 'y' }], () => 'x')).toEqual([['bar-code-along', 'note', '1', 'said']]);
  });

  test('a box of the job besides the one marked; designs by name', () => {
    expect(said([0], [{ design: 'box', box: { minX: 70, minY: 5, maxX: 80, maxY: 45 }, bars: undefined }])).toHaveLength(2);
    expect(() => said([0], [{ design: 'lid', box: marked, bars: undefined }])).toThrow('bar-code-of-no-design');
    expect(() => said([0], [{ design: undefined, box: { ...marked, maxX: 101 }, bars: undefined }])).toThrow('bar-code-outside');
  });
});
