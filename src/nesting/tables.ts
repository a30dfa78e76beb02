import { noFitPolygon } from '../geometry/no-fit.ts';
import { boxOf } from '../geometry/point.ts';
import { addTurns, turnBox, turnRing, type Turn } from '../geometry/turn.ts';
import { centreOffset, type Prepared } from './prepare.ts';
import { snugOffsets } from './tables-contacts.ts';
import { noFitRaster } from './tables-contour.ts';
import { DEPTHS_PER_STEP, type Raster } from './tables-raster.ts';

/**
 * How deep any two poses overlap, clearance included, by the offset of their centres. For the ordered pair (standing
 * pose s, moving pose m), index s · poses + m, the offset d = centre of m − centre of s is looked up at raster place
 * (a·dx + b·dy + x, a·dy − b·dx + y): a quarter turn, a scale and a shift. Depth in µm is the value there times `unit`.
 */
export interface Tables {
  /** All rasters, one after another. */
  readonly depths: Int16Array;
  readonly base: Int32Array;
  readonly columns: Int32Array;
  readonly rows: Int32Array;
  readonly a: Float64Array;
  readonly b: Float64Array;
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly unit: Float64Array;
  /** Beyond these distances of the centres nothing overlaps. */
  readonly reachX: Float64Array;
  readonly reachY: Float64Array;
  /** Step of the coarsest raster, µm. */
  readonly coarsest: number;
  /** For each pair, offsets at which the moving pose lies snugly against the standing one: x and y in turns. */
  readonly snug: readonly Float64Array[];
}

/** Step of the rasters, µm: this unless the offsets' box asks for finer or coarser ones. */
const USUAL_STEP = 500;
/** A raster has at least and at most so many steps along its longer side. */
const LEAST_STEPS = 200;
const MOST_STEPS = 500;
/** Nodes of all rasters together; many parts get coarser ones. */
export const MOST_NODES = 8e6;

const COS = [1, 0, -1, 0];
const SIN = [0, 1, 0, -1];

/** How an ordered pair of poses is looked up: the raster of `first` against `second` turned, in the axes of the turned first. */
interface View {
  readonly key: string;
  readonly first: number;
  readonly second: number;
  readonly turn: Turn;
  readonly frameTurn: Turn;
  /** −1 where the standing pose is the second: the offset changes its sign. */
  readonly sign: 1 | -1;
}

interface Sheet {
  readonly raster: Raster;
  readonly base: number;
  readonly snug: Float64Array;
}

export function tablesOf(prepared: Prepared, mostNodes = MOST_NODES): Tables {
  const views = viewsOf(prepared);
  const sheets = sheetsOf(prepared, views, mostNodes);
  const { poses } = prepared;
  const whole = () => new Int32Array(views.length);
  const real = () => new Float64Array(views.length);
  const tables = { base: whole(), columns: whole(), rows: whole(), a: real(), b: real(), x: real(), y: real(), unit: real(), reachX: real(), reachY: real(), snug: [] as Float64Array[] };
  views.forEach((view, pair) => {
    if (!view) return;
    const { raster, base, snug } = sheets.get(view.key)!;
    const scale = view.sign / raster.step;
    tables.base[pair] = base;
    tables.columns[pair] = raster.columns;
    tables.rows[pair] = raster.rows;
    tables.a[pair] = COS[view.frameTurn] * scale;
    tables.b[pair] = SIN[view.frameTurn] * scale;
    tables.x[pair] = -raster.originX / raster.step;
    tables.y[pair] = -raster.originY / raster.step;
    tables.unit[pair] = raster.step / DEPTHS_PER_STEP;
    tables.snug[pair] = turnOffsets(snug, view.frameTurn, view.sign);
    const standing = poses[Math.floor(pair / poses.length)];
    const moving = poses[pair % poses.length];
    const clearance = clearanceOf(prepared, view);
    tables.reachX[pair] = (standing.width + moving.width) / 2 + clearance;
    tables.reachY[pair] = (standing.height + moving.height) / 2 + clearance;
  });
  const coarsest = Math.max(...[...sheets.values()].map(({ raster }) => raster.step));
  return { ...tables, coarsest, depths: joined([...sheets.values()]) };
}

