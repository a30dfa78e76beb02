import type { Random } from '../../base/random.ts';
import type { Prepared } from '../prepare.ts';
import type { Tables } from '../tables.ts';

/** Passing over blanks out of reach counts an eighth of a look-up each, and each place looked at so many. */
const OVERHEAD = 4;

/**
 * Blanks on a sheet that may still overlap. Guided local search: every blank that overlaps moves to the place of least
 * weighted depth; pairs that stay in conflict gain weight, so that no conflict can hide (Voudouris and Tsang, EJOR 113,
 * 1999; for nesting: Egeblad, Nielsen and Odgaard, EJOR 183, 2007; Elkeran, EJOR 231, 2013).
 *
 * The movable blanks come first, what is fixed after them. `depth` and `weight` are square and symmetric over all of
 * them; the sheet's edge is hard: every centre lies in its pose's box. Lengths in µm.
 */
export class Crowd {
  readonly prepared: Prepared;
  readonly tables: Tables;
  readonly movable: number;
  readonly total: number;
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly pose: Int32Array;
  /** The part whose poses each movable blank may take; −1: any part's. */
  readonly choice: Int32Array;
  readonly depth: Float64Array;
  readonly weight: Float64Array;
  /** Number of others each one overlaps. */
  readonly conflicts: Int32Array;
  /** Sum of the depths of all pairs. */
  overlap = 0;
  /** Look-ups so far. */
  work = 0;

  private readonly poseCount: number;
  private readonly anyPart: readonly number[];
  // The neighbours of the blank that is being moved: factors of the look-up, weight, raster.
  private near = 0;
  private readonly nearA: Float64Array;
  private readonly nearB: Float64Array;
  private readonly nearX: Float64Array;
  private readonly nearY: Float64Array;
  private readonly nearWeight: Float64Array;
  private readonly nearBase: Int32Array;
  private readonly nearColumns: Int32Array;
  private readonly nearRows: Int32Array;
  // Where a descent stands.
  private atX = 0;
  private atY = 0;
  private atCost = 0;

  constructor(prepared: Prepared, tables: Tables, movable: number) {
    this.prepared = prepared;
    this.tables = tables;
    this.movable = movable;
    this.total = movable + prepared.fixed.length;
    this.poseCount = prepared.poses.length;
    this.anyPart = prepared.posesOf.flat();
    this.x = new Float64Array(this.total);
    this.y = new Float64Array(this.total);
    this.pose = new Int32Array(this.total);
    this.choice = new Int32Array(this.total).fill(-1);
    this.depth = new Float64Array(this.total * this.total);
    this.weight = new Float64Array(this.total * this.total).fill(1);
    this.conflicts = new Int32Array(this.total);
    this.nearA = new Float64Array(this.total);
    this.nearB = new Float64Array(this.total);
    this.nearX = new Float64Array(this.total);
    this.nearY = new Float64Array(this.total);
    this.nearWeight = new Float64Array(this.total);
    this.nearBase = new Int32Array(this.total);
    this.nearColumns = new Int32Array(this.total);
    this.nearRows = new Int32Array(this.total);
    prepared.fixed.forEach(({ pose, x, y }, k) => {
      this.pose[movable + k] = pose;
      this.x[movable + k] = x;
      this.y[movable + k] = y;
    });
  }

  posesFor(i: number): readonly number[] {
    const part = this.choice[i];
    return part < 0 ? this.anyPart : this.prepared.posesOf[part];
  }

  /** Puts a movable blank down, clamped to the sheet, without looking at the others. */
  place(i: number, pose: number, x: number, y: number): void {
    this.pose[i] = pose;
    this.x[i] = this.clampX(pose, x);
    this.y[i] = this.clampY(pose, y);
  }

  /** Measures every pair anew and forgets the weights. */
  refresh(): void {
    this.depth.fill(0);
    this.weight.fill(1);
    this.conflicts.fill(0);
    this.overlap = 0;
    for (let i = 0; i < this.movable; i++) this.measure(i, i + 1);
  }

  /** Depth of the deepest pair. */
  deepest(): number {
    let deepest = 0;
    for (const value of this.depth) if (value > deepest) deepest = value;
    return deepest;
  }

  /** One pass: every blank in conflict, in random order, moves if it finds a better place; then weights follow. */
  pass(random: Random): void {
    const order: number[] = [];
    for (let i = 0; i < this.movable; i++) if (this.conflicts[i] > 0) order.push(i);
    shuffle(order, random);
    for (const i of order) if (this.conflicts[i] > 0) this.move(i, random);
    this.adjustWeights();
  }

