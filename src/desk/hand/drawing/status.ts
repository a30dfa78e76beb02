import { toMillimetres } from '../../../base/units.ts';
import type { Format } from '../../../render/format.ts';
import type { HandWords, JudgedState } from '../../../render/messages/hand-words.ts';
import { stationsOf } from '../document.ts';
import { blankFacts } from '../facts/blank-facts.ts';
import type { SheetFrame } from '../sheet-frame.ts';
import { shown, type Situation } from '../situation.ts';
import { html } from './elements.ts';

export interface StatusLine {
  readonly element: HTMLElement;
  show(situation: Situation, told: { readonly judged: JudgedState; readonly busy: boolean }, words: HandWords, format: Format): void;
}

/** One line of words under the sheet, read out politely: the state, what is selected, what happened. */
export function statusLine(frame: SheetFrame): StatusLine {
  const state = html('strong', { class: 'hand-state' });
  const text = html('span', {});
  const element = html('div', { class: 'hand-status', role: 'status' }, [state, ' ', text]);
  return {
    element,
    show: (situation, { judged, busy }, words, format) => {
      const now = words.states[judged];
      if (state.textContent !== now) state.textContent = now;
      state.dataset['state'] = judged;
      const said = (busy ? `${words.working} · ` : '') + sentence(situation, frame, words, format);
      if (text.textContent !== said) text.textContent = said;
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
  if (worst) parts.push(words.fault(worst.kind, worst.byMm, format) + (faults.length > 1 ? ` (+${faults.length - 1})` : ''));
  if (!live && !notice && !worst && history.past && selected.size === 0) parts.push(words.commands[history.past.done]?.name ?? '');
  return parts.filter((part) => part !== '').join(' · ');
}
