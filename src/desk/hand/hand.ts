import { toMicrons } from '../../base/units.ts';
import type { Judgement } from '../../layout/judge.ts';
import type { LayoutFile } from '../../layout/layout-file.ts';
import type { Format } from '../../render/format.ts';
import type { HandWords, JudgedState } from '../../render/messages/hand-words.ts';
import type { Notice } from './commands/change.ts';
import type { CommandName } from './commands/command.ts';
import { mostThatFit } from './commands/rows-and-columns.ts';
import { documentOf, layoutOfDocument } from './document.ts';
import { createPicture } from './drawing/picture.ts';
import { gridForm, type GridOffer } from './drawing/grid-form.ts';
import { html } from './drawing/elements.ts';
import { keyList } from './drawing/key-list.ts';
import { FIRST_LAYERS, type LayerName } from './drawing/layers.ts';
import { statusLine } from './drawing/status.ts';
import { toolbar } from './drawing/toolbar.ts';
import { isUnderPointer } from './interaction/interaction.ts';
import { nudgeStep } from './interaction/nudge-steps.ts';
import { listenToKeys } from './listen-to-keys.ts';
import { listenToPointers } from './pointers.ts';
import { respond, type HandEvent } from './respond.ts';
import { sheetFrame, type SheetFrame } from './sheet-frame.ts';
import { warmUp } from './snapping/warm-up.ts';
import { beginSituation, shown, type Situation } from './situation.ts';
import type { View } from './view.ts';
import type { Wish, Working } from './working.ts';

/** A layout as it stands under the hand. */
export interface HandState {
  /** Placements in station order; no `result`: the hand claims nothing. */
  readonly layout: LayoutFile;
  /** Numbers of the placements that are locked. */
  readonly locked: readonly number[];
  /** Grows with every change; hand it back with a judgement. */
  readonly revision: number;
}

/** Steps and view of an earlier visit to the same sheet. Only the hand looks inside. */
export type HandMemory = Pick<Situation, 'history' | 'view' | 'selected' | 'active'>;

export interface HandInput {
  /** Sheet, rules, designs, and the placements to begin with. It must be one that can be judged; it may place nothing. */
  readonly layout: LayoutFile;
  readonly locked?: readonly number[];
  /** Goes on where an earlier hand on this layout left off, undo and redo included. */
  readonly memory?: HandMemory | undefined;
  readonly words: HandWords;
  /** How lengths are written; its unit is that of the rulers. */
  readonly lengths: Format;
  /** After every finished change, undo and redo. The page has the layout judged and hands the judgement to `update`. */
  readonly onChange: (state: HandState) => void;
  /** Asked for by button or key. The page has it done and hands the layout to `update`. */
  readonly onAsk: (wish: Wish | 'stop', state: HandState) => void;
}

/** What the page may hand in at any time. */
export interface HandUpdate {
  /** Another arrangement on the same sheet with the same designs: one step to undo. `done` names it in the status line. */
  readonly layout?: LayoutFile;
  readonly locked?: readonly number[];
  readonly done?: Wish | 'replace';
  /** Of the revision it was made for; an old one is passed over. */
  readonly judged?: { readonly revision: number; readonly judgement: Judgement };
  /** Made for another drawing, sheet or limits than those on the desk: it is not called sound then. */
  readonly outdated?: boolean;
  /** While the page works on what was asked, and undefined when it no longer does. */
  readonly working?: Working | undefined;
  /** Why nothing was done about what was asked. */
  readonly notice?: Notice;
  readonly words?: HandWords;
  readonly lengths?: Format;
}

export interface Hand {
  update(update: HandUpdate): void;
  undo(): void;
  redo(): void;
  /** Something is under way: a drag, a selection being drawn, a measure. */
  readonly isBusy: boolean;
  readonly canUndo: boolean;
  readonly canRedo: boolean;
  /** Shows a place of the sheet, mm, with so much of the sheet around it. */
  goTo(place: readonly [number, number], aroundMm: number): void;
  readonly state: HandState;
  readonly memory: HandMemory;
  /** Whether the layout shown is judged: by the page for its present revision, while dragging by the hand itself. */
  readonly judged: JudgedState;
  destroy(): void;
}

/**
 * Puts a sheet that can be worked on by hand into `host`. Needs hand.css. For another sheet, other rules or designs:
 * destroy and mount anew. Throws an InputError for a layout that cannot be judged.
 */
