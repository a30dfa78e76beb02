import type { RefObject } from 'preact';
import { useWords } from '../words/words.ts';
import { KEYS } from './keys.ts';

/** Every key, so that nothing needs a pointer. */
export function KeyList({ dialog }: { readonly dialog: RefObject<HTMLDialogElement | null> }) {
  const { say } = useWords();
  return (
    <dialog ref={dialog} aria-labelledby="keys-title">
      <h2 id="keys-title">{say('keys')}</h2>
      <dl class="facts">
        {KEYS.map(([keys, word]) => (
          <>
            <dt key={word}><kbd>{keys}</kbd></dt>
            <dd>{say(word)}</dd>
          </>
        ))}
      </dl>
      <button type="button" onClick={() => dialog.current?.close()}>{say('close')}</button>
    </dialog>
  );
}
