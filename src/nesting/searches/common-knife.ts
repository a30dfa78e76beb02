import type { Box } from '../../geometry/point.ts';
import type { Placement, Problem } from '../../layout/problem.ts';
import { fieldSets } from '../patterns/fields.ts';
import { createFrame, leastSide, patternParts, placeItems, type Frame, type Item, type PatternPart, type Spacing } from '../patterns/frame.ts';
import type { Search, SearchContext, SearchStep } from '../search.ts';
import { gridSearch } from './grid.ts';
import { rectanglesSearch } from './rectangles.ts';
import { rowsSearch } from './rows.ts';

/**
 * Neighbours that share a knife: the same regular patterns with blanks touching, and grids whose blanks touch along one
 * axis only and keep the gap along the other. It only proposes: whether what touches is a straight rule in common, and all
 * else keeps its distance, the run's own test must say.
 */
export const commonKnifeSearch: Search = {
  name: 'common knife',
  *run(context) {
    const { problem } = context;
    if (!problem.rules.commonKnife) return;
    const touching: Problem = { ...problem, rules: { ...problem.rules, gap: 0, bleedMeeting: 'cut' } };
    for (const search of problem.grid ? [gridSearch] : [gridSearch, rowsSearch, rectanglesSearch]) yield* named(search.run({ ...context, problem: touching }));
    yield* mixedGrids(context, touching);
  },
};

function* named(steps: Iterator<SearchStep, void, void>): Generator<SearchStep> {
  for (let step = steps.next(); !step.done; step = steps.next()) {
    // Cells of touching blanks keep no gap: they are not for the searches that build on cells.
    const { work, candidate } = step.value;
    yield { work, ...(candidate && { candidate: { ...candidate, source: `${candidate.source}, common knife` } }) };
  }
}

/** Grids that touch in rows and keep the gap between rows, or the other way round, in every rotation and head to tail. */
function* mixedGrids({ problem }: SearchContext, touching: Problem): Generator<SearchStep> {
  const apart = patternParts(problem);
  for (const [index, close] of patternParts(touching).entries()) {
    for (const fields of fieldSets(problem, leastSide(close))) {
      for (const swapped of [false, true]) {
        const before = close.asked.count + apart[index].asked.count;
        const filled = fields.map((field) => fullestGrid(close, apart[index], field, swapped, problem.grid));
        const work = close.asked.count + apart[index].asked.count - before;
        yield { work, candidate: { placements: [...problem.locked, ...filled.flat()], source: `plain ${swapped ? 'columns' : 'rows'}, common knife` } };
      }
    }
  }
}

function fullestGrid(close: PatternPart, apart: PatternPart, field: Box, swapped: boolean, wanted: Problem['grid']): Placement[] {
  const frame = createFrame(close, field, swapped);
  const gapped = createFrame(apart, field, swapped).spacing;
  let best: Item[] = [];
  for (const kind of rowKinds(close.versions.length)) {
    const items = gridOf(kind, frame, gapped, wanted && (swapped ? { rows: wanted.columns, columns: wanted.rows } : wanted));
    if (items.length > best.length) best = items;
  }
  return placeItems(frame, best);
}

/** Rows of one version, and of two by turns. */
function rowKinds(versions: number): number[][] {
  const all = Array.from({ length: versions }, (_, version) => version);
  return all.flatMap((a) => all.map((b) => (a === b ? [a] : [a, b])));
}

function gridOf(kind: readonly number[], { spacing, width, height }: Frame, gapped: Spacing, wanted: Problem['grid']): Item[] {
  const row = touchingRow(kind, spacing, width, wanted?.columns ?? Infinity);
  const depth = Math.max(0, ...row.map(({ version }) => spacing.sizes[version].height));
  if (row.length < (wanted?.columns ?? 1)) return [];
  const pitch = Math.max(1, ...row.flatMap((a) => row.map((b) => gapped.up(a.version, b.version, b.x - a.x))));
  const rows = Math.min(wanted?.rows ?? Infinity, Math.floor((height - depth) / pitch) + 1);
  if (rows < (wanted?.rows ?? 1)) return [];
  return Array.from({ length: rows }, (_, k) => row.map((item) => ({ ...item, y: k * pitch }))).flat();
}

function touchingRow(kind: readonly number[], { sizes, right }: Spacing, width: number, most: number): Item[] {
  const row: Item[] = [];
  for (let x = 0; row.length < most; ) {
    const version = kind[row.length % kind.length];
    if (x + sizes[version].width > width) break;
    row.push({ version, x, y: 0 });
    x += Math.max(1, right(version, kind[row.length % kind.length], 0));
  }
  return row;
}
