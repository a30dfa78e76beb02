import { useEffect, useRef } from 'preact/hooks';
import { useDesk } from '../desk-context.ts';
import type { Hand } from '../hand/hand.ts';
import type { KeptLayout } from '../job/job.ts';
import { handWordsIn, useWords } from '../words/words.ts';
import { createHandWork, type HandWork } from './hand-work.ts';

/** The chosen layout under the hand: to see, move, turn, lock, have filled. Loaded when it is first looked at. */
export function HandSheet({ layout }: { readonly layout: KeptLayout }) {
  const { desk } = useDesk();
  const { locale, format, say } = useWords();
  const host = useRef<HTMLDivElement>(null);
  const present = useRef<{ hand: Hand; work: HandWork } | undefined>(undefined);

  useEffect(() => {
    // A change by hand gives the layout an id of its own; the hand is there already.
    if (present.current?.work.id() === layout.id) return;
    let isLeft = false;
    void import('../hand/hand.ts').then(({ mountHand }) => {
      if (isLeft || !host.current) return;
      present.current?.hand.destroy();
      const work = createHandWork(desk, layout, () => present.current?.hand);
      const { file, locked = [] } = layout;
      const hand = mountHand(host.current, { layout: file, locked, words: handWordsIn(locale), lengths: format, onChange: work.changed, onAsk: work.asked });
      present.current = { hand, work };
      if (file.placements.length > 0) void desk.engine.ask('judge', file).then((judgement) => hand.update({ judged: { revision: hand.state.revision, judgement } }), () => undefined);
    });
    return () => {
      isLeft = true;
    };
  }, [layout.id]);
  useEffect(() => present.current?.hand.update({ words: handWordsIn(locale), lengths: format }), [locale]);
  useEffect(() => () => present.current?.hand.destroy(), []);
  return <div ref={host} class="hand-host" role="region" aria-label={say('sheet-by-hand')} />;
}
