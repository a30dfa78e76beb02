/**
 * Lengths that matter when boxes a × b are packed: sums of whole numbers of a and b. Boxes pushed to the lower left stand
 * at such lengths only (normal patterns: Herz 1972, Christofides and Whitlock 1977), so any other length is as good as
 * the next smaller one. Lengths are named by their index here.
 */
export interface Raster {
  readonly a: number;
  readonly b: number;
  /** Rising, from 0. */
  readonly lengths: Float64Array;
  /** `rest[i × count + j]`: the index of the greatest length within lengths[i] − lengths[j], for j ≤ i. */
  readonly rest: Int32Array;
  readonly count: number;
  /** Where length i is worth cutting: indices of what is left beside any length, rising (Scheithauer and Terno 1996). */
  readonly cuts: readonly Int32Array[];
}

export function createRaster(a: number, b: number, longest: number): Raster {
  const sums = new Set<number>();
  for (let i = 0; i * a <= longest; i++) for (let j = 0; i * a + j * b <= longest; j++) sums.add(i * a + j * b);
  const lengths = Float64Array.from(sums).toSorted();
  const count = lengths.length;
  const rest = new Int32Array(count * count);
  const cuts: Int32Array[] = [];
  for (let i = 0; i < count; i++) {
    for (let j = 0, at = i; j <= i; j++) {
      while (lengths[at] > lengths[i] - lengths[j]) at--;
      rest[i * count + j] = at;
    }
    cuts.push(new Int32Array([...new Set(rest.subarray(i * count, i * count + i + 1))].toSorted((p, q) => p - q)));
  }
  return { a, b, lengths, rest, count, cuts };
}

/** Index of the greatest length that is not longer. */
export function rasterIndex({ lengths }: Raster, length: number): number {
  let from = 0;
  let to = lengths.length;
  while (to - from > 1) {
    const middle = (from + to) >> 1;
    if (lengths[middle] <= length) from = middle;
    else to = middle;
  }
  return from;
}
