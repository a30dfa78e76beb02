import { useEffect, useRef } from 'preact/hooks';
import { useDesk } from '../desk-context.ts';
import type { Hand, HandMemory } from '../hand/hand.ts';
import type { KeptLayout } from '../job/job.ts';
import { samePlacements } from '../job/layouts.ts';
import { handWordsIn, useWords } from '../words/words.ts';
import { createHandWork, type HandWork } from './hand-work.ts';

/** The chosen layout under the hand: to see, move, turn, lock, have filled. Loaded when it is first looked at. */
export function HandSheet({ layout, goTo }: { readonly layout: KeptLayout; readonly goTo?: { readonly place: readonly [number, number] } | undefined }) {
  const { desk } = useDesk();
  const { locale, format, say } = useWords();
  const outdated = desk.stateOf(layout) === 'out of date';
  const host = useRef<HTMLDivElement>(null);
  const present = useRef<{ hand: Hand; work: HandWork } | undefined>(undefined);
  /** So that the page's own Undo goes through the hand's steps first. */
  const tellSteps = () => {
    const hand = present.current?.hand;
    if (hand) desk.underHand.value = { canUndo: hand.canUndo, canRedo: hand.canRedo, undo: hand.undo, redo: hand.redo };
  };
  const leave = () => {
    if (!present.current) return;
    const { hand, work } = present.current;
    work.left();
    remember(work.id(), hand.memory);
    hand.destroy();
    desk.underHand.value = undefined;
    present.current = undefined;
  };

  useEffect(() => {
    // A change by hand gives the layout an id of its own; the hand is there already.
    if (present.current?.work.id() === layout.id) return;
    let isLeft = false;
    const mount = ({ mountHand }: typeof import('../hand/hand.ts')) => {
      if (isLeft || !host.current) return;
      // A search may find something better in the middle of a drag: nobody's blank is taken out of the hand.
      if (present.current?.hand.isBusy) {
        setTimeout(mount, PATIENCE_MS, { mountHand });
        return;
      }
      leave();
      const work = createHandWork(desk, layout, () => (present.current?.work === work ? present.current.hand : undefined));
      const { file, locked = [] } = layout;
      const hand = mountHand(host.current, { layout: file, locked, memory: memories.get(layout.id) ?? layout.steps, words: handWordsIn(locale), lengths: format, onChange: (state) => { tellSteps(); work.changed(state); }, onAsk: work.asked });
      present.current = { hand, work };
      hand.update({ outdated: desk.stateOf(layout) === 'out of date' });
      tellSteps();
      if (file.placements.length > 0) void desk.engine.ask('judge', file).then((judgement) => hand.update({ judged: { revision: hand.state.revision, judgement } }), () => undefined);
    };
    void import('../hand/hand.ts').then(mount);
    return () => {
      isLeft = true;
    };
  }, [layout.id]);
  useEffect(() => {
    // Changed by somebody else: an undo of the job, another tab.
    const { hand, work } = present.current ?? {};
    // As it is now: what was rendered may be older than the hand's last change.
    const now = desk.job.value.layouts.find(({ id }) => id === work?.id());
    if (hand && work && now && !samePlacements(work.file(), now.file)) hand.update({ layout: now.file, locked: now.locked ?? [] });
  }, [layout.file]);
  useEffect(() => present.current?.hand.update({ outdated }), [outdated]);
  useEffect(() => present.current?.hand.update({ words: handWordsIn(locale), lengths: format }), [format]);
  useEffect(() => {
    if (goTo) present.current?.hand.goTo(goTo.place, FAULT_VIEW_MM);
  }, [goTo]);
  useEffect(() => leave, []);
  return <div ref={host} class="hand-host" role="region" aria-label={say('sheet-by-hand')} />;
}

/** How often it is looked whether the hand is free again, milliseconds. */
const PATIENCE_MS = 200;

/** Width of sheet that is seen around a fault, mm. */
const FAULT_VIEW_MM = 60;

/** Steps of the hand on each layout, so that they can be taken back after looking at another panel or layout. */
const memories = new Map<string, HandMemory>();

/** More layouts than these are not gone back to; what was done on others is let go. */
const MOST_REMEMBERED = 8;

function remember(id: string, memory: HandMemory): void {
  memories.delete(id);
  memories.set(id, memory);
  const [oldest] = memories.keys();
  if (memories.size > MOST_REMEMBERED && oldest !== undefined) memories.delete(oldest);
}
