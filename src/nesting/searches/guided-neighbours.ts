import type { Tables } from '../tables.ts';

/** Blanks near one that is being moved, with all that a look-up of their depth needs. Lengths in µm. */
export class Neighbours {
  count = 0;

  private readonly tables: Tables;
  private readonly a: Float64Array;
  private readonly b: Float64Array;
  private readonly x: Float64Array;
  private readonly y: Float64Array;
  private readonly weight: Float64Array;
  private readonly base: Int32Array;
  private readonly columns: Int32Array;
  private readonly rows: Int32Array;

  constructor(tables: Tables, most: number) {
    this.tables = tables;
    this.a = new Float64Array(most);
    this.b = new Float64Array(most);
    this.x = new Float64Array(most);
    this.y = new Float64Array(most);
    this.weight = new Float64Array(most);
    this.base = new Int32Array(most);
    this.columns = new Int32Array(most);
    this.rows = new Int32Array(most);
  }

  /** One more, standing at x, y, in the pair of poses `pair`. */
  add(pair: number, x: number, y: number, weight: number): void {
    const { tables, count } = this;
    const a = tables.a[pair];
    const b = tables.b[pair];
    this.a[count] = a;
    this.b[count] = b;
    this.x[count] = tables.x[pair] - a * x - b * y;
    this.y[count] = tables.y[pair] - a * y + b * x;
    this.weight[count] = weight * tables.unit[pair];
    this.base[count] = tables.base[pair];
    this.columns[count] = tables.columns[pair];
    this.rows[count] = tables.rows[pair];
    this.count = count + 1;
  }

  /** Weighted depth of the moved blank at x, y against all of them; gives up beyond `bound`. */
  cost(x: number, y: number, bound: number): number {
    const { count, a, b, weight, base, columns, rows } = this;
    const { depths } = this.tables;
    let sum = 0;
    for (let k = 0; k < count; k++) {
      const gx = a[k] * x + b[k] * y + this.x[k];
      const gy = a[k] * y - b[k] * x + this.y[k];
      const depth = bilinear(depths, base[k], columns[k], rows[k], gx, gy);
      if (depth > 0) {
        sum += depth * weight[k];
        if (sum >= bound) return sum;
      }
    }
    return sum;
  }
}

/** Value between four nodes; −1 outside the raster. */
export function bilinear(depths: Int16Array, base: number, columns: number, rows: number, gx: number, gy: number): number {
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
