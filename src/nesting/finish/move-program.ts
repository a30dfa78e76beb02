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

/** What moving a body aside costs against moving one forward by as much: nobody steps aside for nothing. */
const ASIDE_COST = 0.02;

/** Which way `push` moves: −1 towards smaller coordinates, 1 towards larger ones. */
export interface Direction {
  readonly axis: 'x' | 'y';
  readonly sign: -1 | 1;
}

/**
 * Moves all bodies at once so that the one furthest back along the direction comes as far forward as can be, and all of
 * them together too. Rules that hold with more than `margin` keep that margin, tighter ones are not tightened: standing still
 * is always allowed. Returns false when the program failed.
 */
export function push(bodies: Bodies, contacts: readonly Contact[], trust: number, margin: number, { axis, sign }: Direction): boolean {
  const program = createLinearProgram('minimise');
  try {
    addMoves(program, bodies, trust, axis === 'x' ? -sign : 0, axis === 'y' ? -sign : 0);
    const aside = Array.from(bodies.x, () => program.addColumn(ASIDE_COST));
    const rear = program.addColumn(bodies.count, -Infinity, Infinity);
    const rules = contacts.map((contact) => ruleRow(contact, { columns: [], values: [] }, Math.min(margin, contact.distance - contact.required)));
    program.addRows([...rules, ...rearRows(bodies, rear, { axis, sign }), ...asideRows(aside, axis)]);
    const result = program.solve(ITERATIONS_PER_BODY * (bodies.count + 1));
    if (result.status !== 'optimal') return false;
    applyMoves(bodies, result.values);
    return true;
  } finally {
    program.dispose();
  }
}

/** The column `rear` is at least every movable body's distance from the end it moves away from, less a constant. */
function rearRows(bodies: Bodies, rear: number, { axis, sign }: Direction): ProgramRow[] {
  const place = bodies[axis];
  const end = sign < 0 ? (axis === 'x' ? bodies.maxX : bodies.maxY) : axis === 'x' ? bodies.minX : bodies.minY;
  return Array.from(place, (at, i) => ({ lower: -sign * (at - end[i]), upper: Infinity, columns: [rear, axis === 'x' ? 2 * i : 2 * i + 1], values: [1, sign] })).filter((_, i) => bodies.movable[i]);
}

/** Column `aside[i]` is at least the length of body i's move across the axis. */
function asideRows(aside: readonly number[], axis: 'x' | 'y'): ProgramRow[] {
  return aside.flatMap((column, i) => [1, -1].map((sign) => ({ lower: 0, upper: Infinity, columns: [column, axis === 'x' ? 2 * i + 1 : 2 * i], values: [1, sign] })));
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