  /** Depth of a blank in a pose and place against all others, weighted; gives up beyond `bound`. */
  costAt(i: number, pose: number, x: number, y: number, bound: number): number {
    const { tables, poseCount, total } = this;
    const row = i * total;
    this.work += OVERHEAD + (total >> 3);
    let sum = 0;
    for (let j = 0; j < total; j++) {
      const pair = this.pose[j] * poseCount + pose;
      const dx = x - this.x[j];
      const dy = y - this.y[j];
      if (dx >= tables.reachX[pair] || -dx >= tables.reachX[pair] || dy >= tables.reachY[pair] || -dy >= tables.reachY[pair] || j === i) continue;
      const depth = this.depthOf(pair, dx, dy);
      if (depth > 0) {
        sum += depth * this.weight[row + j];
        if (sum >= bound) return sum;
      }
    }
    return sum;
  }

  /** Depth of a pair by the offset of the centres, µm; negative when apart. */
  private depthOf(pair: number, dx: number, dy: number): number {
    const { tables } = this;
    const gx = tables.a[pair] * dx + tables.b[pair] * dy + tables.x[pair];
    const gy = tables.a[pair] * dy - tables.b[pair] * dx + tables.y[pair];
    this.work++;
    return bilinear(tables.depths, tables.base[pair], tables.columns[pair], tables.rows[pair], gx, gy) * tables.unit[pair];
  }

  private measure(i: number, from: number): void {
    const { total, poseCount } = this;
    for (let j = from; j < total; j++) {
      if (j === i) continue;
      const pair = this.pose[j] * poseCount + this.pose[i];
      const depth = Math.max(0, this.depthOf(pair, this.x[i] - this.x[j], this.y[i] - this.y[j]));
      const old = this.depth[i * total + j];
      this.overlap += depth - old;
      this.depth[i * total + j] = depth;
      this.depth[j * total + i] = depth;
      const change = (depth > 0 ? 1 : 0) - (old > 0 ? 1 : 0);
      this.conflicts[i] += change;
      this.conflicts[j] += change;
    }
  }

  private weightedDepth(i: number): number {
    const row = i * this.total;
    let sum = 0;
    for (let j = 0; j < this.total; j++) sum += this.depth[row + j] * this.weight[row + j];
    return sum;
  }

  private move(i: number, random: Random): void {
    const { poses } = this.prepared;
    const now = this.weightedDepth(i);
    const here = this.pose[i];
    let bestPose = here;
    let bestX = this.x[i];
    let bestY = this.y[i];
    let bestCost = Infinity;
    for (const pose of this.posesFor(i)) {
      const { minX, minY, maxX, maxY, width, height } = poses[pose];
      const spread = (width + height) / 8;
      for (let k = 0; k < 16; k++) {
        let x: number;
        let y: number;
        if (k < 6) {
          x = minX + this.somewhere(maxX - minX, random);
          y = minY + this.somewhere(maxY - minY, random);
        } else if (k < 12) {
          x = this.clampX(pose, this.x[i] + random.bell() * spread);
          y = this.clampY(pose, this.y[i] + random.bell() * spread);
        } else {
          const j = random.below(this.movable);
          if (j === i) continue;
          const snug = this.tables.snug[this.pose[j] * this.poseCount + pose];
          const at = 2 * random.below(snug.length / 2);
          x = this.clampX(pose, this.x[j] + snug[at]);
          y = this.clampY(pose, this.y[j] + snug[at + 1]);
        }
        const cost = this.costAt(i, pose, x, y, bestCost);
        if (cost < bestCost) {
          bestCost = cost;
          bestPose = pose;
          bestX = x;
          bestY = y;
        }
      }
    }
    const size = (poses[here].width + poses[here].height) / 2;
    this.descend(i, bestPose, bestX, bestY, size * 0.04, size * 0.001, random);
    bestX = this.atX;
    bestY = this.atY;
    bestCost = this.atCost;
    this.descend(i, here, this.x[i], this.y[i], size * 0.02, size * 0.001, random);
    if (this.atCost <= bestCost) {
      bestPose = here;
      bestX = this.atX;
      bestY = this.atY;
      bestCost = this.atCost;
    }
    if (bestCost > 0) {
      this.descend(i, bestPose, bestX, bestY, size * 0.0005, size * 0.00002, random);
      bestX = this.atX;
      bestY = this.atY;
      bestCost = this.atCost;
    }
    if (bestCost >= now) return;
    this.pose[i] = bestPose;
    this.x[i] = bestX;
    this.y[i] = bestY;
    this.measure(i, 0);
  }

  /** Uniform in 0 … size, on the common pitch where there is one. */
  private somewhere(size: number, random: Random): number {
    const { pitch } = this.prepared;
    return pitch === 0 ? random.unit() * size : random.below(Math.floor(size / pitch) + 1) * pitch;
  }