export function mountHand(host: HTMLElement, input: HandInput): Hand {
  const frame = sheetFrame(input.layout);
  let { words, lengths } = input;
  let layers: ReadonlySet<LayerName> = FIRST_LAYERS;
  let working: Working | undefined;
  let isWhole = false;
  let revision = 0;
  let judgedRevision = -1;
  let judgement: Judgement | undefined;
  let isOutdated = false;
  const memory = input.memory && isOf(input.memory, input, frame) ? input.memory : undefined;
  let situation: Situation = { ...beginSituation(memory?.history.present ?? documentOf(input.layout, frame, input.locked), frame, NO_VIEW), ...memory };

  const picture = createPicture(input.layout, frame, { words, format: lengths });
  const status = statusLine(frame, () => run('stop'));
  const root = html('div', { class: 'hand' });
  let bar = toolbar(words, layers, { command: run, layer: showLayer });
  root.append(bar.element, picture.element, status.element);
  host.append(root);
  picture.setLayers(layers);

  function stateNow(): HandState {
    return { ...layoutOfDocument(situation.history.present, frame), revision };
  }

  function judgedNow(): JudgedState {
    if (shown(situation).blanks.length === 0) return 'not judged';
    if (situation.faults.length > 0) return 'faulty';
    if (situation.draft) return 'not judged';
    if (judgedRevision === revision && judgement) return judgement.state;
    return judgement ? 'out of date' : 'not judged';
  }

  function emit(event: HandEvent): void {
    const before = situation;
    situation = respond(situation, event, frame);
    if (situation === before) return;
    if (situation.history.present !== before.history.present) revision++;
    draw();
    if (isUnderPointer(before.interaction) && !isUnderPointer(situation.interaction)) resize();
    if (situation.active !== undefined && situation.active !== before.active && picture.stage.contains(document.activeElement)) picture.focus(situation.active);
    if (situation.history.present !== before.history.present) input.onChange(stateNow());
  }

  function draw(): void {
    picture.show(situation);
    bar.show(restingCommands(situation, working), pressedCommands(situation, isWhole));
    const judged = judgedNow();
    status.show(situation, { judged: isOutdated && judged === 'sound' ? 'out of date' : judged, working }, words, lengths);
    root.dataset['doing'] = situation.interaction.kind;
  }

  function run(name: CommandName): void {
    if (restingCommands(situation, working).has(name)) return;
    if (name === 'release' && working && situation.interaction.kind === 'idle') return input.onAsk('stop', stateNow());
    if (name === 'solve-rest' || name === 'tidy' || name === 'stop') return input.onAsk(name, stateNow());
    if (name === 'whole-window') {
      isWhole = root.classList.toggle('is-whole-window');
      return draw();
    }
    if (name === 'keys') return open(keyList(words, lengths));
    if (name === 'rows-and-columns') return open(gridForm(words, lengths, gridOffer(), (wish) => emit({ kind: 'grid', wish })));
    emit({ kind: 'command', name });
  }

  /** The whole sheet is offered where nothing is selected or everything. */
  function gridOffer(): GridOffer {
    const { history: { present }, selected } = situation;
    const isPart = selected.size > 0 && selected.size < present.blanks.length;
    return { whole: !isPart, choice: selected.size > 0, most: (steps, columns) => mostThatFit(present, selected, frame, steps, columns) };
  }

  function open(dialog: HTMLDialogElement): void {
    root.append(dialog);
    dialog.addEventListener('close', () => dialog.remove());
    dialog.showModal();
  }

  function showLayer(name: LayerName, isShown: boolean): void {
    layers = new Set([...layers].filter((other) => other !== name).concat(isShown ? [name] : []));
    picture.setLayers(layers);
    if (name === 'rule-side') return emit({ kind: 'side', mirrored: isShown });
    picture.show(situation);
  }

  const stopKeys = listenToKeys(root, () => ({ mirrored: situation.view.mirrored === true, anySelected: situation.selected.size > 0 }), {
    command: (name) => {
      // With nothing of its own to take back the hand leaves it to the page.
      if ((name === 'undo' || name === 'redo') && restingCommands(situation, working).has(name)) return false;
      run(name);
      return true;
    },
    arrow: (direction, amount) => emit({ kind: 'arrow', direction, amount: amount === 'step' || amount === 'contact' ? amount : nudgeStep(amount, lengths.unit) }),
    align: (direction) => run(`align-${direction}`),
    arrowUp: () => emit({ kind: 'arrow-up' }),
  });
  const stopWarmUp = whileResting(warmUp(situation.history.present, frame));
  const stopPointers = listenToPointers(picture.stage, () => situation, emit);

  let isFitted = memory !== undefined;
  let fittedView: View | undefined;
  const resize = () => {
    const { clientWidth: width, clientHeight: height } = picture.stage;
    if (width === 0 || height === 0) return;
    // Nothing is rescaled under a pointer that holds something: it is caught up with when the pointer lets go.
    if (isUnderPointer(situation.interaction) || (width === situation.view.width && height === situation.view.height)) return;
    // A view that nobody has changed keeps showing the whole sheet.
    const showsWhole = !isFitted || situation.view === fittedView;
    isFitted = true;
    if (!showsWhole) return emit({ kind: 'resize', width, height });
    situation = respond(situation, { kind: 'resize', width, height }, frame);
    emit({ kind: 'command', name: 'whole-sheet' });
    fittedView = situation.view;
  };
  const watch = new ResizeObserver(resize);
  watch.observe(picture.stage);
  resize();
  draw();

  return {
    update: (update) => {
      const { layout, locked, done = 'replace', judged, outdated = isOutdated, notice, words: newWords, lengths: newLengths } = update;
      if ('working' in update) working = update.working;
      if (notice) situation = { ...situation, notice };
      isOutdated = outdated;
      if (newWords || newLengths) {
        [words, lengths] = [newWords ?? words, newLengths ?? lengths];
        picture.useLanguage({ words, format: lengths });
        const anew = toolbar(words, layers, { command: run, layer: showLayer });
        bar.element.replaceWith(anew.element);
        bar = anew;
      }
      if (layout) emit({ kind: 'replace', document: documentOf(layout, frame, locked, situation.history.present.nextId), done });
      if (judged?.revision === revision) [judgement, judgedRevision] = [judged.judgement, revision];
      draw();
    },
    undo: () => emit({ kind: 'command', name: 'undo' }),
    redo: () => emit({ kind: 'command', name: 'redo' }),
    get isBusy() {
      return situation.interaction.kind !== 'idle';
    },
    get canUndo() {
      return situation.history.past !== undefined;
    },
    get canRedo() {
      return situation.history.future !== undefined;
    },
    goTo: ([x, y], aroundMm) => {
      const [at, half] = [{ x: toMicrons(x), y: toMicrons(y) }, toMicrons(aroundMm) / 2];
      emit({ kind: 'look', box: { minX: at.x - half, minY: at.y - half, maxX: at.x + half, maxY: at.y + half } });
    },
    get state() {
      return stateNow();
    },
    get memory() {
      const { history, view, selected, active } = situation;
      return { history, view, selected, active };
    },
    get judged() {
      return judgedNow();
    },
    destroy: () => {
      watch.disconnect();
      stopKeys();
      stopPointers();
      stopWarmUp();
      picture.destroy();
      root.remove();
    },
  };
}

