import { clearOnes } from '../patterns/clear.ts';
import { fieldSets, hasPartialObstacle } from '../patterns/fields.ts';
import { leastSide, patternParts, type PatternPart } from '../patterns/frame.ts';
import { rowKinds } from '../patterns/row-kinds.ts';
import { MOST_ROWS, stackedFields } from '../patterns/stacks.ts';
import type { Search, SearchContext, SearchStep } from '../search.ts';

/** Rows along the sheet and across it: plain, shifted, head-to-tail, every second one turned, and any mixture. */
export const rowsSearch = rowsSearchOf(MOST_ROWS);

/** The same with at most so many rows to choose from in a field. */
export function rowsSearchOf(mostRows: number): Search {
  return {
    name: 'rows',
    *run(context) {
      for (const owner of patternParts(context.problem)) {
        yield* rowsInFields(owner, context, mostRows);
        if (hasPartialObstacle(context.problem)) yield* rowsAcross(owner, context, mostRows);
      }
    },
  };
}

/** Every field by itself: all with their best stacks, then all with their second best. */
function* rowsInFields(owner: PatternPart, { problem }: SearchContext, mostRows: number): Generator<SearchStep> {
  for (const fields of fieldSets(problem, leastSide(owner))) {
    const before = owner.asked.count;
    const options = fields.map((field) => stackedFields(owner, field, ({ spacing }) => rowKinds(spacing), mostRows));
    yield { work: owner.asked.count - before };
    const most = Math.max(0, ...options.map((list) => list.length));
    for (let choice = 0; choice < most; choice++) {
      const chosen = options.flatMap((list) => list[Math.min(choice, list.length - 1)] ?? []);
      const placements = [...problem.locked, ...chosen.flatMap(({ placements: placed }) => placed)];
      yield { work: 0, candidate: { placements, source: [...new Set(chosen.map(({ name }) => name))].join(' and ') } };
    }
  }
}

/** The whole area as if it were empty, less the blanks that come too near to something: best for a small obstacle. */
function* rowsAcross(owner: PatternPart, { problem }: SearchContext, mostRows: number): Generator<SearchStep> {
  const before = owner.asked.count;
  const options = stackedFields(owner, problem.usable, ({ spacing }) => rowKinds(spacing), mostRows);
  yield { work: owner.asked.count - before };
  for (const { name, placements } of options) {
    yield { work: placements.length, candidate: { placements: [...problem.locked, ...clearOnes(problem, placements)], source: name } };
  }
}
