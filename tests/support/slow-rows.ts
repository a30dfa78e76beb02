import { freeIntervals } from '../../src/geometry/no-fit-slices.ts';
import { noFitPolygon, type NoFit } from '../../src/geometry/no-fit.ts';
import { boxOf, shiftRing, type Box, type Ring } from '../../src/geometry/point.ts';
import { turnRing } from '../../src/geometry/turn.ts';
import { requiredGap, type Problem } from '../../src/layout/problem.ts';

/**
 * What a careful worker counts with rows and nothing else, slow and obvious: one or two outlines by turns in a row, level
 * at the foot or at the head; rows all alike or two kinds by turns; every shift of the second row on a coarse grid; both
 * ways round. Pitches are exact, from the no-fit polygons. A keep-out is given a straight cut through the sheet.
 */
export function handCount(problem: Problem): number {
  return Math.max(...clearBoxes(problem).map((boxes) => boxes.reduce((sum, box) => sum + bestInBox(problem, box), 0)));
}

/** Ways to cut the usable area straight past the keep-outs (one at most is expected). */
function clearBoxes({ usable, keepOuts }: Problem): Box[][] {
  if (keepOuts.length === 0) return [[usable]];
  const [{ ring, clearance }] = keepOuts;
  const { minX, minY, maxX, maxY } = boxOf(ring);
  const spansWidth = minX <= usable.minX && maxX >= usable.maxX;
  if (spansWidth) return [[{ ...usable, maxY: minY - clearance }, { ...usable, minY: maxY + clearance }]];
  return [[{ ...usable, maxX: minX - clearance }], [{ ...usable, maxY: minY - clearance }]];
}

interface RowOfTwo {
  readonly rings: readonly Ring[];
  /** Lower left corners of the boxes within one period. */
  readonly at: readonly (readonly [number, number])[];
  readonly period: number;
}

const SHIFTS_TRIED = 12;

function bestInBox(problem: Problem, box: Box): number {
  const upright = problem.parts[0].turns.map((turn) => toOrigin(turnRing(problem.parts[0].outline, turn)));
  const mirrored = upright.map((ring) => ring.map(({ x, y }) => ({ x: y, y: x })).toReversed());
  const [w, h] = [box.maxX - box.minX, box.maxY - box.minY];
  return Math.max(bestStack(upright, w, h, requiredGap(problem.rules)), bestStack(mirrored, h, w, requiredGap(problem.rules)));
}

function toOrigin(ring: Ring): Ring {
  const { minX, minY } = boxOf(ring);
  return shiftRing(ring, { x: -minX, y: -minY });
}

function bestStack(rings: readonly Ring[], width: number, depth: number, gap: number): number {
  const clear = clearance(gap);
  const rows = rings.flatMap((a, i) => [rowOf([a], [0], clear), ...rings.slice(i + 1).flatMap((b) => [0, boxOf(a).maxY - boxOf(b).maxY].map((lift) => rowOf([a, b], [0, lift], clear)))]);
  let best = 0;
  for (const lower of rows) {
    for (const upper of rows) {
      if (lower.period !== upper.period && lower !== upper && (lower.rings.length > 1 || upper.rings.length > 1)) continue;
      for (let k = 0; k < SHIFTS_TRIED; k++) best = Math.max(best, countStack(lower, upper, Math.round((k * upper.period) / SHIFTS_TRIED), width, depth, clear));
    }
  }
  return best;
}

type Clear = (axis: 'x' | 'y', a: Ring, b: Ring, across: number) => number;

/** Least distance along the axis from which on b stays clear of a; remembered, since the rows ask the same again. */
function clearance(gap: number): Clear {
  const pairs = new Map<Ring, Map<Ring, { noFit: NoFit; answers: Map<string, number> }>>();
  return (axis, a, b, across) => {
    const ofA = pairs.get(a) ?? new Map<Ring, { noFit: NoFit; answers: Map<string, number> }>();
    pairs.set(a, ofA);
    const pair = ofA.get(b) ?? { noFit: noFitPolygon(a, b, gap), answers: new Map<string, number>() };
    ofA.set(b, pair);
    const key = `${axis}${across}`;
    const known = pair.answers.get(key) ?? freeIntervals(pair.noFit, axis, across).at(-1)!.from;
    pair.answers.set(key, known);
    return known;
  };
}

function rowOf(rings: readonly Ring[], lifts: readonly number[], clear: Clear): RowOfTwo {
  const foot = Math.min(...lifts);
  const x = [0, ...rings.slice(1).map((ring, i) => clear('x', rings[0], ring, lifts[i + 1]))];
  let period = 1;
  rings.forEach((a, i) => rings.forEach((b, j) => (period = Math.max(period, x[i] - x[j] + clear('x', a, b, lifts[j] - lifts[i])))));
  return { rings, at: x.map((value, i) => [value, lifts[i] - foot]), period };
}

interface Placed {
  readonly ring: Ring;
  readonly x: number;
  readonly y: number;
}

function blanksOf(row: RowOfTwo, from: number, width: number): Placed[] {
  const placed: Placed[] = [];
  for (let i = 0; ; i++) {
    const k = i % row.rings.length;
    const ring = row.rings[k];
    const x = from + row.at[k][0] + Math.floor(i / row.rings.length) * row.period;
    if (x + boxOf(ring).maxX > width) return placed;
    placed.push({ ring, x, y: row.at[k][1] });
  }
}

function countStack(lower: RowOfTwo, upper: RowOfTwo, shift: number, width: number, depth: number, clear: Clear): number {
  const rows = [blanksOf(lower, 0, width), blanksOf(upper, shift, width)];
  const heights = rows.map((row) => Math.max(0, ...row.map(({ ring, y }) => y + boxOf(ring).maxY)));
  const steps = [pitch(rows[0], rows[1], clear), pitch(rows[1], rows[0], clear)];
  const same = [pitch(rows[0], rows[0], clear), pitch(rows[1], rows[1], clear)];
  let count = 0;
  for (let i = 0, y = 0, before = -Infinity; y + heights[i % 2] <= depth; i++) {
    if (rows[i % 2].length === 0) return count;
    count += rows[i % 2].length;
    const next = Math.max(y + steps[i % 2], before + same[(i + 1) % 2]);
    before = y;
    y = next;
  }
  return count;
}

function pitch(lower: readonly Placed[], upper: readonly Placed[], clear: Clear): number {
  let most = 0;
  for (const a of lower) for (const b of upper) most = Math.max(most, clear('y', a.ring, b.ring, b.x - a.x) + a.y - b.y);
  return most;
}
