import type { Random } from '../../base/random.ts';
import { tightCell, twoRowCell, type CellShape, type PatternCell } from './cell-geometry.ts';
import type { Spacing } from './frame.ts';
import { leastOf } from './least.ts';

/** Free numbers of a shape as one list: lifts of all blanks but the first, then the slope unless level, then the shift. */
type Numbers = readonly number[];

interface Found {
  readonly numbers: Numbers;
  readonly cell: PatternCell;
}

export interface CellTask {
  readonly versions: readonly number[];
  /** Rows run straight along x. */
  readonly level: boolean;
}

/** Random shapes tried for every free number, and the best of them that are improved. */
const SAMPLES = 40;
const STARTS = 2;
/** Changes tried from every start, for every free number. */
const CHANGES = 100;
/** Single steps tried at the end, for every free number. */
const STEPS = 60;
/** A change may make the cell this much larger at first; less and less, and nothing in the end. */
const THRESHOLD = 0.02;

/**
 * Dense cells of some versions: random shapes, the best improved by random changes that grow ever smaller while the
 * threshold for accepting a larger cell falls (threshold accepting, Dueck and Scheuer, J. Comput. Phys. 90, 1990), then
 * by single steps down to a micrometre. Best first.
 */
export function searchCells(task: CellTask, spacing: Spacing, random: Random): PatternCell[] {
  const ranges = rangesOf(task, spacing);
  const tryOut = (numbers: Numbers): Found | undefined => {
    const cell = tightCell(shapeOf(task, numbers), spacing);
    return cell && { numbers, cell };
  };
  const sampled: Found[] = [];
  for (let k = 0; k < SAMPLES * ranges.length; k++) {
    const found = tryOut(ranges.map(({ from, to }) => from + random.below(to - from + 1)));
    if (found) sampled.push(found);
  }
  const starts = sampled.toSorted((a, b) => a.cell.area - b.cell.area).slice(0, STARTS);
  const annealed = starts.map((start) => anneal(start, ranges, tryOut, random)).toSorted((a, b) => a.cell.area - b.cell.area);
  return annealed.map((found, rank) => (rank === 0 ? walkDown(found, tryOut) : found).cell);
}

/** Rises tried for two rows by turns before the best are refined. */
const SLOPES = 48;

/** The best cells of two plain rows by turns. */
export function twoRowCells(a: number, b: number, spacing: Spacing): PatternCell[] {
  const most = Math.min(spacing.sizes[a].height, spacing.sizes[b].height) - 1;
  const areaAt = (slope: number) => twoRowCell(a, b, slope, spacing)?.area ?? Infinity;
  const slopes = leastOf(areaAt, { from: -most, to: most, samples: SLOPES, kept: 3 });
  return [0, ...slopes].flatMap((slope) => twoRowCell(a, b, slope, spacing) ?? []).toSorted((p, q) => p.area - q.area);
}

interface Range {
  readonly from: number;
  readonly to: number;
}

function rangesOf({ versions, level }: CellTask, { sizes }: Spacing): Range[] {
  const heights = versions.map((version) => sizes[version].height);
  const tallest = Math.max(...heights);
  const widest = Math.max(...versions.map((version) => sizes[version].width));
  const lifts = versions.slice(1).map((version, i) => ({ from: 1 - sizes[version].height, to: heights.slice(0, i + 1).reduce((sum, height) => Math.max(sum, height), 0) - 1 }));
  const slope = level ? [] : [{ from: 1 - tallest, to: tallest - 1 }];
  return [...lifts, ...slope, { from: 0, to: widest * versions.length }];
}

function shapeOf({ versions, level }: CellTask, numbers: Numbers): CellShape {
  const lifts = [0, ...numbers.slice(0, versions.length - 1)];
  return { versions, lifts, slope: level ? 0 : numbers[versions.length - 1], shift: numbers[numbers.length - 1] };
}

function anneal(start: Found, ranges: readonly Range[], tryOut: (numbers: Numbers) => Found | undefined, random: Random): Found {
  const count = CHANGES * ranges.length;
  let [current, best] = [start, start];
  for (let k = 0; k < count; k++) {
    const left = 1 - k / count;
    const reach = 0.25 * left * left * left;
    const one = random.below(ranges.length + 1);
    const next = tryOut(current.numbers.map((value, i) => (one === i || one === ranges.length ? value + Math.round(random.bell() * (1 + reach * (ranges[i].to - ranges[i].from))) : value)));
    if (!next || next.cell.area > current.cell.area * (1 + THRESHOLD * left * left)) continue;
    current = next;
    if (next.cell.area < best.cell.area) best = next;
  }
  return best;
}

/** Steps of every number alone and of every two together, halved from a millimetre to a micrometre. */
function walkDown(start: Found, tryOut: (numbers: Numbers) => Found | undefined): Found {
  let best = start;
  let left = STEPS * start.numbers.length;
  for (let step = 1024; step >= 1 && left > 0; step /= 2) {
    const moves = movesOf(best.numbers.length, step);
    for (let failed = 0, k = 0; failed < moves.length && left > 0; k = (k + 1) % moves.length, left--) {
      const next = tryOut(best.numbers.map((value, i) => value + moves[k][i]));
      failed = next && next.cell.area < best.cell.area ? 0 : failed + 1;
      if (failed === 0) best = next!;
    }
  }
  return best;
}

function movesOf(length: number, step: number): number[][] {
  const unit = (i: number, by: number) => Array.from({ length }, (_, k) => (k === i ? by : 0));
  const single = Array.from({ length }, (_, i) => [unit(i, step), unit(i, -step)]).flat();
  const double = single.flatMap((a, i) => single.slice(i + 1).map((b) => a.map((value, k) => value + b[k])));
  return [...single, ...double.filter((move) => move.filter((value) => value !== 0).length === 2)];
}
