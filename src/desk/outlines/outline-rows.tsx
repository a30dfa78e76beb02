import { useDesk } from '../desk-context.ts';
import { MOST_OUTLINES, type OutlineFields, type OutlinesFault } from '../job/outlines.ts';
import { letterOf } from '../job/versions.ts';
import { FilePicker } from '../panels/file-picker.tsx';
import { useAnswer } from '../panels/use-answer.ts';
import { useWords } from '../words/words.ts';
import { addFile, addFromDesk, changeOutlines } from './outlines-work.ts';

/** The drawings with their quantities, one row each, and where more come from. */
export function OutlineRows({ faults }: { readonly faults: readonly OutlinesFault[] }) {
  const { desk, files } = useDesk();
  const { say } = useWords();
  const { drawing, outlines: { list } } = desk.job.value;
  const names = useAnswer(files.list, [files]);
  const isFaulty = (field: 'name' | 'quantity', row: number) => faults.some((fault) => fault.field === field && fault.row === row);
  const set = (row: number, fields: Partial<OutlineFields>) => changeOutlines(desk, (now) => ({ ...now, list: now.list.with(row, { ...now.list[row]!, ...fields }) }), `outline ${row} ${Object.keys(fields).join()}`);
  const isListed = (name: string) => list.some(({ source }) => source.kind === 'file' && source.name === name);
  const opened = names.kind === 'answer' ? names.answer.filter((name) => /\.(svg|dxf|pdf)$/i.test(name) && !isListed(name)) : [];
  return (
    <>
      <ul class="gang-rows">
        {list.map(({ id, name, quantity }, row) => (
          <li key={id}>
            <span class="outline-letter" aria-hidden="true">{letterOf(row)}</span>
            <input aria-label={say('outline-name', { letter: letterOf(row) })} value={name} autocomplete="off" spellcheck={false} aria-invalid={isFaulty('name', row)} onInput={(event) => set(row, { name: event.currentTarget.value })} />
            <input class="number" aria-label={say('outline-quantity', { letter: letterOf(row) })} value={quantity} placeholder={say('quantity-short')} inputMode="numeric" autocomplete="off" aria-invalid={quantity !== '' && isFaulty('quantity', row)} onInput={(event) => set(row, { quantity: event.currentTarget.value })} />
            <button type="button" class="small" aria-label={say('remove-outline', { letter: letterOf(row) })} onClick={() => changeOutlines(desk, (now) => ({ ...now, list: now.list.toSpliced(row, 1) }))}>×</button>
          </li>
        ))}
      </ul>
      {list.length < MOST_OUTLINES && (
        <>
          <div class="buttons">
            {drawing && !list.some(({ source }) => source === drawing || (source.kind === 'file' && drawing.kind === 'file' && source.name === drawing.name)) && <button type="button" onClick={() => addFromDesk(desk)}>{say('add-from-desk')}</button>}
            {opened.map((name) => <button key={name} type="button" class="small" onClick={() => void addFile(desk, name, files.read(name))}>{say('add-opened', { name })}</button>)}
          </div>
          <FilePicker accept=".svg,.dxf,.pdf" label={say('add-drawing')} hint={say('hint-add-drawing')} onFile={(name, content) => void addFile(desk, name, content)} />
        </>
      )}
    </>
  );
}
