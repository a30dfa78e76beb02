import type { CommandName } from '../commands/command.ts';
import { HAND_KEYS } from '../keys.ts';
import type { HandWords } from '../../../render/messages/hand-words.ts';
import { html, setAttributes } from './elements.ts';
import { keyText } from './key-list.ts';
import { LAYERS, type LayerName } from './layers.ts';

type GroupName = keyof HandWords['groups'];

const GROUPS: readonly (readonly [GroupName, readonly CommandName[]])[] = [
  ['history', ['undo', 'redo']],
  ['edit', ['turn-next', 'duplicate', 'remove', 'lock']],
  ['arrange', ['rows-and-columns', 'gather', 'equal-steps']],
  ['ask', ['solve-rest', 'tidy']],
  ['look', ['measure', 'zoom-in', 'zoom-out', 'whole-sheet', 'whole-window', 'keys']],
];
const ALIGNMENTS: readonly CommandName[] = ['align-left', 'align-right', 'align-gripper', 'align-tail', 'align-above', 'align-beside'];

export interface Toolbar {
  readonly element: HTMLElement;
  /** Which buttons can be pressed now, and which are held down. Steps back and forth stand in the page's head, but where the hand covers it. */
  show(resting: ReadonlySet<CommandName>, pressed: ReadonlySet<CommandName>): void;
}

/** Short signs on buttons, where everybody knows them; the name is then read out. */
const SIGNS: Readonly<Partial<Record<CommandName, string>>> = { 'zoom-in': '+', 'zoom-out': '−' };

/** Buttons that stay in when pressed. */
const STAYING: ReadonlySet<CommandName> = new Set<CommandName>(['measure', 'lock', 'whole-window']);

/** Room kept between a list and the edge of the window, pixels. */
const WINDOW_EDGE_PX = 8;

/** Buttons for what keys do. One stop for the Tab key; the arrow keys go along the buttons. */
export function toolbar(words: HandWords, layers: ReadonlySet<LayerName>, on: { command(name: CommandName): void; layer(name: LayerName, isShown: boolean): void }): Toolbar {
  const buttons = new Map<CommandName, HTMLButtonElement>();
  const button = (name: CommandName) => {
    const { name: text, does } = words.commands[name];
    const key = HAND_KEYS.find((row) => row.does === name)?.keys[0];
    const sign = SIGNS[name];
    const made = html('button', { type: 'button', tabindex: -1, 'data-command': name, 'aria-label': sign && text, title: key ? `${does} (${keyText(key, words)})` : does }, [sign ?? text]);
    made.addEventListener('click', () => on.command(name));
    buttons.set(name, made);
    return made;
  };
  const groups = GROUPS.map(([group, names]) => html('div', { class: 'hand-group', role: 'group', 'aria-label': words.groups[group] }, names.map(button)));
  const [history] = groups;
  history.hidden = true;
  const along = [...buttons.values()];
  along.find(isSeen)!.tabIndex = 0;
  const bar = html('div', { class: 'hand-buttons', role: 'toolbar', 'aria-label': words.toolbar }, groups);
  bar.addEventListener('keydown', (event) => walk(event, along.filter(isSeen), along));
  const align = menu(words.alignTitle, ALIGNMENTS.map((name) => Object.assign(button(name), { tabIndex: 0 })));
  return {
    element: html('div', { class: 'hand-toolbar' }, [bar, align, menu(words.layersTitle, layerBoxes(words, layers, on.layer))]),
    show: (resting, pressed) => {
      history.hidden = !pressed.has('whole-window');
      for (const [name, made] of buttons) {
        // Not `disabled`: a button that has the focus must keep it.
        setAttributes(made, { 'aria-disabled': resting.has(name) ? 'true' : undefined, 'aria-pressed': STAYING.has(name) ? String(pressed.has(name)) : undefined });
      }
    },
  };
}

function isSeen(button: HTMLButtonElement): boolean {
  return !button.closest('[hidden]');
}

function walk(event: KeyboardEvent, buttons: readonly HTMLButtonElement[], all: readonly HTMLButtonElement[]): void {
  const step = { ArrowRight: 1, ArrowLeft: -1 }[event.key];
  const at = buttons.indexOf(event.target as HTMLButtonElement);
  if (step === undefined || at < 0) return;
  event.preventDefault();
  event.stopPropagation();
  const next = buttons[(at + step + buttons.length) % buttons.length];
  for (const button of all) button.tabIndex = button === next ? 0 : -1;
  next.focus();
}

/** A list that opens below its title, and closes when something else is turned to. */
function menu(title: string, rows: readonly HTMLElement[]): HTMLElement {
  const details = html('details', { class: 'hand-menu' }, [html('summary', {}, [title]), html('div', { class: 'hand-menu-list' }, rows)]);
  const list = details.lastElementChild as HTMLElement;
  // It opens below its title, moved aside as far as the window asks for.
  details.addEventListener('toggle', () => {
    list.style.translate = '';
    const { left, right } = list.getBoundingClientRect();
    const beyond = Math.max(0, right + WINDOW_EDGE_PX - document.documentElement.clientWidth) || Math.min(0, left - WINDOW_EDGE_PX);
    if (details.open && beyond !== 0) list.style.translate = `${-beyond}px`;
  });
  details.addEventListener('focusout', ({ relatedTarget }) => {
    if (!(relatedTarget instanceof Node && details.contains(relatedTarget)) && relatedTarget) details.open = false;
  });
  details.addEventListener('keydown', (event) => {
    if (event.key !== 'Escape' || !details.open) return;
    event.stopPropagation();
    details.open = false;
    details.querySelector('summary')?.focus();
  });
  return details;
}

function layerBoxes(words: HandWords, shown: ReadonlySet<LayerName>, change: (name: LayerName, isShown: boolean) => void): HTMLElement[] {
  return LAYERS.map((name) => {
    const box = html('input', { type: 'checkbox' });
    box.checked = shown.has(name);
    box.addEventListener('change', () => change(name, box.checked));
    return html('label', {}, [box, ` ${words.layers[name]}`]);
  });
}