/** Whether the memory ends where the layout stands; it may have been changed elsewhere since. */
function isOf({ history }: HandMemory, { layout, locked = [] }: HandInput, frame: SheetFrame): boolean {
  // What a browser kept may name a design that this layout does not have.
  if (history.present.blanks.some(({ part }) => !frame.problem.parts[part])) return false;
  const placed = ({ layout: { placements }, locked: kept }: Pick<HandState, 'layout' | 'locked'>) => placements.map((placement, i) => JSON.stringify([placement, kept.includes(i)])).sort().join();
  return placed(layoutOfDocument(history.present, frame)) === placed({ layout, locked });
}

const NO_VIEW: View = { zoom: 1, left: 0, top: 0, width: 0, height: 0 };

/** Goes on with the work, a step at a time, whenever the page has nothing else to do. Returns what stops it. */
function whileResting(work: Iterator<void>): () => void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const step = () => {
    if (!work.next().done) timer = setTimeout(step, REST_BETWEEN_MS);
  };
  timer = setTimeout(step, REST_BETWEEN_MS);
  return () => clearTimeout(timer);
}

/** Room for the page between two steps of work done ahead. */
const REST_BETWEEN_MS = 30;

/** Commands that would do nothing now. */
function restingCommands({ history, selected, draft }: Situation, working: Working | undefined): ReadonlySet<CommandName> {
  const resting = new Set<CommandName>();
  if (!history.past && !draft) resting.add('undo');
  if (!history.future) resting.add('redo');
  if (selected.size === 0) for (const name of NEED_SELECTION) resting.add(name);
  if (working) resting.add('solve-rest').add('tidy');
  else resting.add('stop');
  return resting;
}

const NEED_SELECTION: readonly CommandName[] = [
  'turn-next', 'turn-back', 'turn-quarter', 'duplicate', 'remove', 'lock', 'gather', 'equal-steps',
  'align-left', 'align-right', 'align-gripper', 'align-tail', 'align-above', 'align-beside', 'zoom-selection',
];

function pressedCommands({ interaction, history, selected }: Situation, isWhole: boolean): ReadonlySet<CommandName> {
  const pressed = new Set<CommandName>(isWhole ? ['whole-window'] : []);
  if (interaction.kind === 'ready-to-measure' || interaction.kind === 'measuring') pressed.add('measure');
  const chosenBlanks = history.present.blanks.filter(({ id }) => selected.has(id));
  if (chosenBlanks.length > 0 && chosenBlanks.every(({ locked }) => locked)) pressed.add('lock');
  return pressed;
}
