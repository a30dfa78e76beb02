import { beforeAll, describe, expect, test } from 'vitest';
import { createLinearProgram, prepareLinearPrograms } from '../../src/nesting/linear-program.ts';

beforeAll(() => prepareLinearPrograms());

describe('a linear program', () => {
  test('is solved, cut by a row and solved again from where it stood', () => {
    const program = createLinearProgram('maximise');
    const x = program.addColumn(3);
    const y = program.addColumn(2, 0, 4);
    program.addRows([{ lower: -Infinity, upper: 10, columns: [x, y], values: [1, 1] }]);
    const first = program.solve(1000);
    expect(first.status).toBe('optimal');
    expect(first.objective).toBeCloseTo(30, 9);
    expect(Array.from(first.values)).toEqual([10, 0]);
    const row = program.addRows([{ lower: -Infinity, upper: 18, columns: [x, y], values: [2, 1] }]);
    const second = program.solve(1000);
    expect(second.objective).toBeCloseTo(28, 9);
    expect(Array.from(second.values)).toEqual([8, 2]);
    expect(Array.from(second.rowDuals)).toEqual([1, 1]);
    program.setRowBounds(row, -Infinity, 100);
    expect(program.solve(1000).objective).toBeCloseTo(30, 9);
    program.deleteRows([row]);
    program.setBounds(x, 0, 5);
    expect(program.rows).toBe(1);
    expect(program.solve(1000).objective).toBeCloseTo(23, 9);
    program.dispose();
  });

  test('tells infeasible, unbounded and cut short apart', () => {
    const infeasible = createLinearProgram('minimise');
    infeasible.addColumn(1, 0, 1);
    infeasible.addRows([{ lower: 2, upper: Infinity, columns: [0], values: [1] }]);
    expect(infeasible.solve(100).status).toBe('infeasible');
    infeasible.dispose();

    const unbounded = createLinearProgram('maximise');
    unbounded.addColumn(1);
    unbounded.addColumn(1);
    unbounded.addRows([{ lower: -Infinity, upper: 1, columns: [0, 1], values: [1, -1] }]);
    expect(['unbounded', 'infeasible']).toContain(unbounded.solve(100).status);
    unbounded.dispose();

    const short = createLinearProgram('maximise');
    for (let i = 0; i < 30; i++) short.addColumn(1 + (i % 7), 0, 10);
    short.addRows(Array.from({ length: 30 }, (_, r) => ({ lower: -Infinity, upper: 20 + r, columns: Array.from({ length: 30 }, (_, i) => i), values: Array.from({ length: 30 }, (_, i) => 1 + ((i * r) % 5)) })));
    expect(short.solve(1).status).toBe('iterations');
    expect(short.solve(10_000).status).toBe('optimal');
    short.dispose();
  });
});
