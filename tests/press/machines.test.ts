import { describe, expect, test } from 'vitest';
import { InputError } from '../../src/base/issue.ts';
import { sheetGrainAxis, turnsForGrain } from '../../src/press/grain.ts';
import { checkMachines, combineSettings } from '../../src/press/machines.ts';
import { boardSchema, cutterSchema, pressSchema, readRecord } from '../../src/press/records.ts';

describe('records', () => {
  test('hold the settings of the command by name, with units and hyphens', () => {
    const press = readRecord(pressSchema, { 'side-margins': 5, gripper: '0.5in', bar: 'tail:6', maxSheet: '1060x760' }, 'press.json');
    expect(press.sideMargins).toEqual([5, 5]);
    expect(press.gripper).toBeCloseTo(12.7, 12);
    expect(press.bar).toEqual({ place: 'tail', height: 6 });
  });

  test('name every wrong field', () => {
    try {
      readRecord(pressSchema, { gripper: -1, bar: 'middle:6', units: 2.5 }, 'press.json');
      expect.unreachable();
    } catch (error) {
      expect((error as InputError).issues.map((issue) => issue.where)).toEqual(['press.json: gripper', 'press.json: bar', 'press.json: units']);
    }
  });
});

describe('two machines', () => {
  const press = readRecord(pressSchema, { gripper: 10, tail: 12, sideMargins: [5, 8], bleed: 2 }, 'p');
  const cutter = readRecord(cutterSchema, { gripper: 14, tail: 8, sideMargins: 6, gap: 5 }, 'c');

  test('the one that leaves less binds, and it is said which', () => {
    const combined = combineSettings({}, { press, cutter });
    expect(combined).toMatchObject({ gripper: 14, tail: 12, sideMargins: [6, 8], gap: 5, bleed: 2, lay: 'left' });
    expect(combined.notes.map((note) => note.facts?.machine)).toEqual(['die-cutter', 'press', 'die-cutter', 'press']);
  });

  test('options override both', () => {
    expect(combineSettings({ gripper: 3, bar: 'none' }, { press, cutter })).toMatchObject({ gripper: 3, bar: undefined });
  });

  test.each([
    ['sheet-too-large-for-machine', { maxSheet: '1000x700' }, {}],
    ['sheet-too-small-for-machine', { minSheet: '1100x700' }, {}],
    ['board-caliper-outside-machine', { caliperMax: 0.4 }, { caliper: 0.5 }],
  ])('%s', (code, machine, board) => {
    const machines = { press: readRecord(pressSchema, machine, 'p'), board: readRecord(boardSchema, board, 'b') };
    expect(() => checkMachines({ width: 1020, height: 720 }, machines)).toThrow(code);
  });
});

describe('grain', () => {
  const sheet = { width: 1020, height: 720 };
  test('long and short follow the sheet; a square has neither', () => {
    expect(sheetGrainAxis('long', sheet)).toBe('x');
    expect(sheetGrainAxis('short', sheet)).toBe('y');
    expect(sheetGrainAxis('long', { width: 500, height: 700 })).toBe('y');
    expect(() => sheetGrainAxis('long', { width: 500, height: 500 })).toThrow('square-has-no-long-side');
  });

  test('rotations bring the fibres along the wished side', () => {
    expect(turnsForGrain('x', 'x')).toEqual([0, 2]);
    expect(turnsForGrain('x', 'y')).toEqual([1, 3]);
    expect(turnsForGrain('any', 'y')).toEqual([0, 1, 2, 3]);
  });
});
