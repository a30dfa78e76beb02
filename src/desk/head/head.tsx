import { useRef } from 'preact/hooks';
import { useDesk } from '../desk-context.ts';
import { LibraryDialog } from '../library/library-dialog.tsx';
import { LOCALES, useWords } from '../words/words.ts';
import { Jobs } from './jobs.tsx';
import { KeyList } from './key-list.tsx';
import { NewVersion, SavingMark } from './saving-mark.tsx';

/** The head of the page: whose job it is, steps back and forward, language, keys. */
export function Head() {
  const { desk, library } = useDesk();
  const { say } = useWords();
  const { job } = desk;
  const keys = useRef<HTMLDialogElement>(null);
  const jobs = useRef<HTMLDialogElement>(null);
  const shelf = useRef<HTMLDialogElement>(null);
  return (
    <header class="head">
      <h1>Blankwright</h1>
      <label class="job-name">
        <span class="unseen">{say('job-name')}</span>
        <input value={job.value.name} placeholder={say('job-name')} onInput={(event) => { const name = event.currentTarget.value; desk.change((now) => ({ ...now, name }), 'name'); }} />
      </label>
      <SavingMark />
      <NewVersion />
      <div class="head-tools">
        <button type="button" disabled={!desk.canUndo.value} onClick={desk.undo}>{say('undo')}</button>
        <button type="button" disabled={!desk.canRedo.value} onClick={desk.redo}>{say('redo')}</button>
        <button type="button" onClick={() => jobs.current?.showModal()}>{say('jobs')}</button>
        {library && <button type="button" onClick={() => shelf.current?.showModal()}>{say('library')}</button>}
        <button type="button" data-opens="keys" onClick={() => keys.current?.showModal()}>{say('keys')}</button>
        <label>
          <span class="unseen">{say('lengths-in')}</span>
          <select value={desk.unit.value} onChange={(event) => (desk.unit.value = event.currentTarget.value as typeof desk.unit.value)}>
            {(['mm', 'in'] as const).map((unit) => <option key={unit} value={unit} selected={unit === desk.unit.value}>{unit}</option>)}
          </select>
        </label>
        <label>
          <span class="unseen">{say('language')}</span>
          <select value={desk.locale.value} onChange={(event) => (desk.locale.value = event.currentTarget.value as typeof desk.locale.value)}>
            {LOCALES.map((locale) => <option key={locale} value={locale} selected={locale === desk.locale.value}>{say(`language-${locale}`)}</option>)}
          </select>
        </label>
      </div>
      <KeyList dialog={keys} />
      <Jobs dialog={jobs} />
      {library && <LibraryDialog dialog={shelf} library={library} />}
    </header>
  );
}
