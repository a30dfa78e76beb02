import { MICRONS_PER_MM, toMillimetres } from '../base/units.ts';
import { reversePath } from '../geometry/affine.ts';
import type { Curve, CurvePath } from '../geometry/curve.ts';
import { flattenLoop } from '../geometry/flatten.ts';
import { loopArea } from '../geometry/loop-area.ts';
import { boxOf, type Box, type Ring } from '../geometry/point.ts';
import { ringFaults } from '../geometry/validity.ts';
import { middleOf, type Arrangement } from './arrangement.ts';
import { outerCycles, type Cycle, type Step } from './cycles.ts';
import type { Blank, Role, RoleReason, RulePath } from './dieline.ts';
import { nest, type Outline } from './outline.ts';
import { isFrom, type EdgeRole, type Outlines } from './outlines.ts';
import { LEAST_OPENING_AREA_MM2 } from './tolerances.ts';
import { traceSteps } from './trace.ts';

/** What belongs to one outline: everything but its number. */
export interface Contents {
  readonly outline: Outline;
  readonly openings: readonly Cycle[];
  /** Edges within or on the outline. */
  readonly edges: readonly number[];
}

/** Parts the edges by the outlines they lie in; what lies in none is returned apart. */
export function sortIntoOutlines(graph: Arrangement, roles: readonly EdgeRole[], found: Outlines): { contents: Contents[]; outside: number[] } {
  const { outlines, locate } = found;
  const owner = new Int32Array(graph.edges.length).fill(-1);
  outlines.forEach(({ cycle }, i) => cycle.steps.forEach(({ edge }) => (owner[edge] = i)));
  const lists: number[][] = outlines.map(() => []);
  const outside: number[] = [];
  for (let edge = 0; edge < owner.length; edge++) {
    const at = owner[edge] >= 0 ? undefined : locate(middleOf(graph, edge));
    const outline = at?.place === 'inside' ? at.outline : owner[edge];
    (outline < 0 ? outside : lists[outline]).push(edge);
  }
  const openings = findOpenings(graph, roles, found);
  return { contents: outlines.map((outline, i) => ({ outline, openings: openings[i], edges: lists[i] })), outside };
}

/** Of each outline the closed loops of cut lines directly within it. */
function findOpenings(graph: Arrangement, roles: readonly EdgeRole[], { outlines, from, cycles }: Outlines): Cycle[][] {
  const cut = (from === 'cut' ? cycles : outerCycles(graph, (edge) => isFrom(roles[edge], 'cut'))).cycles;
  const own = new Map(outlines.map(({ cycle }, i) => [cycle, i]));
  const onOutline = new Set(outlines.flatMap(({ cycle }) => cycle.steps.map(({ edge }) => edge)));
  const within = cut.filter((cycle) => cycle.area >= LEAST_OPENING && cycle.steps.every(({ edge }) => !onOutline.has(edge)));
  const openings: Cycle[][] = outlines.map(() => []);
  const { loops, holders } = nest([...own.keys(), ...within]);
  loops.forEach(({ cycle }, i) => {
    const outline = holders[i] < 0 ? undefined : own.get(loops[holders[i]].cycle);
    if (outline !== undefined) openings[outline].push(cycle);
  });
  return openings;
}

const LEAST_OPENING = LEAST_OPENING_AREA_MM2 * MICRONS_PER_MM ** 2;

/** Finds the order of a line's stretches again. */
export type CurveOrder = ReadonlyMap<Curve, number>;

export function buildBlank(graph: Arrangement, roles: readonly EdgeRole[], order: CurveOrder, describe: (line: number) => string, contents: Contents): Omit<Blank, 'number'> {
  const outlineEdges = new Set(contents.outline.cycle.steps.map(({ edge }) => edge));
  const roleOf = (edge: number): Pick<EdgeRole, 'role' | 'reason' | 'line'> =>
    outlineEdges.has(edge) && roles[edge].role === 'Unknown' ? { role: 'Cutting', reason: 'outer outline', line: roles[edge].line } : roles[edge];
  const drawn = new Set<number>();
  const traced = [contents.outline.cycle, ...contents.openings].map((cycle) => traceLoop(graph, cycle));
  const loopRules = traced.flatMap(({ cycle: { steps }, curves }): RulePath[] => {
    const first = roleOf(steps[0].edge);
    if (steps.some(({ edge }) => roleOf(edge).role !== first.role || roleOf(edge).reason !== first.reason)) return [];
    for (const { edge } of steps) drawn.add(edge);
    return [{ role: first.role, reason: first.reason, curves, closed: true, source: describe(first.line) }];
  });
  const [{ curves: outline, box }, ...openings] = traced;
  const rest = contents.edges.filter((edge) => !drawn.has(edge));
  return {
    outline,
    openings: openings.map(({ curves }) => reversePath(curves)),
    rules: [...loopRules, ...rulePaths(graph, roleOf, order, describe, rest)],
    box,
    areaMm2: Math.abs(loopArea(outline)),
  };
}

