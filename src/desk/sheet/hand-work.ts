import type { Desk } from '../desk.ts';
import type { Hand, HandState } from '../hand/hand.ts';
import type { Wish } from '../hand/working.ts';
import { lastSteps, withinBounds } from '../hand/last-steps.ts';
import type { KeptLayout } from '../job/job.ts';
import { samePlacements } from '../job/layouts.ts';
import { newId } from '../new-id.ts';
import { answered } from '../reading.ts';
import { wordsIn } from '../words/words.ts';

/** What the desk does for the hand that works on one layout. */
export interface HandWork {
  /** Id of the layout that the hand's state is kept as. */
  readonly id: () => string;
  /** The layout as the hand last left it. */
  readonly file: () => KeptLayout['file'];
  changed(state: HandState): void;
  asked(wish: Wish | 'stop', state: HandState): void;
  /** The hand goes to another layout: nobody waits for what it asked for any more. */
  left(): void;
}

/** How often it is told how long something takes, milliseconds. */
const TELL_EVERY_MS = 500;

/**
 * Keeps what the hand does: the first change of a layout makes a copy of it, so that what was found stays. Every change is
 * judged in the worker; an old judgement is passed over by its revision. `hand`: undefined once it works on another layout.
 */
export function createHandWork(desk: Desk, start: KeptLayout, hand: () => Hand | undefined): HandWork {
  let { id, file } = start;
  let stop: (() => void) | undefined;
  const words = () => wordsIn(desk.locale.value, desk.unit.value);
  const keep = ({ layout, locked }: HandState, state: KeptLayout['state'], { memory }: Hand) => {
    file = layout;
    desk.note((job) => {
      const before = job.layouts.find((one) => one.id === id) ?? start;
      const isNew = !before.byHand;
      if (isNew) id = newId();
      const kept: KeptLayout = { ...before, id, file: layout, locked, state, steps: lastSteps(memory, job.layouts), byHand: true, history: [], limits: [], seconds: undefined };
      const layouts = isNew ? [...job.layouts, kept] : job.layouts.map((one) => (one.id === id ? kept : one));
      return { ...job, layouts: withinBounds(layouts), chosen: id };
    });
  };

  const workOn = async (wish: Wish, { layout, locked, revision }: HandState) => {
    const begun = performance.now();
    let working: Parameters<Hand['update']>[0]['working'];
    const tell = (more: object) => {
      working = { wish, ...working, ...more, seconds: (performance.now() - begun) / 1000 };
      hand()?.update({ working });
    };
    tell({});
    const clock = setInterval(tell, TELL_EVERY_MS, {});
    stop = () => {
      desk.helper.tell('stop');
      tell({ stopping: true });
    };
    desk.helper.tell('begin');
    const worked = await answered(() => desk.helper.ask('byHand', { layout, locked, wish, effort: desk.job.value.effort }, tell)).finally(() => {
      clearInterval(clock);
      stop = undefined;
      hand()?.update({ working: undefined });
    });
    if (worked.kind === 'issues') desk.notice.value = worked.issues.map(words().issue).join(' ');
    else if (hand()?.state.revision !== revision) hand()?.update({ notice: 'overtaken' });
    else take(wish, layout, worked.answer);
  };
  /** Only what is better than a sound sheet takes its place. */
  const take = (wish: Wish, before: KeptLayout['file'], { layout, locked }: Pick<HandState, 'layout' | 'locked'>) => {
    if (wish === 'tidy' && samePlacements(before, layout)) hand()?.update({ notice: 'tidy-already' });
    else if (wish === 'solve-rest' && hand()?.judged === 'sound' && layout.placements.length <= before.placements.length) hand()?.update({ notice: 'rest-no-better' });
    else hand()?.update({ layout, locked, done: wish });
  };
  return {
    id: () => id,
    file: () => file,
    changed: async (state) => {
      stop?.();
      const present = hand();
      if (!present) return;
      // What a hand that moves blanks asks for next may be long in loading.
      if (state.revision === 1) desk.helper.warm('byHand');
      keep(state, 'not judged', present);
      if (state.layout.placements.length === 0) return;
      const judged = await answered(() => desk.engine.ask('judge', state.layout));
      if (judged.kind !== 'answer' || present.state.revision !== state.revision || !hand()) return;
      keep(state, judged.answer.state, present);
      present.update({ judged: { revision: state.revision, judgement: judged.answer } });
    },
    asked: (wish, state) => (wish === 'stop' ? stop?.() : void workOn(wish, state)),
    left: () => {
      if (stop) desk.notice.value = words().say('rest-left');
      stop?.();
    },
  };
}
