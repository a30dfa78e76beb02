import { describe, expect, test } from 'vitest';
import { inOrder, type Filter } from '../../src/desk/panels/board-order.ts';
import type { CompareFacts, ComparedSheetFacts } from '../../src/render/compare-facts.ts';

const ALL: Filter = { grain: '', press: undefined, listed: undefined, origin: '' };
const stock = { kind: 'stock' } as const;

function sheet(width: number, height: number, more: Partial<ComparedSheetFacts> = {}): ComparedSheetFacts {
  const board = (width * height) / 1e6;
  return {
    sheet: { width, height }, grain: 'x', origin: stock, die: undefined, ups: 10, upperBound: 10, searched: 'full', boardM2PerThousand: board, boardM2WithWaste: [board], sheetsToOrder: [100],
    costPerThousand: [board * 100], boardCostPerThousand: [board * 50], fromCartons: undefined, leastSheet: { width, height }, sheetToOrder: { width, height }, layout: undefined as unknown as ComparedSheetFacts['layout'], curve: [], ...more,
  };
}
const facts = (...sheets: ComparedSheetFacts[]) => ({ sheets }) as unknown as CompareFacts;
const press = (record: Record<string, unknown>): Filter => ({ ...ALL, press: { id: 'press', record } });

describe('sheets of the board', () => {
  test('in the order asked for; equals stay as they were compared, what costs nobody knows how much comes last', () => {
    const all = facts(sheet(1000, 700, { ups: 12 }), sheet(900, 640, { ups: 12, costPerThousand: [null] }), sheet(720, 510, { ups: 6, boardM2WithWaste: [9] }));
    expect(inOrder(all, 'cost', ALL)).toEqual([2, 0, 1]);
    expect(inOrder(all, 'board', ALL)).toEqual([1, 0, 2]);
    expect(inOrder(all, 'ups', ALL)).toEqual([0, 1, 2]);
    expect(inOrder(all, 'size', ALL)).toEqual([2, 1, 0]);
  });

  test('a press takes what lies between its least and its greatest sheet as it is fed, limits among them; an open side takes all', () => {
    const all = facts(sheet(1020, 720), sheet(720, 1020), sheet(1060, 760), sheet(1061, 760), sheet(340, 480), sheet(339, 480), sheet(480, 479));
    expect(inOrder(all, 'cost', press({ minSheet: '340x480', maxSheet: '1060x760' })).toSorted()).toEqual([0, 2, 4]);
    // As a record that was read has them, and in inches.
    expect(inOrder(all, 'cost', press({ maxSheet: { width: 1060, height: 760 } })).toSorted()).toEqual([0, 2, 4, 5, 6]);
    expect(inOrder(all, 'cost', press({ minSheet: '40x28in' })).toSorted()).toEqual([0, 2, 3]);
    expect(inOrder(all, 'cost', press({}))).toHaveLength(7);
  });

  test('a list shows what it offers; filters narrow one another', () => {
    const all = facts(sheet(1020, 720), sheet(1020, 720, { grain: 'y' }), sheet(640, 450, { origin: { kind: 'parent', parent: { width: 1280, height: 900 }, parts: 4 } }));
    expect(inOrder(all, 'ups', { ...ALL, listed: [1, 2] })).toEqual([1, 2]);
    expect(inOrder(all, 'ups', { ...ALL, listed: [] })).toEqual([]);
    expect(inOrder(all, 'ups', { ...ALL, grain: 'y' })).toEqual([1]);
    expect(inOrder(all, 'ups', { ...ALL, origin: 'parent' })).toEqual([2]);
    expect(inOrder(all, 'ups', { ...ALL, origin: 'stock', listed: [1, 2] })).toEqual([1]);
    expect(inOrder(all, 'ups', { ...press({ minSheet: '700x500' }), listed: [0, 2] })).toEqual([0]);
  });
});
