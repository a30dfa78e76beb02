import type { LayoutState } from '../job/layouts.ts';
import { useWords } from '../words/words.ts';

const SIGNS: Readonly<Record<LayoutState, string>> = { 'not judged': '…', sound: '✓', faulty: '!', 'out of date': '↻' };

/** The state of a layout, by word and sign as well as colour. */
export function StateMark({ state }: { readonly state: LayoutState }) {
  const { say } = useWords();
  return (
    <span class={`state state-${state.replaceAll(' ', '-')}`}>
      <span aria-hidden="true">{SIGNS[state]}</span> {say(`state-${state}`)}
    </span>
  );
}
