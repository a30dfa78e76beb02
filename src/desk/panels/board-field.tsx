import { useDesk } from '../desk-context.ts';
import { nameOfRecord } from '../job/records.ts';
import { useWords } from '../words/words.ts';
import { ChoiceField } from './fields.tsx';

/** The board, chosen where the sheet is chosen and where it is paid for. */
export function BoardField() {
  const { desk } = useDesk();
  const { say } = useWords();
  const options = [['', say('none')] as const, ...desk.records.value.boards.map((one) => [one.id, nameOfRecord(one)] as const)];
  return <ChoiceField label={say('field-board')} value={desk.job.value.sheet.board} options={options} onChange={(board) => desk.change((job) => ({ ...job, sheet: { ...job.sheet, board } }))} />;
}