/** One view for each ordered pair of poses; none where the moving pose is a keep-out. One raster serves both orders. */
function viewsOf({ poses, shapes }: Prepared): (View | undefined)[] {
  return poses.flatMap((standing) =>
    poses.map((moving) => {
      if (!shapes[moving.shape].isPart) return undefined;
      const swapped = standing.shape > moving.shape || (standing.shape === moving.shape && addTurns(moving.turn, -standing.turn) === 3);
      const [frame, other] = swapped ? [moving, standing] : [standing, moving];
      const turn = addTurns(other.turn, -frame.turn);
      return { key: `${frame.shape} ${other.shape} ${turn}`, first: frame.shape, second: other.shape, turn, frameTurn: frame.turn, sign: swapped ? -1 : 1 };
    }),
  );
}

function sheetsOf(prepared: Prepared, views: readonly (View | undefined)[], mostNodes: number): Map<string, Sheet> {
  const wanted = new Map(views.flatMap((view) => (view ? [[view.key, view]] : [])));
  let nodes = 0;
  for (const view of wanted.values()) {
    const { width, height } = offsetsBox(prepared, view);
    nodes += (width * height) / usualStep(width, height) ** 2;
  }
  const coarser = Math.sqrt(Math.max(1, nodes / mostNodes));
  const sheets = new Map<string, Sheet>();
  let base = 0;
  for (const [key, view] of wanted) {
    const { width, height } = offsetsBox(prepared, view);
    const raster = overlapRaster(prepared, view, Math.ceil(usualStep(width, height) * coarser));
    sheets.set(key, { raster, base, snug: snugOffsets(raster, prepared.shapes[view.first].ring, prepared.shapes[view.second].ring, view.turn) });
    base += raster.depths.length;
  }
  return sheets;
}

function joined(sheets: readonly Sheet[]): Int16Array {
  const depths = new Int16Array(sheets.reduce((sum, { raster }) => sum + raster.depths.length, 0));
  for (const { raster, base } of sheets) depths.set(raster.depths, base);
  return depths;
}

function turnOffsets(offsets: Float64Array, turn: Turn, sign: number): Float64Array {
  const turned = new Float64Array(offsets.length);
  for (let k = 0; k < offsets.length; k += 2) {
    turned[k] = sign * (COS[turn] * offsets[k] - SIN[turn] * offsets[k + 1]);
    turned[k + 1] = sign * (SIN[turn] * offsets[k] + COS[turn] * offsets[k + 1]);
  }
  return turned;
}

function clearanceOf({ shapes }: Prepared, { first, second }: View): number {
  return shapes[first].isPart ? shapes[second].clearance : shapes[first].clearance;
}

/** Extent of the offsets at which a pair is too near. */
function offsetsBox(prepared: Prepared, view: View): { width: number; height: number } {
  const a = boxOf(prepared.shapes[view.first].ring);
  const b = turnBox(boxOf(prepared.shapes[view.second].ring), view.turn);
  const rim = 2 * clearanceOf(prepared, view);
  return { width: a.maxX - a.minX + b.maxX - b.minX + rim, height: a.maxY - a.minY + b.maxY - b.minY + rim };
}

function usualStep(width: number, height: number): number {
  const extent = Math.max(width, height);
  return Math.max(1, Math.min(Math.max(USUAL_STEP, extent / MOST_STEPS), extent / LEAST_STEPS));
}

/** Raster over the offsets between centres at which `second`, turned, comes too near to `first`. */
function overlapRaster(prepared: Prepared, view: View, step: number): Raster {
  const a = prepared.shapes[view.first].ring;
  const b = prepared.shapes[view.second].ring;
  const raster = noFitRaster(noFitPolygon(a, turnRing(b, view.turn), clearanceOf(prepared, view)), step);
  const shift = centreOffset(a, b, view.turn);
  return { ...raster, originX: raster.originX + shift.x, originY: raster.originY + shift.y };
}