/** A cycle as a loop that does not cross itself, and its box. */
interface TracedLoop {
  readonly cycle: Cycle;
  readonly curves: CurvePath;
  readonly box: Box;
}

/**
 * True curves, which keep to the cycle within the joining tolerance. Where curves meet in a cusp that is enough to cross;
 * such a loop is given in straight pieces instead, which are simple as the graph is.
 */
function traceLoop(graph: Arrangement, cycle: Cycle): TracedLoop {
  const curves = traceSteps(graph, cycle.steps, true);
  const rings = SIMPLE_AT_MM.map((toleranceMm) => () => flattenLoop(curves, { toleranceMm, side: 'outside' }).ring);
  const ring = rings[0]();
  const loop = isSimple(ring) || isSimple(rings[1]()) ? curves : straightLoop(cycle);
  // The box of a ring with tangents at the axis extremes is that of the true curves, to the micrometre.
  const isStraight = loop.every(({ kind }) => kind === 'line');
  return { cycle, curves: loop, box: isStraight ? boxOf(loop.map(({ from }) => from)) : inMillimetres(boxOf(ring)) };
}

/** Flattened coarsely, or where sides come near to one another finely, a loop must be simple, mm. */
const SIMPLE_AT_MM = [0.02, 0.001];

function isSimple(ring: Ring): boolean {
  return ringFaults(ring, { mostMeetings: 1 }).every(({ kind }) => kind === 'duplicate-point');
}

function straightLoop({ ring }: Cycle): CurvePath {
  const points = ring.map(({ x, y }) => ({ x: toMillimetres(x), y: toMillimetres(y) }));
  return points.map((from, i) => ({ kind: 'line', from, to: points[(i + 1) % points.length] }));
}

function inMillimetres({ minX, minY, maxX, maxY }: Box): Box {
  return { minX: toMillimetres(minX), minY: toMillimetres(minY), maxX: toMillimetres(maxX), maxY: toMillimetres(maxY) };
}

/** Connected stretches of the same line with the same role. */
export function rulePaths(graph: Arrangement, roleOf: (edge: number) => Pick<EdgeRole, 'role' | 'reason' | 'line'>, order: CurveOrder, describe: (line: number) => string, edges: readonly number[]): RulePath[] {
  const pieces = edges.map((edge) => {
    const { line, role, reason } = roleOf(edge);
    const { curve, start, end } = graph.covers[edge].find((cover) => cover.line === line)!;
    const [a, b] = graph.edges[edge];
    const step: Step = start < end ? { edge, from: a, to: b } : { edge, from: b, to: a };
    return { line, role, reason, step, place: order.get(curve)!, parameter: Math.min(start, end) };
  });
  pieces.sort((p, q) => p.place - q.place || p.parameter - q.parameter);
  const runs: { line: number; role: Role; reason: RoleReason; steps: Step[] }[] = [];
  for (const { line, role, reason, step } of pieces) {
    const last = runs[runs.length - 1];
    const goesOn = last && last.line === line && last.role === role && last.reason === reason && last.steps[last.steps.length - 1].to === step.from;
    if (goesOn) last.steps.push(step);
    else runs.push({ line, role, reason, steps: [step] });
  }
  return runs.map(({ line, role, reason, steps }) => {
    const closed = steps.length > 1 && steps[0].from === steps[steps.length - 1].to;
    return { role, reason, curves: traceSteps(graph, steps, closed), closed, source: describe(line) };
  });
}

/** Box of the true curves: a ring with tangents at the axis extremes has it, to the micrometre. */
export function boxOfLoop(loop: CurvePath): Box {
  if (loop.every(({ kind }) => kind === 'line')) return boxOf(loop.map(({ from }) => from));
  return inMillimetres(boxOf(flattenLoop(loop, { toleranceMm: BOX_TOLERANCE_MM, side: 'outside' }).ring));
}

/** The box does not depend on it; a coarse ring is a short one. */
const BOX_TOLERANCE_MM = 0.5;

/** Blanks in reading order: row by row from the upper left; in one row those whose heights overlap by half. */
export function inReadingOrder(blanks: readonly Omit<Blank, 'number'>[]): Blank[] {
  const rows: Omit<Blank, 'number'>[][] = [];
  for (const blank of blanks.toSorted((a, b) => b.box.maxY - a.box.maxY || a.box.minX - b.box.minX)) {
    const row = rows[rows.length - 1];
    if (row && sharedHeight(row[0].box, blank.box) >= 0.5) row.push(blank);
    else rows.push([blank]);
  }
  return rows.flatMap((row) => row.toSorted((a, b) => a.box.minX - b.box.minX)).map((blank, i) => ({ ...blank, number: i + 1 }));
}

function sharedHeight(a: Box, b: Box): number {
  return (Math.min(a.maxY, b.maxY) - Math.max(a.minY, b.minY)) / Math.min(a.maxY - a.minY, b.maxY - b.minY);
}
