import { useDesk } from '../desk-context.ts';
import type { SheetFields } from '../job/job.ts';
import { LEAST_SIDE_MM, LONGEST_MM } from '../job/laying.ts';
import { nameOfRecord, stockSizes, type NamedRecord } from '../job/records.ts';
import { sizeChoice, typedExamples } from '../job/typed-length.ts';
import { takeFile } from '../taking.ts';
import { broughtWords } from '../words/brought-words.ts';
import { useWords } from '../words/words.ts';
import { BoardField } from './board-field.tsx';
import { Block, ChoiceField } from './fields.tsx';
import { FilePicker } from './file-picker.tsx';
import { FramePicture } from './frame-picture.tsx';
import { Layout } from './layout.tsx';
import { SizeField } from './length-field.tsx';
import { OwnRecords } from './own-records.tsx';
import { SheetBoard } from './sheet-board.tsx';
import { useAnswer } from './use-answer.ts';

export function SheetPanel() {
  const { desk } = useDesk();
  const { say, format } = useWords();
  const examples = typedExamples(format);
  const { sheet } = desk.job.value;
  const { presses, cutters } = desk.records.value;
  const brought = useBrought();
  const set = (fields: Partial<SheetFields>, kind = '') => desk.change((job) => ({ ...job, sheet: { ...job.sheet, ...fields } }), kind);
  const choice = (list: readonly NamedRecord[]) => [['', say('none')] as const, ...list.map((one) => [one.id, nameOfRecord(one)] as const)];
  return (
    <Layout
      controls={
        <>
          <Block title={say('panel-sheet')}>
            <SizeField label={say('field-size')} hint={say('hint-size', examples)} value={sheet.size} choices={stockSizes(desk.records.value).map((size) => sizeChoice(size, format))}
              fault={desk.faultyFields.value.includes('size') ? say('fault-size', { ...examples, least: format.length(LEAST_SIDE_MM), most: format.length(LONGEST_MM) }) : undefined} onInput={(size) => set({ size }, 'sheet size')} />
            <ChoiceField label={say('field-press')} hint={brought('press')} value={sheet.press} options={choice(presses)} onChange={(press) => set({ press })} />
            <ChoiceField label={say('field-cutter')} hint={brought('cutter')} value={sheet.cutter} options={choice(cutters)} onChange={(cutter) => set({ cutter })} />
            <BoardField />
            <ChoiceField label={say('field-sheet-grain')} hint={say('hint-sheet-grain')} value={sheet.sheetGrain} onChange={(sheetGrain) => set({ sheetGrain })}
              options={[['', say('from-board')], ['x', say('grain-x')], ['y', say('grain-y')], ['long', say('long-grain')], ['short', say('short-grain')]]} />
          </Block>
          <Block isForDoing title={say('own-records')}>
            <OwnRecords kinds={['presses', 'cutters', 'boards']} />
            <FilePicker accept=".json,.csv" label={say('choose-record')} hint={say('hint-record')} onFile={(name, content) => void takeFile(desk, name, content)} />
            <p class="hint">{say('records-invented')}</p>
          </Block>
        </>
      }
      picture={
        <>
          <FramePicture />
          <SheetBoard />
        </>
      }
    />
  );
}

/** What holds because of a machine that was chosen, in words. */
function useBrought(): (kind: 'press' | 'cutter') => string | undefined {
  const { desk } = useDesk();
  const words = useWords();
  const { press, cutter } = desk.machines.value;
  const isChosen = press !== undefined || cutter !== undefined;
  const asked = useAnswer(isChosen ? async () => ({ press, cutter, said: await desk.engine.ask('brought', { press, cutter }) }) : undefined, [press, cutter]);
  return (kind) => {
    // What was asked of the machine before is not said of this one.
    if (asked.kind !== 'answer' || asked.answer.press !== press || asked.answer.cutter !== cutter) return undefined;
    const of = asked.answer.said[kind];
    return of && broughtWords(of, desk.job.value.limits, words);
  };
}
