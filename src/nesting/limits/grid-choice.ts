import { boxTable } from './box-table.ts';
import type { Lines } from './cell-grid.ts';
import { stepOf } from './cell-grid.ts';
import type { ForbiddenSet } from './forbidden-set.ts';
import type { PlacementSpace } from './placement-space.ts';

export interface GridChoice {
  readonly x: Lines;
  readonly y: Lines;
  /** Area of the differences of places that the cells recognise as forbidden: how much of the blank the grid keeps. */
  readonly score: number;
  /** Whether the counts are multiples of the columns and rows of a plain grid of blanks: then whole numbers along an edge are seen. */
  readonly aligned: boolean;
}

/** Proportions a cell may have, width to height. */
const NARROWEST = 0.5;
const WIDEST = 2;
/** Share by which a grid may have fewer or more cells than wished. */
const LEEWAY = 0.2;
/** Cells are not made smaller than this share of the blank's width and height. */
const FINEST = 1 / 128;
/** Most grids looked at of either kind. */
const MOST_TRIED = 250;

/** What a choice of grids looks at. */
export interface GridSubject extends Pick<PlacementSpace, 'outline' | 'gap' | 'halfWidth' | 'halfHeight'> {
  /** Sets whose area is to be kept. */
  readonly scored: readonly ForbiddenSet[];
}

/** Turned by 180° the rows of the table are the same again. */
export function gridSubject(space: PlacementSpace): GridSubject {
  return { ...space, scored: space.forbidden.slice(0, 2).flatMap((row, r) => row.slice(r)) };
}

/**
 * Grids of about so many cells a turn, best first: by how much of the forbidden differences they keep. The best ones make the blank's widths plus gap just
 * over whole numbers of cells.
 */
export function chooseGrids(space: GridSubject, cellsPerTurn: number): GridChoice[] {
  const pairs = linePairs(space, cellsPerTurn);
  const kinds = [true, false].flatMap((aligned) => thinned(pairs.filter((pair) => pair.aligned === aligned)));
  return kinds.map((pair) => scored(space, pair)).sort((a, b) => b.score - a.score || a.x.count - b.x.count || a.y.count - b.y.count);
}

interface LinePair {
  readonly x: Lines;
  readonly y: Lines;
  readonly aligned: boolean;
}

function thinned(pairs: readonly LinePair[]): LinePair[] {
  const kept = Math.min(pairs.length, MOST_TRIED);
  return Array.from({ length: kept }, (_, k) => pairs[Math.floor((k * pairs.length) / kept)]!);
}

function linePairs(space: GridSubject, cells: number): LinePair[] {
  const { outline, gap } = space;
  const xs = axisLines(space.halfWidth, outline.map((p) => p.x), gap, cells);
  const ys = axisLines(space.halfHeight, outline.map((p) => p.y), gap, cells);
  return xs.flatMap((x) =>
    ys.flatMap((y) => {
      const proportion = stepOf(x.lines) / stepOf(y.lines);
      const count = x.across * y.across;
      const fits = Math.abs(count / cells - 1) <= LEEWAY && (proportion - NARROWEST) * (WIDEST - proportion) >= 0;
      return fits ? [{ x: x.lines, y: y.lines, aligned: x.aligned && y.aligned }] : [];
    }),
  );
}

interface AxisLines {
  readonly lines: Lines;
  /** Cells across the places, mean of the turns. */
  readonly across: number;
  readonly aligned: boolean;
}

/** Ways to cut one axis: the places of each turn into whole numbers of cells, or steps that go a whole number of times into the blank with its gap. */
function axisLines(halves: readonly number[], coordinates: readonly number[], gap: number, most: number): AxisLines[] {
  const spans = [...new Set(halves.filter((half) => half >= 0).map((half) => Math.max(1, half)))];
  const mean = spans.reduce((sum, span) => sum + span, 0) / spans.length;
  const size = Math.max(...coordinates) - Math.min(...coordinates);
  const finest = size * FINEST;
  const made: AxisLines[] = [];
  const add = (lines: Lines, aligned: boolean) => made.push({ lines, across: (2 * mean) / stepOf(lines), aligned });
  for (const span of spans) {
    // A sheet that holds so many blanks side by side; its places are so many widths, less one, and what is over.
    const abreast = spans.length === 1 ? Math.floor((2 * span) / (size + Math.max(0, gap))) + 1 : 1;
    for (let count = 1; count <= most && (2 * span) / count >= Math.min(finest, 2 * span); count++) add({ span, count }, count % abreast === 0);
  }
  return made;
}

function scored(space: GridSubject, { x, y, aligned }: LinePair): GridChoice {
  const dx = stepOf(x);
  const dy = stepOf(y);
  const cells = space.scored.reduce((all, set) => all + sum(boxTable(set, dx, dy).inside), 0);
  return { x, y, score: cells * dx * dy, aligned };
}

function sum(bits: Uint8Array): number {
  return bits.reduce((total, bit) => total + bit, 0);
}
