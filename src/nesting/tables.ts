import { noFitPolygon } from '../geometry/no-fit.ts';
import { boxOf, type Box } from '../geometry/point.ts';
import { turnBox, turnRing, type Turn } from '../geometry/turn.ts';
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
  /** For each pair, offsets at which the moving pose lies snugly against the standing one: x and y in turns. */
  readonly snug: readonly Float64Array[];
}

/** Step of the rasters, µm: this unless the offsets' box asks for finer or coarser ones. */
const USUAL_STEP = 500;
/** A raster has at least and at most so many steps along its longer side. */
const LEAST_STEPS = 200;
const MOST_STEPS = 500;

const COS = [1, 0, -1, 0];
const SIN = [0, 1, 0, -1];

export function tablesOf(prepared: Prepared): Tables {
  const { poses, shapes } = prepared;
  const pairs = poses.length * poses.length;
  const rasters = new Map<string, { raster: Raster; base: number; snug: Float64Array }>();
  let size = 0;
  const rasterFor = (first: number, second: number, turn: Turn) => {
    const key = `${first} ${second} ${turn}`;
    let known = rasters.get(key);
    if (!known) {
      const raster = overlapRaster(prepared, first, second, turn);
      known = { raster, base: size, snug: snugOffsets(raster, shapes[first].ring, shapes[second].ring, turn) };
      size += known.raster.depths.length;
      rasters.set(key, known);
    }
    return known;
  };
  const whole = () => new Int32Array(pairs);
  const real = () => new Float64Array(pairs);
  const tables = { base: whole(), columns: whole(), rows: whole(), a: real(), b: real(), x: real(), y: real(), unit: real(), reachX: real(), reachY: real(), snug: [] as Float64Array[] };
  poses.forEach((standing, s) => {
    poses.forEach((moving, m) => {
      if (!shapes[moving.shape].isPart) return;
      // One raster serves both orders: swapped, the offset changes its sign.
      const swapped = standing.shape > moving.shape || (standing.shape === moving.shape && (moving.turn - standing.turn + 4) % 4 === 3);
      const [frame, other] = swapped ? [moving, standing] : [standing, moving];
      const { raster, base, snug } = rasterFor(frame.shape, other.shape, ((other.turn - frame.turn + 4) % 4) as Turn);
      const scale = (swapped ? -1 : 1) / raster.step;
      const pair = s * poses.length + m;
      tables.base[pair] = base;
      tables.columns[pair] = raster.columns;
      tables.rows[pair] = raster.rows;
      tables.a[pair] = COS[frame.turn] * scale;
      tables.b[pair] = SIN[frame.turn] * scale;
      tables.x[pair] = -raster.originX / raster.step;
      tables.y[pair] = -raster.originY / raster.step;
      tables.unit[pair] = raster.step / DEPTHS_PER_STEP;
      tables.snug[pair] = turnOffsets(snug, frame.turn, swapped ? -1 : 1);
      const clearance = clearanceOf(prepared, standing.shape, moving.shape);
      tables.reachX[pair] = (standing.width + moving.width) / 2 + clearance;
      tables.reachY[pair] = (standing.height + moving.height) / 2 + clearance;
    });
  });
  const depths = new Int16Array(size);
  for (const { raster, base } of rasters.values()) depths.set(raster.depths, base);
  return { ...tables, depths };
}

function turnOffsets(offsets: Float64Array, turn: Turn, sign: number): Float64Array {
  const turned = new Float64Array(offsets.length);
  for (let k = 0; k < offsets.length; k += 2) {
    turned[k] = sign * (COS[turn] * offsets[k] - SIN[turn] * offsets[k + 1]);
    turned[k + 1] = sign * (SIN[turn] * offsets[k] + COS[turn] * offsets[k + 1]);
  }
  return turned;
}

function clearanceOf({ shapes }: Prepared, first: number, second: number): number {
  return shapes[first].isPart ? shapes[second].clearance : shapes[first].clearance;
}

/** Raster over the offsets between centres at which `second`, turned, comes too near to `first`. */
function overlapRaster(prepared: Prepared, first: number, second: number, turn: Turn): Raster {
  const a = prepared.shapes[first].ring;
  const b = prepared.shapes[second].ring;
  const clearance = clearanceOf(prepared, first, second);
  const step = stepFor([boxOf(a), turnBox(boxOf(b), turn)], clearance);
  const raster = noFitRaster(noFitPolygon(a, turnRing(b, turn), clearance), step);
  const shift = centreOffset(a, b, turn);
  return { ...raster, originX: raster.originX + shift.x, originY: raster.originY + shift.y };
}

function stepFor(boxes: readonly Box[], clearance: number): number {
  const width = boxes.reduce((sum, box) => sum + box.maxX - box.minX, 2 * clearance);
  const height = boxes.reduce((sum, box) => sum + box.maxY - box.minY, 2 * clearance);
  const extent = Math.max(width, height);
  return Math.max(1, Math.round(Math.min(Math.max(USUAL_STEP, extent / MOST_STEPS), extent / LEAST_STEPS)));
}
