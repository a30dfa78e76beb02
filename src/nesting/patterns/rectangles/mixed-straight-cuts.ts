/** A piece that may be cut any number of times, as it stands. */
export interface CutPiece {
  readonly width: number;
  readonly height: number;
  /** From 0 up. */
  readonly worth: number;
}

export interface PlacedPiece {
  /** Index into the pieces. */
  readonly piece: number;
  readonly x: number;
  readonly y: number;
}

/** Table entries; beyond, it would take too much room and time. */
const MOST_ENTRIES = 2_000_000;

/** Ends of a division: a piece at the corner, or a cut at an index of the lengths along x or y. */
const NOTHING = 0;

/**
 * The pieces of most worth that straight cuts from edge to edge get out of a rectangle, each as often as one likes
 * (Gilmore and Gomory, Operations Research 14, 1966; Beasley, JORS 36, 1985). Exact: dynamic programming over the sums of
 * widths and of heights, since pieces pushed to the lower left stand at such places only. Undefined when there are too
 * many sums.
 */
export function mixedStraightCuts(width: number, height: number, pieces: readonly CutPiece[]): { readonly worth: number; readonly placed: readonly PlacedPiece[] } | undefined {
  const fitting = pieces.filter((piece) => piece.width <= width && piece.height <= height && piece.worth > 0);
  if (fitting.length === 0) return { worth: 0, placed: [] };
  const xs = sumsOf(fitting.map((piece) => piece.width), width);
  const ys = sumsOf(fitting.map((piece) => piece.height), height);
  if (!xs || !ys || xs.length * ys.length > MOST_ENTRIES) return undefined;
  const [restX, restY] = [rests(xs), rests(ys)];
  const columns = xs.length;
  const worth = new Float64Array(columns * ys.length);
  /** 0 nothing, −1 − p: piece p; 2i + 1: cut across x at xs[i]; 2j + 2: cut at ys[j]. */
  const division = new Int32Array(columns * ys.length);
  for (let j = 0; j < ys.length; j++) {
    for (let i = 0; i < columns; i++) {
      const at = j * columns + i;
      pieces.forEach((piece, p) => {
        if (piece.width <= xs[i]! && piece.height <= ys[j]! && piece.worth > worth[at]!) [worth[at], division[at]] = [piece.worth, -1 - p];
      });
      for (let cut = 1; cut <= i && 2 * xs[cut]! <= xs[i]!; cut++) {
        const sum = worth[j * columns + cut]! + worth[j * columns + restX[i]![cut]!]!;
        if (sum > worth[at]!) [worth[at], division[at]] = [sum, 2 * cut + 1];
      }
      for (let cut = 1; cut <= j && 2 * ys[cut]! <= ys[j]!; cut++) {
        const sum = worth[cut * columns + i]! + worth[restY[j]![cut]! * columns + i]!;
        if (sum > worth[at]!) [worth[at], division[at]] = [sum, 2 * cut + 2];
      }
    }
  }
  const placed: PlacedPiece[] = [];
  const walk = (i: number, j: number, x: number, y: number): void => {
    const made = division[j * columns + i]!;
    if (made === NOTHING) return;
    if (made < 0) {
      placed.push({ piece: -1 - made, x, y });
      return;
    }
    const cut = (made - 1) >> 1;
    if (made % 2 === 1) {
      walk(cut, j, x, y);
      walk(restX[i]![cut]!, j, x + xs[cut]!, y);
    } else {
      walk(i, cut, x, y);
      walk(i, restY[j]![cut]!, x, y + ys[cut]!);
    }
  };
  walk(columns - 1, ys.length - 1, 0, 0);
  return { worth: worth.at(-1)!, placed };
}

/** Rising sums of whole numbers of the lengths, from 0 up to the longest; undefined when they are too many. */
function sumsOf(lengths: readonly number[], longest: number): Float64Array | undefined {
  const sums = new Set([0]);
  for (const sum of sums) {
    for (const length of lengths) if (sum + length <= longest) sums.add(sum + length);
    if (sums.size > MOST_ENTRIES / 100) return undefined;
  }
  return Float64Array.from(sums).toSorted();
}

/** `rests[i][k]`: the index of the greatest sum within sums[i] − sums[k]. */
function rests(sums: Float64Array): Int32Array[] {
  return Array.from(sums, (sum, i) => {
    const row = new Int32Array(i + 1);
    for (let k = 0, at = i; k <= i; k++) {
      while (sums[at]! > sum - sums[k]!) at--;
      row[k] = at;
    }
    return row;
  });
}
