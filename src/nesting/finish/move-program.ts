import { createLinearProgram } from '../linear-program.ts';
import type { ProgramRow } from '../linear-program.ts';
import type { Bodies } from './bodies.ts';
import { moveTo } from './bodies.ts';
import type { Contact } from './contacts.ts';

/** Simplex iterations per body allowed to one program; far more than was ever needed. */
const ITERATIONS_PER_BODY = 200;

/**
 * Moves all bodies at once, none by more than `trust` along either axis, so that the slack t common to all rules is as
 * large as can be, up to `wanted`: distance + normal · moves ≥ required + t. Returns t; undefined when the program failed.
 */
export function spread(bodies: Bodies, contacts: readonly Contact[], trust: number, wanted: number): number | undefined {
  const program = createLinearProgram('maximise');
  try {
    addMoves(program, bodies, trust);
    const slack = program.addColumn(1, -Infinity, wanted);
    program.addRows(contacts.map((contact) => ruleRow(contact, { columns: [slack], values: [-1] }, 0)));
    const result = program.solve(ITERATIONS_PER_BODY * (bodies.count + 1));
    if (result.status !== 'optimal') return undefined;
    applyMoves(bodies, result.values);
    return result.values[slack];
  } finally {
    program.dispose();
  }
}

/**
 * Moves all bodies at once towards smaller `costX` · x + `costY` · y with every rule kept by `margin`. Returns how much the
 * cost fell; undefined when the program failed or the rules cannot all be kept.
 */
export function push(bodies: Bodies, contacts: readonly Contact[], trust: number, margin: number, [costX, costY]: readonly [number, number]): number | undefined {
  const program = createLinearProgram('minimise');
  try {
    addMoves(program, bodies, trust, costX, costY);
    program.addRows(contacts.map((contact) => ruleRow(contact, { columns: [], values: [] }, margin)));
    const result = program.solve(ITERATIONS_PER_BODY * (bodies.count + 1));
    if (result.status !== 'optimal') return undefined;
    applyMoves(bodies, result.values);
    return -result.objective;
  } finally {
    program.dispose();
  }
}

/** Columns 2i and 2i + 1 are the moves of body i along x and y, held to its room. */
function addMoves(program: ReturnType<typeof createLinearProgram>, bodies: Bodies, trust: number, costX = 0, costY = 0): void {
  const { count, x, y, minX, minY, maxX, maxY } = bodies;
  for (let i = 0; i < count; i++) {
    program.addColumn(costX, Math.max(-trust, minX[i] - x[i]), Math.min(trust, maxX[i] - x[i]));
    program.addColumn(costY, Math.max(-trust, minY[i] - y[i]), Math.min(trust, maxY[i] - y[i]));
  }
}

function ruleRow({ first, second, distance, normalX, normalY, required }: Contact, more: { columns: number[]; values: number[] }, margin: number): ProgramRow {
  const columns = [2 * second, 2 * second + 1, ...(first < 0 ? [] : [2 * first, 2 * first + 1]), ...more.columns];
  const values = [normalX, normalY, ...(first < 0 ? [] : [-normalX, -normalY]), ...more.values];
  return { lower: required + margin - distance, upper: Infinity, columns, values };
}

function applyMoves(bodies: Bodies, values: Float64Array): void {
  for (let i = 0; i < bodies.count; i++) moveTo(bodies, i, bodies.x[i] + values[2 * i], bodies.y[i] + values[2 * i + 1]);
}
