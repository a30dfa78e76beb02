import type { RefObject } from 'preact';
import { useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks';
import { InputError } from '../../base/issue.ts';
import { useDesk } from '../desk-context.ts';
import { jobToFile } from '../job/job-file.ts';
import { useWords } from '../words/words.ts';
import { EntryView } from './entry-view.tsx';
import { Finding, type Question } from './finding.tsx';
import type { EntryKind, ServedLibrary } from './served-library.ts';

interface Props {
  readonly dialog: RefObject<HTMLDialogElement | null>;
  readonly library: ServedLibrary;
}

/** The library of the shop, beside the desk: look for a thing, look at it, put it on the desk. */
export function LibraryDialog({ dialog, library }: Props) {
  const { desk } = useDesk();
  const { say, issue } = useWords();
  const [isOpen, setOpen] = useState(false);
  const [question, setQuestion] = useState<Question>({ text: '', kind: '', within: 1, page: 1, like: undefined });
  const [entry, setEntry] = useState<{ readonly kind: EntryKind; readonly id: string }>();
  const top = useRef<HTMLHeadingElement>(null);
  // Nothing is asked before the library is looked at.
  useEffect(() => {
    const element = dialog.current;
    if (!element) return undefined;
    const watch = new MutationObserver(() => setOpen(element.open));
    watch.observe(element, { attributeFilter: ['open'] });
    return () => watch.disconnect();
  }, []);
  // At once: later it would take the focus from whoever types already.
  useLayoutEffect(() => {
    if (isOpen) top.current?.focus();
  }, [entry]);
  const close = () => dialog.current?.close();
  const name = desk.job.value.name.trim();
  const keep = async () => {
    try {
      const { kept, revision } = await library.keepJob(name, JSON.parse(jobToFile({ ...desk.job.value, layouts: [] })) as object);
      desk.notice.value = say(kept === 'unchanged' ? 'job-in-library-already' : 'job-in-library', { name, revision });
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      desk.notice.value = error.issues.map(issue).join(' ');
    }
  };
  return (
    <dialog ref={dialog} class="library" aria-labelledby="library-title">
      <div class="library-head">
        <h2 id="library-title" ref={top} tabIndex={-1}>{say('library')}</h2>
        <div class="buttons">
          {entry && <button type="button" onClick={() => setEntry(undefined)}>{say('back-to-list')}</button>}
          <button type="button" disabled={name === ''} onClick={() => void keep()}>{say('keep-job-in-library')}</button>
          <button type="button" onClick={close}>{say('close')}</button>
        </div>
      </div>
      {isOpen && !entry && <Finding library={library} question={question} onAsk={setQuestion} onPick={setEntry} />}
      {isOpen && entry && <EntryView library={library} kind={entry.kind} id={entry.id} onPut={close} />}
    </dialog>
  );
}
