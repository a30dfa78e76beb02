import { inputError } from '../base/issue.ts';
import type { CurvePath } from '../geometry/curve.ts';
import { parsePathData } from '../geometry/path-data.ts';
import { turnOfDegrees, TURNS, type Turn } from '../geometry/turn.ts';
import { isInside, outlineDistance } from './judge-distance.ts';
import { outlineOfLoop, outlineOfPath, outlineOfRing, type Outline } from './judge-outline.ts';
import { shapeOf, turnOutline, type Shape, type Spot } from './judge-shape.ts';
import { JUDGE_TOLERANCE_MM, OUTLINE_TOLERANCE_MM } from './judge-tolerance.ts';
import type { Design, MmRing } from './layout-file.ts';
import { micronRing } from './rings.ts';
import { checkSimple } from './simple-ring.ts';

/** A design made ready for judging. */
export interface JudgedDesign {
  readonly id: string;
  /** The true outline in each of the four rotations. */
  readonly shapes: readonly Shape[];
  readonly turns: ReadonlySet<Turn>;
  /** Where polygon and true curves differ by more than they may; place in the design's coordinates. */
  readonly mismatch?: { readonly place: Spot; readonly byMm: number };
}

/** Throws an InputError when a ring is not simple, a rotation no quarter turn or the true outline cannot be read. */
export function judgedDesign(design: Design): JudgedDesign {
  checkRing(design.outline, `design ${design.id}: outline`);
  for (const [i, opening] of design.openings.entries()) checkRing(opening, `design ${design.id}: openings[${i}]`);
  const polygon = shapeOf(outlineOfRing(design.outline));
  const { outline, mismatch } = trueOutline(design, polygon);
  return {
    id: design.id,
    shapes: TURNS.map((turn) => shapeOf(turnOutline(outline, turn))),
    turns: new Set(design.rotations.map((degrees) => quarterTurn(degrees, `design ${design.id}: rotations`))),
    ...(mismatch && { mismatch }),
  };
}

export function quarterTurn(degrees: number, where: string): Turn {
  const turn = turnOfDegrees(degrees);
  if (turn === undefined) throw inputError('rotation-not-quarter', { where, facts: { rotation: degrees } });
  return turn;
}

export function checkRing(ring: MmRing, where: string): void {
  checkSimple(micronRing(ring), where);
}

interface TrueOutline {
  readonly outline: Outline;
  readonly mismatch?: JudgedDesign['mismatch'];
}

/**
 * The drawing's own outline where the file names it. Without it, a closed cutting path that fits the polygon is the true
 * outline; else all cutting paths together must fit the polygon, which is then the truth. Without any, nothing is held
 * against the polygon.
 */
function trueOutline({ id, drawing }: Design, polygon: Shape): TrueOutline {
  if (drawing?.outline !== undefined) {
    const where = `design ${id}: drawing.outline`;
    const loops = curves(drawing.outline, where);
    const outline = outlineOfLoop(loops[0] ?? []);
    if (loops.length !== 1 || outline.xs.length < 3) throw inputError('true-outline-not-one-loop', { where, facts: { loops: loops.length } });
    return { outline, ...worst(loopDeviations(outline, polygon)) };
  }
  const knives = (drawing?.paths ?? []).flatMap(({ role, d }, i) => (role === 'Cutting' ? curves(d, `design ${id}: drawing.paths[${i}]`) : []));
  if (knives.length === 0) return { outline: polygon };
  const fitting = knives.filter(isClosed).map(outlineOfLoop).find((loop) => loop.xs.length >= 3 && !worst(loopDeviations(loop, polygon)));
  return fitting ? { outline: fitting } : { outline: polygon, ...worst(knifeDeviations(knives, polygon)) };
}

interface Deviation {
  readonly place: Spot;
  readonly byMm: number;
  readonly allowed: number;
}

/** The polygon holds the true outline and lies close around it. */
function loopDeviations(loop: Outline, polygon: Shape): Deviation[] {
  const shape = shapeOf(loop);
  return [
    ...corners(loop).map((place) => ({ place, byMm: outlineDistance(polygon, place), allowed: isInside(polygon, place) ? OUTLINE_TOLERANCE_MM : JUDGE_TOLERANCE_MM })),
    ...corners(polygon).map((place) => ({ place, byMm: outlineDistance(shape, place), allowed: isInside(shape, place) ? JUDGE_TOLERANCE_MM : OUTLINE_TOLERANCE_MM })),
  ];
}

/** No knife leaves the polygon, and every corner of the polygon has a knife beside it. */
function knifeDeviations(knives: readonly CurvePath[], polygon: Shape): Deviation[] {
  const lines = knives.map((path) => shapeOf(outlineOfPath(path)));
  return [
    ...lines.flatMap(corners).map((place) => ({ place, byMm: outlineDistance(polygon, place), allowed: isInside(polygon, place) ? Infinity : JUDGE_TOLERANCE_MM })),
    ...corners(polygon).map((place) => ({ place, byMm: Math.min(...lines.map((line) => outlineDistance(line, place))), allowed: OUTLINE_TOLERANCE_MM })),
  ];
}

function worst(deviations: readonly Deviation[]): { mismatch: Deviation } | undefined {
  let mismatch: Deviation | undefined;
  for (const deviation of deviations) {
    if (deviation.byMm > deviation.allowed && deviation.byMm > (mismatch?.byMm ?? 0)) mismatch = deviation;
  }
  return mismatch && { mismatch };
}

function corners({ xs, ys }: Outline): Spot[] {
  return Array.from(xs, (x, i) => ({ x, y: ys[i]! }));
}

function isClosed(path: CurvePath): boolean {
  const [from, to] = [path[0]?.from, path.at(-1)?.to];
  return from !== undefined && to !== undefined && from.x === to.x && from.y === to.y;
}

function curves(d: string, where: string): CurvePath[] {
  const { paths, faultAt } = parsePathData(d);
  if (faultAt !== undefined) throw inputError('path-data-not-valid', { where, facts: { position: faultAt + 1 } });
  return paths.filter((path) => path.length > 0);
}