  /** Pattern search from a place: four directions, axis-parallel or at random, each repeated while it helps; halving steps. */
  private descend(i: number, pose: number, x: number, y: number, first: number, last: number, random: Random): void {
    const reach = first * 12;
    this.gather(i, pose, x, y, reach);
    let fromX = x;
    let fromY = y;
    this.atX = x;
    this.atY = y;
    this.atCost = this.nearCost(x, y, Infinity);
    for (let step = first; step >= last && this.atCost > 0; step /= 2) {
      let ux = step;
      let uy = 0;
      if (random.word() >= 0x8000_0000) {
        const a = random.unit() * 2 - 1;
        const b = random.unit() * 2 - 1;
        const length = Math.sqrt(a * a + b * b) || 1;
        ux = (step * a) / length;
        uy = (step * b) / length;
      }
      for (let direction = 0; direction < 4; direction++) {
        for (;;) {
          const toX = this.clampX(pose, this.atX + ux);
          const toY = this.clampY(pose, this.atY + uy);
          if (Math.abs(toX - fromX) > reach || Math.abs(toY - fromY) > reach) {
            fromX = this.atX;
            fromY = this.atY;
            this.gather(i, pose, fromX, fromY, reach);
          }
          const cost = this.nearCost(toX, toY, this.atCost);
          if (cost >= this.atCost) break;
          this.atX = toX;
          this.atY = toY;
          this.atCost = cost;
        }
        const turned = ux;
        ux = -uy;
        uy = turned;
      }
    }
  }

  /** Collects what blank i may overlap within `radius` of a place. */
  private gather(i: number, pose: number, x: number, y: number, radius: number): void {
    const { tables, total, poseCount } = this;
    const row = i * total;
    this.work += OVERHEAD + (total >> 3);
    let near = 0;
    for (let j = 0; j < total; j++) {
      const pair = this.pose[j] * poseCount + pose;
      const dx = Math.abs(x - this.x[j]) - radius;
      const dy = Math.abs(y - this.y[j]) - radius;
      if (dx >= tables.reachX[pair] || dy >= tables.reachY[pair] || j === i) continue;
      const a = tables.a[pair];
      const b = tables.b[pair];
      this.nearA[near] = a;
      this.nearB[near] = b;
      this.nearX[near] = tables.x[pair] - a * this.x[j] - b * this.y[j];
      this.nearY[near] = tables.y[pair] - a * this.y[j] + b * this.x[j];
      this.nearWeight[near] = this.weight[row + j] * tables.unit[pair];
      this.nearBase[near] = tables.base[pair];
      this.nearColumns[near] = tables.columns[pair];
      this.nearRows[near] = tables.rows[pair];
      near++;
    }
    this.near = near;
  }

  private nearCost(x: number, y: number, bound: number): number {
    const { near, nearA, nearB, nearX, nearY, nearWeight, nearBase, nearColumns, nearRows } = this;
    const { depths } = this.tables;
    let sum = 0;
    this.work += near + 1;
    for (let k = 0; k < near; k++) {
      const gx = nearA[k] * x + nearB[k] * y + nearX[k];
      const gy = nearA[k] * y - nearB[k] * x + nearY[k];
      const depth = bilinear(depths, nearBase[k], nearColumns[k], nearRows[k], gx, gy);
      if (depth > 0) {
        sum += depth * nearWeight[k];
        if (sum >= bound) return sum;
      }
    }
    return sum;
  }

  private adjustWeights(): void {
    const { depth, weight } = this;
    const deepest = this.deepest();
    if (deepest === 0) return;
    for (let k = 0; k < depth.length; k++) weight[k] = depth[k] > 0 ? weight[k] + depth[k] / deepest : Math.max(1, weight[k] * 0.95);
  }

  private clampX(pose: number, x: number): number {
    const { minX, maxX } = this.prepared.poses[pose];
    return x < minX ? minX : x > maxX ? maxX : x;
  }

  private clampY(pose: number, y: number): number {
    const { minY, maxY } = this.prepared.poses[pose];
    return y < minY ? minY : y > maxY ? maxY : y;
  }
}

/** Value between four nodes; −1 outside the raster. */
function bilinear(depths: Int16Array, base: number, columns: number, rows: number, gx: number, gy: number): number {
  if (!(gx >= 0 && gy >= 0 && gx < columns - 1 && gy < rows - 1)) return -1;
  const column = gx | 0;
  const row = gy | 0;
  const fx = gx - column;
  const fy = gy - row;
  const at = base + row * columns + column;
  const low = depths[at] + (depths[at + 1] - depths[at]) * fx;
  const high = depths[at + columns] + (depths[at + columns + 1] - depths[at + columns]) * fx;
  return low + (high - low) * fy;
}

function shuffle(items: number[], random: Random): void {
  for (let k = items.length - 1; k > 0; k--) {
    const other = random.below(k + 1);
    const kept = items[k];
    items[k] = items[other];
    items[other] = kept;
  }
}
