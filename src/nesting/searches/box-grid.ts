import type { Box } from '../../geometry/point.ts';
import { requiredGap, type Placement, type Problem } from '../../layout/problem.ts';
import { fieldSets } from '../patterns/fields.ts';
import { createFrame, leastSide, patternParts, placeItems, type Item, type PatternPart } from '../patterns/frame.ts';
import type { Search } from '../search.ts';

/**
 * Every blank in a cell of its own between straight ways across the whole field, as a blanking grid wants it: the most
 * cells of any mixture of wide and narrow columns, tall and short rows, a blank in each that holds one. Ways are at least
 * `way` µm wide, and as wide as the gap, so that boxes keep every rule.
 */
export function boxGridSearch(way: number): Search {
  return {
    name: 'cells between straight ways',
    *run({ problem }) {
      if (problem.grid || problem.demand.kind !== 'most') return;
      for (const owner of patternParts(problem)) {
        for (const fields of fieldSets(problem, leastSide(owner))) {
          const filled = fields.flatMap((field) => fullestCells(owner, field, Math.max(way, gapOf(problem))));
          yield { work: filled.length, candidate: { placements: [...problem.locked, ...filled], source: 'cells between straight ways' } };
        }
      }
    },
  };
}

const gapOf = ({ rules }: Problem) => (rules.commonKnife ? rules.gap : requiredGap(rules));

/** A column or row: its place and how wide it is. */
interface Track {
  readonly at: number;
  readonly size: number;
}

function fullestCells(owner: PatternPart, field: Box, way: number): Placement[] {
  const frame = createFrame(owner, field, false);
  const { sizes } = frame.spacing;
  const sides = [...new Set(sizes.flatMap(({ width, height }) => [width, height]))];
  let best: Item[] = [];
  for (const columns of mixtures(sides, frame.width, way)) {
    for (const rows of mixtures(sides, frame.height, way)) {
      const items = columns.flatMap(({ at: x, size: wide }) => rows.flatMap(({ at: y, size: tall }): Item[] => {
        const version = sizes.findIndex(({ width, height }) => width <= wide && height <= tall);
        return version < 0 ? [] : [{ version, x, y }];
      }));
      if (items.length > best.length) best = items;
    }
  }
  return placeItems(frame, best);
}

/** As many tracks as fit, for every number of wide ones; a blank has one or two different sides. */
function mixtures(sides: readonly number[], room: number, way: number): Track[][] {
  const [wide, narrow] = [Math.max(...sides), Math.min(...sides)];
  const fitting = (size: number, free: number) => Math.max(0, Math.floor((free + way) / (size + way)));
  const most = fitting(wide, room);
  return Array.from({ length: most + 1 }, (_, count) => {
    const others = wide === narrow ? 0 : fitting(narrow, room - count * (wide + way));
    return [...Array.from({ length: count }, (_unused, i): Track => ({ at: i * (wide + way), size: wide })), ...Array.from({ length: others }, (_unused, i): Track => ({ at: count * (wide + way) + i * (narrow + way), size: narrow }))];
  });
}
