import { PANELS } from '../desk.ts';
import type { DeskParts } from '../desk-context.ts';

/** Keys of the whole page; those of a picture are heard by the picture. Shown by `KeyList`, word `key-…` each. */
export const KEYS = [
  ['Alt+1 … Alt+7', 'key-panels'],
  ['Control+Z', 'key-undo'],
  ['Control+Shift+Z, Control+Y', 'key-redo'],
  ['Alt+S', 'key-search'],
  ['Alt+P', 'key-pause'],
  ['Alt+N, Alt+B', 'key-next'],
  ['+ −', 'key-zoom'],
  ['← ↑ → ↓', 'key-move'],
  ['0', 'key-whole'],
  ['?', 'key-list'],
] as const;

/** Returns how to end it. */
export function listenToKeys(parts: DeskParts): () => void {
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.defaultPrevented || !pressed(event, parts)) return;
    event.preventDefault();
  };
  addEventListener('keydown', onKeyDown);
  return () => removeEventListener('keydown', onKeyDown);
}

/** True when the key was meant for the page. */
function pressed(event: KeyboardEvent, { desk, searching }: DeskParts): boolean {
  const { key, altKey, ctrlKey, metaKey, shiftKey } = event;
  const typing = event.target instanceof HTMLElement && event.target.matches('input, select, textarea');
  const letter = key.toLowerCase();
  if ((ctrlKey || metaKey) && (letter === 'z' || letter === 'y')) {
    if (typing && event.target.matches('input:not([type=checkbox], [type=radio], [type=range])')) return false;
    (shiftKey || letter === 'y' ? desk.redo : desk.undo)();
    return true;
  }
  if (altKey) return withAlt(event.code);
  if (key !== '?' || typing) return false;
  document.querySelector<HTMLButtonElement>('[data-opens="keys"]')?.click();
  return true;

  function withAlt(code: string): boolean {
    const panel = PANELS[Number(/^Digit([1-7])$/.exec(code)?.[1]) - 1];
    if (panel) {
      desk.panel.value = panel;
      document.getElementById('panel')?.focus();
      return true;
    }
    const { phase } = desk.search.value;
    if (code === 'KeyS') (phase === 'running' || phase === 'paused' ? searching.stop : searching.start)();
    else if (code === 'KeyP') (phase === 'paused' ? searching.resume : searching.pause)();
    else if (code === 'KeyN' || code === 'KeyB') chooseBeside(code === 'KeyN' ? 1 : -1);
    else return false;
    return true;
  }

  function chooseBeside(step: number): void {
    const { value: layouts } = desk.layouts;
    const at = layouts.findIndex(({ id }) => id === desk.chosen.value?.id);
    const next = layouts[(at + step + layouts.length) % layouts.length];
    if (next) desk.change((job) => ({ ...job, chosen: next.id }));
  }
}
