import type { Random } from '../../base/random.ts';
import type { Prepared } from '../prepare.ts';
import type { Tables } from '../tables.ts';
import { Buckets } from './guided-buckets.ts';
import { Conflicts } from './guided-conflicts.ts';
import { bilinear, Neighbours } from './guided-neighbours.ts';

/** A place looked at counts so many look-ups, and an eighth of one for each blank passed over. */
const OVERHEAD = 4;

/** Places tried for a blank in each pose: anywhere, about where it stands, and snugly against another. */
const ANYWHERE = 6;
const NEARBY = 6;
const SNUG = 4;

/** First and last steps of a descent as shares of the blank's size: from a new place, from the present one, to polish. */
const FROM_NEW = 0.04;
const FROM_HERE = 0.02;
const COARSE_END = 0.001;
const POLISH = 0.0005;
const FINE_END = 0.00002;
/** Neighbours are collected anew when a descent has gone so many first steps. */
const STEPS_PER_GATHERING = 12;

/**
 * Blanks on a sheet that may still overlap. Guided local search: every blank that overlaps moves to the place of least
 * weighted depth; pairs that stay in conflict gain weight, so that no conflict can hide (Voudouris and Tsang, EJOR 113,
 * 1999; for nesting: Egeblad, Nielsen and Odgaard, EJOR 183, 2007; Elkeran, EJOR 231, 2013).
 *
 * The movable blanks come first, what is fixed after them. The sheet's edge is hard: every centre lies in its pose's box.
 * Lengths in µm.
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
  /** Look-ups so far. */
  work = 0;

  private readonly conflicts: Conflicts;
  private readonly buckets: Buckets;
  private readonly neighbours: Neighbours;
  private readonly poseCount: number;
  private readonly anyPart: readonly number[];
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
    this.conflicts = new Conflicts(this.total);
    this.buckets = new Buckets(prepared, tables, movable);
    this.neighbours = new Neighbours(tables, this.total);
    prepared.fixed.forEach(({ pose, x, y }, k) => {
      this.put(movable + k, pose, x, y, prepared.shapes[prepared.poses[pose].shape].isPart);
    });
  }

  /** Sum of the depths of all pairs. */
  get overlap(): number {
    return this.conflicts.overlap;
  }

  /** Depth of the deepest pair. */
  deepest(): number {
    return this.conflicts.deepest();
  }

  posesFor(i: number): readonly number[] {
    const part = this.choice[i];
    return part < 0 ? this.anyPart : this.prepared.posesOf[part];
  }

  /** Puts a movable blank down, clamped to the sheet, without looking at the others. */
  place(i: number, pose: number, x: number, y: number): void {
    this.put(i, pose, this.clampX(pose, x), this.clampY(pose, y), true);
  }

  /** Measures every pair anew and forgets the weights. */
  refresh(): void {
    this.conflicts.clear();
    for (let i = 0; i < this.movable; i++) this.measure(i, i + 1);
  }

  /** One pass: every blank in conflict, in random order, moves if it finds a better place; then weights follow. */
  pass(random: Random): void {
    const { counts } = this.conflicts;
    const order: number[] = [];
    for (let i = 0; i < this.movable; i++) if (counts[i] > 0) order.push(i);
    shuffle(order, random);
    for (const i of order) if (counts[i] > 0) this.move(i, random);
    this.conflicts.adjustWeights();
    this.work += (this.movable + this.conflicts.size) >> 3;
  }

  /** Depth of a blank in a pose and place against all others, weighted; gives up beyond `bound`. */
  costAt(i: number, pose: number, x: number, y: number, bound: number): number {
    const { buckets, tables, poseCount } = this;
    buckets.collect(pose, x, y, 0);
    const { found, count } = buckets;
    this.work += OVERHEAD + (count >> 3);
    let sum = 0;
    for (let k = 0; k < count; k++) {
      const j = found[k];
      const pair = this.pose[j] * poseCount + pose;
      const dx = x - this.x[j];
      const dy = y - this.y[j];
      if (dx >= tables.reachX[pair] || -dx >= tables.reachX[pair] || dy >= tables.reachY[pair] || -dy >= tables.reachY[pair] || j === i) continue;
      const depth = this.depthOf(pair, dx, dy);
      if (depth > 0) {
        sum += depth * this.conflicts.weight(i, j);
        if (sum >= bound) return sum;
      }
    }
    return sum;
  }

  private put(i: number, pose: number, x: number, y: number, isBlank: boolean): void {
    this.pose[i] = pose;
    this.x[i] = x;
    this.y[i] = y;
    if (isBlank) this.buckets.put(i, x, y);
  }

  /** Depth of a pair by the offset of the centres, µm; negative when apart. */
  private depthOf(pair: number, dx: number, dy: number): number {
    const { tables } = this;
    const gx = tables.a[pair] * dx + tables.b[pair] * dy + tables.x[pair];
    const gy = tables.a[pair] * dy - tables.b[pair] * dx + tables.y[pair];
    this.work++;
    return bilinear(tables.depths, tables.base[pair], tables.columns[pair], tables.rows[pair], gx, gy) * tables.unit[pair];
  }

  /** Notes how deep i overlaps the blanks from index `from` on. */
  private measure(i: number, from: number): void {
    const { buckets, poseCount, conflicts } = this;
    buckets.collect(this.pose[i], this.x[i], this.y[i], 0);
    const { found, count } = buckets;
    this.work += count >> 3;
    for (let k = 0; k < count; k++) {
      const j = found[k];
      if (j < from || j === i) continue;
      const pair = this.pose[j] * poseCount + this.pose[i];
      const depth = this.depthOf(pair, this.x[i] - this.x[j], this.y[i] - this.y[j]);
      if (depth > 0) conflicts.meet(i, j, depth);
    }
  }

  private move(i: number, random: Random): void {
    const now = this.conflicts.weightedDepth(i);
    const here = this.pose[i];
    const { width, height } = this.prepared.poses[here];
    const size = (width + height) / 2;
    let pose = this.descendFromNew(i, size, random);
    let { atX, atY, atCost } = this;
    this.descend(i, here, this.x[i], this.y[i], size * FROM_HERE, size * COARSE_END, random);
    if (this.atCost <= atCost) {
      pose = here;
      ({ atX, atY, atCost } = this);
    }
    if (atCost > 0) {
      this.descend(i, pose, atX, atY, size * POLISH, size * FINE_END, random);
      ({ atX, atY, atCost } = this);
    }
    if (atCost >= now) return;
    this.conflicts.lift(i);
    this.put(i, pose, atX, atY, true);
    this.measure(i, 0);
  }

  /** Descends from the best of some places in every allowed pose. Returns the pose. */
  private descendFromNew(i: number, size: number, random: Random): number {
    let bestPose = this.pose[i];
    let bestX = this.x[i];
    let bestY = this.y[i];
    let bestCost = Infinity;
    for (const pose of this.posesFor(i)) {
      const { minX, minY, maxX, maxY, width, height } = this.prepared.poses[pose];
      const spread = (width + height) / 8;
      for (let k = 0; k < ANYWHERE + NEARBY + SNUG; k++) {
        let x: number;
        let y: number;
        if (k < ANYWHERE) {
          x = minX + this.somewhere(maxX - minX, random);
          y = minY + this.somewhere(maxY - minY, random);
        } else if (k < ANYWHERE + NEARBY) {
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
    this.descend(i, bestPose, bestX, bestY, size * FROM_NEW, size * COARSE_END, random);
    return bestPose;
  }

  /** Uniform in 0 … size, on the common pitch where there is one. */
  private somewhere(size: number, random: Random): number {
    const { pitch } = this.prepared;
    return pitch === 0 ? random.unit() * size : random.below(Math.floor(size / pitch) + 1) * pitch;
  }

  /** Pattern search from a place: four directions, axis-parallel or at random, each repeated while it helps; halving steps. */
  private descend(i: number, pose: number, x: number, y: number, first: number, last: number, random: Random): void {
    const reach = first * STEPS_PER_GATHERING;
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
    const { buckets, neighbours, tables, poseCount } = this;
    buckets.collect(pose, x, y, radius);
    const { found, count } = buckets;
    this.work += OVERHEAD + (count >> 3);
    neighbours.count = 0;
    for (let k = 0; k < count; k++) {
      const j = found[k];
      const pair = this.pose[j] * poseCount + pose;
      if (j === i || Math.abs(x - this.x[j]) - radius >= tables.reachX[pair] || Math.abs(y - this.y[j]) - radius >= tables.reachY[pair]) continue;
      neighbours.add(pair, this.x[j], this.y[j], this.conflicts.weight(i, j));
    }
  }

  private nearCost(x: number, y: number, bound: number): number {
    this.work += this.neighbours.count + 1;
    return this.neighbours.cost(x, y, bound);
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

function shuffle(items: number[], random: Random): void {
  for (let k = items.length - 1; k > 0; k--) {
    const other = random.below(k + 1);
    const kept = items[k];
    items[k] = items[other];
    items[other] = kept;
  }
}
