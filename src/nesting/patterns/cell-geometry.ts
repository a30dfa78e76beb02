import type { Item, Spacing } from './frame.ts';
import { leastOf } from './least.ts';

/** A repeating cell: the blanks of one period and the two steps by which they repeat, whole micrometres. */
export interface PatternCell {
  readonly items: readonly Item[];
  readonly u: { readonly x: number; readonly y: number };
  readonly v: { readonly x: number; readonly y: number };
  /** Area of the cell. */
  readonly area: number;
}

/**
 * What may be chosen freely of a cell; all else follows from contact. The blanks stand side by side, each pushed against
 * those before it from the right; the row so begun repeats along u, pushed likewise; rows repeat along v, pushed down.
 */
export interface CellShape {
  readonly versions: readonly number[];
  /** How much higher than the first each blank stands; the first entry is 0. */
  readonly lifts: readonly number[];
  /** Rise of u. */
  readonly slope: number;
  /** Shift to the right of v. */
  readonly shift: number;
}

/** Copies along u, and rows, that can reach one another are few; a shape with more is a sliver and of no use. */
const MOST_IN_REACH = 8;

/** The tightest cell of the shape: every copy keeps the gap to every other. Undefined where the blanks do not meet. */
export function tightCell({ versions, lifts, slope, shift }: CellShape, spacing: Spacing): PatternCell | undefined {
  const items: Item[] = [];
  for (let i = 0; i < versions.length; i++) {
    const x = i === 0 ? 0 : leastRight(items, versions[i], lifts[i], spacing);
    if (x === -Infinity) return undefined;
    items.push({ version: versions[i], x, y: lifts[i] });
  }
  const along = stepAlong(items, slope, spacing);
  if (along < 1) return undefined;
  const u = { x: along, y: slope };
  const across = stepAcross(items, u, shift, spacing);
  return across === undefined ? undefined : cellOf(items, u, { x: shift, y: across });
}

/**
 * The tightest cell of two plain rows by turns, each the better by itself: version a along u of the given rise, version b
 * above it where the two nest best, and a again above b likewise. For convex outlines and b = a turned by half a turn the
 * best rise gives the densest double lattice (Kuperberg and Kuperberg, Discrete Comput. Geom. 5, 1990: such rows of
 * touching translates are the only ones to try), to the micrometre of the samples' valleys.
 */
export function twoRowCell(a: number, b: number, slope: number, spacing: Spacing): PatternCell | undefined {
  const rowOf = (version: number): Item[] => [{ version, x: 0, y: 0 }];
  const along = Math.max(stepAlong(rowOf(a), slope, spacing), stepAlong(rowOf(b), slope, spacing));
  if (along * MOST_IN_REACH < spacing.sizes[a].width + spacing.sizes[b].width + 2 * spacing.gap) return undefined;
  const u = { x: along, y: slope };
  const first = bestShift(a, b, u, spacing);
  const second = bestShift(b, a, u, spacing);
  const items = [{ version: a, x: 0, y: 0 }, { version: b, x: first, y: rowLift(a, b, u, first, spacing) }];
  const shift = first + second;
  const across = stepAcross(items, u, shift, spacing);
  return across === undefined ? undefined : cellOf(items, u, { x: shift, y: across });
}

const SHIFT_SAMPLES = 24;

/** Where a row of b nests lowest in a row of a, measured across the rows. */
function bestShift(a: number, b: number, u: { x: number; y: number }, spacing: Spacing): number {
  const depth = (shift: number) => rowLift(a, b, u, shift, spacing) * u.x - u.y * shift;
  return leastOf(depth, { from: 0, to: u.x - 1, samples: SHIFT_SAMPLES, kept: 2 })[0];
}

/** How far above a row of a along u the row of b must stand that is `shift` to the right. */
function rowLift(a: number, b: number, u: { x: number; y: number }, shift: number, { sizes, gap, up }: Spacing): number {
  let most = -Infinity;
  const to = Math.floor((sizes[a].width + gap - shift) / u.x);
  for (let m = Math.ceil((-sizes[b].width - gap - shift) / u.x); m <= to; m++) most = Math.max(most, up(a, b, shift + m * u.x) - m * u.y);
  return most;
}

function cellOf(items: readonly Item[], u: { x: number; y: number }, v: { x: number; y: number }): PatternCell | undefined {
  const area = u.x * v.y - u.y * v.x;
  return area > 0 ? { items, u, v, area } : undefined;
}

function leastRight(standing: readonly Item[], version: number, y: number, spacing: Spacing): number {
  let x = -Infinity;
  for (const a of standing) {
    const least = a.x + spacing.right(a.version, version, y - a.y);
    if (least > x) x = least;
  }
  return x;
}

/** Least x of u: the m-th copy of every blank is right of every blank, for all m. */
function stepAlong(items: readonly Item[], slope: number, spacing: Spacing): number {
  const { width, height } = extentOf(items, spacing);
  let along = -Infinity;
  for (let m = 1; m === 1 || (m * Math.abs(slope) < height + spacing.gap && m * along < width + spacing.gap); m++) {
    for (const b of items) {
      for (const a of items) along = Math.max(along, Math.ceil((a.x - b.x + spacing.right(a.version, b.version, b.y - a.y + m * slope)) / m));
    }
    if (along < 1 || m > MOST_IN_REACH) return -Infinity;
  }
  return along;
}

/** Least y of v = (shift, y): every blank of the n-th row is above every blank of the first, for all n. */
function stepAcross(items: readonly Item[], u: { x: number; y: number }, shift: number, spacing: Spacing): number | undefined {
  const { width, height } = extentOf(items, spacing);
  const reach = width + spacing.gap;
  if (reach > MOST_IN_REACH * u.x) return undefined;
  let across = -Infinity;
  for (let n = 1; n === 1 || n * across - (reach / u.x + 1) * Math.abs(u.y) - (n * Math.abs(shift * u.y)) / u.x < height + spacing.gap; n++) {
    if (n > MOST_IN_REACH || (n > 1 && across < 1)) return undefined;
    for (const b of items) {
      const right = spacing.sizes[b.version].width + spacing.gap;
      for (const a of items) {
        const apart = b.x + n * shift - a.x;
        const left = spacing.sizes[a.version].width + spacing.gap;
        const to = Math.floor((left - apart) / u.x);
        for (let m = Math.ceil((-right - apart) / u.x); m <= to; m++) {
          const lift = (spacing.up(a.version, b.version, apart + m * u.x) + a.y - b.y - m * u.y) / n;
          if (lift > across) across = Math.ceil(lift);
        }
      }
    }
  }
  return across;
}

function extentOf(items: readonly Item[], { sizes }: Spacing): { width: number; height: number } {
  let [left, right, low, high] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const { version, x, y } of items) {
    left = Math.min(left, x);
    right = Math.max(right, x + sizes[version].width);
    low = Math.min(low, y);
    high = Math.max(high, y + sizes[version].height);
  }
  return { width: right - left, height: high - low };
}
