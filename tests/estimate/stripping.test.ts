import { describe, expect, test } from 'vitest';
import { strippingOf } from '../../src/estimate/stripping.ts';
import { at, grid, layoutWith, polygonDesign, rectangle } from '../support/layouts.ts';

const card = rectangle('card', 100, 60);
const sheet = { sheet: { width: 300, height: 200 } };
const four = (gap: number) => layoutWith([card], grid(card, { columns: 2, rows: 2, step: [100 + gap, 60 + gap], from: [20, 30] }), sheet);

describe('a sheet of four cards', () => {
  test('4 mm apart: a cross of strips under 5 mm, one way each way, a cell for every blank', () => {
    const { pieces, slivers, corridors, blanksInCell, frame } = strippingOf(four(4), 5);
    expect(frame).toEqual({ gripper: 30, tail: 46, left: 20, right: 76 });
    expect(corridors).toEqual({ x: [{ from: 120, width: 4 }], y: [{ from: 90, width: 4 }] });
    expect([blanksInCell, pieces.length, pieces[0]!.island, pieces[0]!.narrowerThan]).toEqual([1, 1, false, 5]);
    expect(pieces[0]!.areaMm2).toBeCloseTo(300 * 200 - 4 * 6000, 3);
    // The cross: two strips 4 mm wide, 204 and 124 mm long, less their square in common and what discs fill at the five wide places.
    const cross = 4 * (204 + 124) - 16;
    const found = slivers.reduce((sum, { areaMm2 }) => sum + areaMm2, 0);
    expect(found).toBeLessThan(cross);
    expect(found).toBeGreaterThan(cross - 50);
  });

  test('6 mm apart nothing is narrow, and 6 mm is not under 6', () => {
    expect(strippingOf(four(6), 5).slivers).toEqual([]);
    expect(strippingOf(four(6), 6).slivers).toEqual([]);
    expect(strippingOf(four(6), 7).slivers.every(({ narrowerThan }) => narrowerThan === 7)).toBe(true);
  });

  test('2 mm apart is under 3', () => {
    expect(strippingOf(four(2), 5).slivers.map(({ narrowerThan }) => narrowerThan)).toEqual([3]);
  });

  test('a narrow strip at the edge of the sheet is the frame’s, not a sliver', () => {
    const { frame, slivers } = strippingOf(layoutWith([card], [at('card', 2, 30)], sheet), 5);
    expect([frame.left, slivers]).toEqual([2, []]);
  });
});

test('openings and what neighbours enclose are islands, the larger first', () => {
  const window = { ...card, id: 'window', openings: [[[10, 10], [10, 50], [40, 50], [40, 10]]] as [number, number][][] };
  const { pieces } = strippingOf(layoutWith([window], [at('window', 20, 20), at('window', 260, 80, 180)], sheet), 5);
  expect(pieces.map(({ island, areaMm2 }) => [island, Math.round(areaMm2)])).toEqual([[false, 60000 - 12000], [true, 1200], [true, 1200]]);
  const bar = rectangle('bar', 60, 20);
  const ring = layoutWith([bar], [at('bar', 20, 20), at('bar', 100, 20, 90), at('bar', 40, 80), at('bar', 40, 40, 90)], { ...sheet, rules: { gap: 0, bleed: 0, bleedMeeting: 'apart', commonKnife: true } });
  expect(strippingOf(ring, 5).pieces.map(({ island, areaMm2 }) => [island, Math.round(areaMm2)])).toEqual([[false, 60000 - 4800 - 1600], [true, 1600]]);
});

test('blanks that reach into one another have no straight way between them', () => {
  const ell = polygonDesign('ell', [[0, 0], [90, 0], [90, 30], [30, 30], [30, 90], [0, 90]]);
  const { corridors, blanksInCell } = strippingOf(layoutWith([ell], [at('ell', 20, 20), at('ell', 150, 140, 180)], sheet), 5);
  expect([corridors, blanksInCell]).toEqual([{ x: [], y: [] }, 2]);
});

test('long straight scrap wants chopping rules: 1000 mm in pieces of at most 450', () => {
  const { longScrap } = strippingOf(layoutWith([card], grid(card, { columns: 8, rows: 2, step: [106, 66], from: [20, 30] })), 5);
  expect(longScrap.map(({ where, length, choppingRules }) => [where, length, choppingRules])).toEqual([
    ['gripper', 1000, 2], ['tail', 1000, 2], ['left', 700, 1], ['right', 700, 1], ['corridor y', 1000 - 20 - 138, 1],
  ]);
});
