import type { Prepared } from '../prepare.ts';
import type { Tables } from '../tables.ts';

/** Up to this many blanks looking at each is quicker than asking who is near. */
const FEW = 24;
/** Buckets along a reach: more of them cut off more that is out of reach, and cost a look each. */
const BUCKETS_PER_REACH = 2;
const MOST_BUCKETS_A_SIDE = 128;
const NONE = -1;

/**
 * Who stands near a place: blanks by the bucket of their centre, each bucket a chain. What is fixed and of another kind
 * than blanks (keep-outs, some as wide as the sheet) is always counted as near. Lengths in µm.
 */
export class Buckets {
  /** Indices from the last `collect`, the first `count` of them. */
  readonly found: Int32Array;
  count = 0;

  private readonly always: readonly number[];
  private readonly columns: number;
  private readonly rows: number;
  private readonly perX: number;
  private readonly perY: number;
  private readonly minX: number;
  private readonly minY: number;
  /** Greatest distance of centres at which a blank in this pose may overlap another blank. */
  private readonly reachX: Float64Array;
  private readonly reachY: Float64Array;
  private readonly first: Int32Array;
  private readonly next: Int32Array;
  private readonly previous: Int32Array;
  private readonly bucket: Int32Array;

  constructor({ poses, shapes, area, fixed }: Prepared, tables: Tables, movable: number) {
    const total = movable + fixed.length;
    const blanks = poses.flatMap(({ shape }, pose) => (shapes[shape].isPart ? [pose] : []));
    this.reachX = Float64Array.from(poses, (_, moving) => Math.max(0, ...blanks.map((standing) => tables.reachX[standing * poses.length + moving])));
    this.reachY = Float64Array.from(poses, (_, moving) => Math.max(0, ...blanks.map((standing) => tables.reachY[standing * poses.length + moving])));
    this.always = fixed.flatMap(({ pose }, k) => (shapes[poses[pose].shape].isPart ? [] : [movable + k]));
    this.minX = area.minX;
    this.minY = area.minY;
    const along = (extent: number, reach: number) => (total <= FEW ? 1 : Math.max(1, Math.min(MOST_BUCKETS_A_SIDE, Math.floor((BUCKETS_PER_REACH * extent) / reach))));
    this.columns = along(area.maxX - area.minX, Math.max(...blanks.map((pose) => this.reachX[pose])));
    this.rows = along(area.maxY - area.minY, Math.max(...blanks.map((pose) => this.reachY[pose])));
    this.perX = this.columns / Math.max(1, area.maxX - area.minX);
    this.perY = this.rows / Math.max(1, area.maxY - area.minY);
    this.first = new Int32Array(this.columns * this.rows).fill(NONE);
    this.next = new Int32Array(total).fill(NONE);
    this.previous = new Int32Array(total).fill(NONE);
    this.bucket = new Int32Array(total).fill(NONE);
    this.found = new Int32Array(total);
  }

  /** Notes where blank i stands now. */
  put(i: number, x: number, y: number): void {
    const bucket = this.rowAt(y) * this.columns + this.columnAt(x);
    const old = this.bucket[i];
    if (bucket === old) return;
    if (old !== NONE) this.takeOut(i, old);
    const head = this.first[bucket];
    this.next[i] = head;
    this.previous[i] = NONE;
    if (head !== NONE) this.previous[head] = i;
    this.first[bucket] = i;
    this.bucket[i] = bucket;
  }

  /** Collects whoever a blank in this pose within `radius` of the place may overlap, and some that it cannot. */
  collect(pose: number, x: number, y: number, radius: number): void {
    const { first, next, found, always } = this;
    let count = 0;
    for (const k of always) found[count++] = k;
    const reachX = this.reachX[pose] + radius;
    const reachY = this.reachY[pose] + radius;
    const lastColumn = this.columnAt(x + reachX);
    const lastRow = this.rowAt(y + reachY);
    const firstColumn = this.columnAt(x - reachX);
    for (let row = this.rowAt(y - reachY); row <= lastRow; row++) {
      const end = row * this.columns + lastColumn;
      for (let bucket = row * this.columns + firstColumn; bucket <= end; bucket++) {
        for (let k = first[bucket]; k !== NONE; k = next[k]) found[count++] = k;
      }
    }
    this.count = count;
  }

  private takeOut(i: number, bucket: number): void {
    const next = this.next[i];
    const previous = this.previous[i];
    if (next !== NONE) this.previous[next] = previous;
    if (previous !== NONE) this.next[previous] = next;
    else this.first[bucket] = next;
  }

  private columnAt(x: number): number {
    return Math.max(0, Math.min(this.columns - 1, Math.floor((x - this.minX) * this.perX)));
  }

  private rowAt(y: number): number {
    return Math.max(0, Math.min(this.rows - 1, Math.floor((y - this.minY) * this.perY)));
  }
}
