import type { CompareFacts } from '../../render/compare-facts.ts';
import { gapOnDesk, limitOnDesk } from '../comparing.ts';
import { useDesk } from '../desk-context.ts';
import { Picture } from '../picture/picture.tsx';
import { useWords } from '../words/words.ts';
import { useAnswer } from './use-answer.ts';

interface Props {
  readonly facts: CompareFacts;
  readonly index: number;
  readonly isWinner: boolean;
  readonly onTake: () => void;
}

/** One sheet that could be bought: picture, ups, board and cost at the quantity asked. */
export function SheetCard({ facts, index, isWinner, onTake }: Props) {
  const { desk } = useDesk();
  const { say, format } = useWords();
  const compared = facts.sheets[index]!;
  const { sheet, ups, boardM2WithWaste, costPerThousand, layout, grain, origin, fromCartons } = compared;
  const picture = useAnswer(() => desk.engine.ask('picture', { file: layout, grain, small: true }), [layout, format]);
  const size = format.size(sheet.width, sheet.height);
  const cost = costPerThousand[0];
  const { gap } = desk.comparison.value;
  const take = gap !== undefined && gap !== gapOnDesk(desk) ? say('take-sheet-with-gap', { gap: format.length(gap) }) : say('take-sheet');
  return (
    <li class={isWinner ? 'card chosen' : 'card'}>
      {picture.kind === 'answer' && <Picture still scene={picture.answer} name={`compared${index}`} label={say('picture-of-layout', { ups, size })} />}
      <p class="card-ups">{say('ups', { ups })}</p>
      <p>{size}</p>
      {grain && <p class="card-facts">{say('filter-grain')}: {say(`grain-${grain}`)}</p>}
      <p class="card-facts">{say(`origin-${origin.kind}`)}{fromCartons !== undefined && fromCartons > 0 && `, ${say('from-cartons', { count: format.number(fromCartons, 0) })}`}</p>
      <p class="card-facts">{say('at-most', { limit: limitOnDesk(desk, compared) })}</p>
      <p class="card-facts">{say('board-per-thousand-with-waste', { area: format.board(boardM2WithWaste[0] ?? 0, 1) })}</p>
      <p class="card-facts">{cost === null || cost === undefined ? say('cost-open') : say('cost-per-thousand', { cost: format.money(cost, facts.currency) })}</p>
      {isWinner && <p class="state">✓ {say('winner-here')}</p>}
      {index === 0 ? <p class="card-facts">{say('the-usual-sheet')}</p> : <button type="button" class="small" onClick={onTake} aria-label={`${take}: ${size}`}>{take}</button>}
    </li>
  );
}
