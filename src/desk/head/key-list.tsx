import type { RefObject } from 'preact';
import { handWordsIn, useWords, type Locale } from '../words/words.ts';
import { KEYS } from './keys.ts';

/** Every key, so that nothing needs a pointer. */
export function KeyList({ dialog }: { readonly dialog: RefObject<HTMLDialogElement | null> }) {
  const { say, locale } = useWords();
  return (
    <dialog ref={dialog} aria-labelledby="keys-title">
      <h2 id="keys-title">{say('keys')}</h2>
      <dl class="facts">
        {KEYS.map(([keys, word]) => (
          <>
            <dt key={word}><kbd>{keyNames(keys, locale)}</kbd></dt>
            <dd>{say(word)}</dd>
          </>
        ))}
      </dl>
      <button type="button" onClick={() => dialog.current?.close()}>{say('close')}</button>
    </dialog>
  );
}

/** The keys as they are labelled where the person's language is spoken. */
function keyNames(keys: string, locale: Locale): string {
  const { keyNames: names } = handWordsIn(locale);
  return keys.replace(/Control|Shift|Alt/g, (key) => names[key] ?? key);
}
