import type { Desk } from '../desk.ts';
import type { Hand, HandState } from '../hand/hand.ts';
import type { KeptLayout } from '../job/job.ts';
import { answered } from '../reading.ts';
import { wordsIn } from '../words/words.ts';
import { newId } from '../new-id.ts';

/** What the desk does for the hand that works on one layout. */
export interface HandWork {
  /** Id of the layout that the hand's state is kept as. */
  readonly id: () => string;
  /** The layout as the hand last left it. */
  readonly file: () => KeptLayout['file'];
  changed(state: HandState): void;
  asked(wish: 'solve-rest' | 'tidy', state: HandState): void;
}

/**
 * Keeps what the hand does: the first change of a layout makes a copy of it, so that what was found stays. Every change is
 * judged in the worker; an old judgement is passed over by its revision.
 */
export function createHandWork(desk: Desk, start: KeptLayout, hand: () => Hand | undefined): HandWork {
  let { id, file } = start;
  const words = () => wordsIn(desk.locale.value, desk.unit.value);
  const keep = ({ layout, locked }: HandState, state: KeptLayout['state']) => {
    file = layout;
    desk.note((job) => {
      const before = job.layouts.find((one) => one.id === id) ?? start;
      const isNew = !before.byHand;
      if (isNew) id = newId();
      const kept: KeptLayout = { ...before, id, file: layout, locked, state, byHand: true, changed: undefined, history: [], limits: [], seconds: undefined };
      const layouts = isNew ? [...job.layouts, kept] : job.layouts.map((one) => (one.id === id ? kept : one));
      return { ...job, layouts, chosen: id };
    });
  };
  return {
    id: () => id,
    file: () => file,
    changed: async (state) => {
      keep(state, 'not judged');
      if (state.layout.placements.length === 0) return;
      const judged = await answered(() => desk.engine.ask('judge', state.layout));
      if (judged.kind !== 'answer' || hand()?.state.revision !== state.revision) return;
      keep(state, judged.answer.state);
      hand()?.update({ judged: { revision: state.revision, judgement: judged.answer } });
    },
    asked: async (wish, { layout, locked }) => {
      hand()?.update({ busy: true });
      desk.helper.tell('begin');
      const worked = await answered(() => desk.helper.ask('byHand', { layout, locked, wish, effort: desk.job.value.effort }));
      hand()?.update({ busy: false });
      if (worked.kind === 'issues') desk.notice.value = worked.issues.map(words().issue).join(' ');
      else if (worked.kind === 'answer' && hand()?.judged === 'sound' && worked.answer.layout.placements.length < layout.placements.length) desk.notice.value = words().say('rest-no-better');
      else hand()?.update({ layout: worked.answer.layout, locked: worked.answer.locked, done: wish });
    },
  };
}
