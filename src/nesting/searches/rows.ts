import type { Box } from '../../geometry/point.ts';
import type { Placement } from '../../layout/problem.ts';
import { fieldSets } from '../patterns/fields.ts';
import { createFrame, patternParts, placeItems, type PatternPart } from '../patterns/frame.ts';
import { stackName } from '../patterns/pattern-name.ts';
import { rowKinds } from '../patterns/row-kinds.ts';
import { countOf, itemsOf } from '../patterns/row-stack.ts';
import { stacksOf } from '../patterns/stacks.ts';
import type { Search } from '../search.ts';

/** Rows along the sheet and across it: plain, shifted, head-to-tail, every second one turned, and any mixture. */
export const rowsSearch: Search = {
  name: 'rows',
  *run({ problem }) {
    for (const owner of patternParts(problem)) {
      for (const fields of fieldSets(problem, leastSide(owner))) {
        let counted = owner.asked.count;
        const options = fields.map((field) => stackedFields(owner, field));
        const work = owner.asked.count - counted;
        counted = owner.asked.count;
        const most = Math.max(0, ...options.map((list) => list.length));
        for (let choice = 0; choice < most; choice++) {
          const chosen = options.flatMap((list) => list.slice(Math.min(choice, list.length - 1)).slice(0, 1));
          const placements = [...problem.locked, ...chosen.flatMap(({ placements: placed }) => placed)];
          yield { work: choice === 0 ? work : 0, candidate: { placements, source: [...new Set(chosen.map(({ name }) => name))].join(' and ') } };
        }
      }
    }
  },
};

interface FilledField {
  readonly name: string;
  readonly placements: readonly Placement[];
}

/** The stacks along both axes, most blanks first. */
function stackedFields(owner: PatternPart, field: Box): FilledField[] {
  return [false, true]
    .flatMap((swapped) => {
      const frame = createFrame(owner, field, swapped);
      return stacksOf(frame, rowKinds(frame.spacing)).map((stack) => ({ count: countOf(stack), name: stackName(stack, frame), placements: placeItems(frame, itemsOf(stack)) }));
    })
    .filter(({ count }) => count > 0)
    .toSorted((a, b) => b.count - a.count);
}

function leastSide({ versions }: PatternPart): number {
  return Math.min(...versions.map(({ width, height }) => Math.min(width, height)));
}
