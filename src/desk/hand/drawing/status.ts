import { toMillimetres } from '../../../base/units.ts';
import type { Format } from '../../../render/format.ts';
import type { HandWords, JudgedState } from '../../../render/messages/hand-words.ts';
import { requiredGap } from '../../../layout/problem.ts';
import { stationsOf } from '../document.ts';
import type { Working } from '../working.ts';
import { blankFacts } from '../facts/blank-facts.ts';
import type { SheetFrame } from '../sheet-frame.ts';
import { shown, type Situation } from '../situation.ts';
import { html } from './elements.ts';

export interface StatusLine {
  readonly element: HTMLElement;
  show(situation: Situation, told: { readonly judged: JudgedState; readonly working: Working | undefined }, words: HandWords, format: Format): void;
}

/** A line of words under the sheet, read out politely: the state, what is selected, what happened; beside it how long work stands. */
export function statusLine(frame: SheetFrame, onStop: () => void): StatusLine {
  const state = html('strong', { class: 'hand-state' });
  const text = html('span', {});
  const said = html('div', { class: 'hand-status', role: 'status' }, [state, ' ', text]);
  const progress = html('span', {});
  const stop = html('button', { type: 'button' });
  stop.addEventListener('click', onStop);
  const work = html('div', { class: 'hand-working' }, [progress, stop]);
  const element = html('div', { class: 'hand-foot' }, [said, work]);
  const showWork = (working: Working | undefined, words: HandWords, format: Format) => {
    work.hidden = !working;
    if (!working) return;
    progress.textContent = working.stopping ? words.stopping : words.progress(working.ups, working.limit, format.duration(working.seconds));
    // A tidied sheet comes at once or not at all.
    stop.hidden = working.wish === 'tidy' || working.stopping === true;
    stop.textContent = words.commands['stop'].name;
    stop.title = words.commands['stop'].does;
  };
  return {
    element,
    show: (situation, { judged, working }, words, format) => {
      showWork(working, words, format);
      const now = words.states[judged];
      if (state.textContent !== now) state.textContent = now;
      state.dataset['state'] = judged;
      const told = (working ? `${words.working[working.wish]} · ` : '') + sentence(situation, frame, words, format);
      if (text.textContent === told) return;
      text.textContent = told;
      // There is room for two lines; what is cut off can be read by pointing at it.
      said.title = told;
    },
  };
}

function sentence(situation: Situation, frame: SheetFrame, words: HandWords, format: Format): string {
  const { live, measured, notice, faults, selected, history } = situation;
  const only = selected.size === 1 && !live ? history.present.blanks.find(({ id }) => selected.has(id)) : undefined;
  // Its faults are told with their figures below.
  const parts = [only ? words.blank(blankFacts(only, stationsOf(history.present, frame).indexOf(only) + 1, [], frame), format) : words.selected(selected.size, shown(situation).blanks.length)];
  if (live) parts.push(words.moved(toMillimetres(live.by.x), toMillimetres(live.by.y), format));
  if (measured) {
    const [along, away] = [toMillimetres(measured.to.x - measured.from.x), toMillimetres(measured.to.y - measured.from.y)];
    parts.push(words.measured(along, away, Math.sqrt(along * along + away * away), format));
  }
  if (notice) parts.push(words.notices[notice]);
  const worst = faults.reduce<(typeof faults)[number] | undefined>((most, fault) => (most && most.byMm >= fault.byMm ? most : fault), undefined);
  if (worst) parts.push(words.fault(worst.kind, worst.byMm, toMillimetres(requiredGap(frame.problem.rules)), format) + (faults.length > 1 ? ` (+${faults.length - 1})` : ''));
  if (!live && !notice && !worst && history.past && selected.size === 0) parts.push(words.commands[history.past.done]?.name ?? '');
  return parts.filter((part) => part !== '').join(' · ');
}
