import { useRef } from 'preact/hooks';
import { keepTogether } from '../../render/no-break.ts';
import { useDesk } from '../desk-context.ts';
import { useWords } from '../words/words.ts';

/** The answer to the customer on the phone: in few words, large, then in full, and copied with one click. */
export function SheetVerdict({ brief, verdict }: { readonly brief: string; readonly verdict: string }) {
  const { desk } = useDesk();
  const { say } = useWords();
  const text = useRef<HTMLDivElement>(null);
  const copy = async () => {
    try {
      await navigator.clipboard.writeText(brief === verdict ? verdict : `${brief} ${verdict}`);
      desk.notice.value = say('sentence-copied');
    } catch {
      // Over plain HTTP, or forbidden: the text is marked, and the person copies it.
      getSelection()?.selectAllChildren(text.current!);
      desk.notice.value = say('sentence-marked');
    }
  };
  return (
    <div class="verdict">
      <div ref={text} role="status">
        <p class="verdict-brief">{keepTogether(brief)}</p>
        {verdict !== brief && <p class="answer">{keepTogether(verdict)}</p>}
      </div>
      <button type="button" disabled={brief === ''} onClick={() => void copy()}>{say('copy-sentence')}</button>
    </div>
  );
}
