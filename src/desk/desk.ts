import { batch, computed, effect, signal, untracked, type ReadonlySignal, type Signal } from '@preact/signals';
import type { Issue } from '../base/issue.ts';
import type { LengthUnit } from '../render/format.ts';
import type { NearMissFacts } from '../render/near-miss-facts.ts';
import { createEngine, type Engine } from './engine/client.ts';
import type { CompareAnswer, DrawingSource, FrameAnswer, QuoteAsk, RawMachines, ReadAnswer } from './engine/protocol.ts';
import { NO_HISTORY, remember, stepBack, stepForward, type History } from './job/history.ts';
import { inputsText } from './job/inputs.ts';
import { EMPTY_JOB, type Job, type KeptLayout } from './job/job.ts';
import { jobTitle } from './job/job-title.ts';
import { layingOf, type FieldName, type Laying } from './job/laying.ts';
import { inOrder, NO_KIN, stateOf, type Kin, type LayoutState } from './job/layouts.ts';
import { NO_RECORDS, type Records } from './job/records.ts';
import { wordsIn, type Locale } from './words/words.ts';

export const PANELS = ['drawing', 'sheet', 'limits', 'layouts', 'why', 'money', 'handover'] as const;
export type Panel = (typeof PANELS)[number];
/** What the panel of layouts can show. */
export const FACES = ['layouts', 'versions', 'outlines'] as const;
export type Face = (typeof FACES)[number];

/** An answer of the engine on its way: nothing yet, an answer, or why there is none. */
export type Asked<Answer> = { readonly kind: 'none' } | { readonly kind: 'waiting' } | { readonly kind: 'answer'; readonly answer: Answer } | { readonly kind: 'issues'; readonly issues: readonly Issue[] };

/** With the drawing that it is the answer for: another may lie on the desk by now. */
export type Reading = Asked<ReadAnswer> & { readonly of?: DrawingSource };

/** A file that was not taken, and why. */
export interface Refused {
  readonly name: string;
  readonly issues: readonly Issue[];
}

export type Compared = Asked<CompareAnswer> & {
  readonly inputs?: string | undefined;
  /** Terms it was made for. */
  readonly quote?: QuoteAsk;
  /** Gap it was laid out with, mm. */
  readonly gap?: number | undefined;
  /** What is wanted instead: on its way, or why it cannot be. Until then the old answer stays, out of date. */
  readonly next?: { readonly gap: number; readonly issues?: readonly Issue[] };
};

/** Single changes tried for a layout. */
export interface Misses {
  /** The layout as it stood. */
  readonly file: KeptLayout['file'];
  /** Inputs that each is one change away from. */
  readonly of: string;
  readonly phase: 'running' | 'stopping' | 'ended';
  /** What was found so far. */
  readonly facts: NearMissFacts | undefined;
  readonly issues: readonly Issue[];
}

export interface SearchState {
  readonly phase: 'idle' | 'running' | 'paused' | 'ended' | 'failed';
  readonly seconds: number;
  /** Inputs it works on. */
  readonly inputs: string;
}

export interface OutlinesRun {
  readonly phase: 'idle' | 'running' | 'stopping';
  readonly issues: readonly Issue[];
}

/** Everything on the desk: the job, what the engine said of it, and what is looked at. */
export interface Desk {
  readonly job: ReadonlySignal<Job>;
  readonly history: ReadonlySignal<History>;
  /** A step of the person, which can be taken back; `kind` joins quick changes of one kind into one step. */
  change(edit: (job: Job) => Job, kind?: string): void;
  /** What the engine found; no step of the person. */
  note(edit: (job: Job) => Job): void;
  /** Another job in place of this one; nothing can be taken back beyond it but what is given. */
  replace(job: Job, history?: History): void;
  /** The last step under the hand, while a sheet lies there that has one; else the last step of the job. */
  undo(): void;
  redo(): void;
  readonly canUndo: ReadonlySignal<boolean>;
  readonly canRedo: ReadonlySignal<boolean>;
  /** Steps of the sheet under the hand, which come first. */
  readonly underHand: Signal<StepsUnderHand | undefined>;

  readonly records: Signal<Records>;
  readonly remembered: Signal<readonly string[]>;
  readonly locale: Signal<Locale>;
  /** In which lengths are shown, and typed where nothing else is said. */
  readonly unit: Signal<LengthUnit>;
  readonly panel: Signal<Panel>;
  /** What the panel of layouts shows. */
  readonly face: Signal<Face>;
  /** Forms sought for several outlines, and why there are none. */
  readonly outlinesRun: Signal<OutlinesRun>;
  /** What is said once, at the foot of the page and to a screen reader. */
  readonly notice: Signal<string>;
  /** A newer build of the page waits to be taken at the next load. */
  readonly newVersion: Signal<boolean>;
  /** Counts how often the person asked again for what a stopped thread left open. */
  readonly again: Signal<number>;

  readonly reading: Signal<Reading>;
  /** The last file, where it was not taken. */
  readonly refused: Signal<Refused | undefined>;
  /** The job as it was before a file of the same name took its drawing's place. */
  readonly renewed: Signal<Job | undefined>;
  /** A job that a drawing began, and the one on the desk before it. */
  readonly begun: Signal<{ readonly id: string; readonly before: Job } | undefined>;
  readonly frame: Signal<Asked<FrameAnswer>>;
  readonly search: Signal<SearchState>;
  readonly searchIssues: Signal<readonly Issue[]>;
  /** Every sheet that could be bought, and what it was compared for. */
  readonly comparison: Signal<Compared>;
  /** What single change would bring one more, for the layout that it was last asked of. */
  readonly misses: Signal<Misses | undefined>;

  readonly machines: ReadonlySignal<RawMachines>;
  readonly laying: ReadonlySignal<Laying>;
  readonly faultyFields: ReadonlySignal<readonly FieldName[]>;
  /** What layouts depend on, as one text; undefined while it cannot be known. */
  readonly inputs: ReadonlySignal<string | undefined>;
  readonly layouts: ReadonlySignal<readonly KeptLayout[]>;
  readonly chosen: ReadonlySignal<KeptLayout | undefined>;
  readonly chosenState: ReadonlySignal<LayoutState | undefined>;
  /** What layouts from files are to the drawing on the desk. */
  readonly kin: Signal<Kin>;
  stateOf(layout: KeptLayout): LayoutState;

  /** Answers questions at once. */
  readonly engine: Engine;
  /** Searches, so that a question never waits for a search. */
  readonly searcher: Engine;
  /** Works long on what is asked by the way: comparing sheets, filling the rest of one. */
  readonly helper: Engine;
  /** Shares out versions; ended where it takes too long. */
  readonly planner: Engine;
}

export interface StepsUnderHand {
  readonly canUndo: boolean;
  readonly canRedo: boolean;
  undo(): void;
  redo(): void;
}

/** Changes of one kind that follow within this time are one step, milliseconds. */
const ONE_STEP_MS = 1200;

export function createDesk(locale: Locale): Desk {
  const job = signal<Job>(EMPTY_JOB);
  const history = signal<History>(NO_HISTORY);
  const language = signal(locale);
  const unit = signal<LengthUnit>('mm');
  const records = signal<Records>(NO_RECORDS);
  const reading = signal<Reading>({ kind: 'none' });
  const underHand = signal<StepsUnderHand | undefined>(undefined);
  const search = signal<SearchState>({ phase: 'idle', seconds: 0, inputs: '' });
  const notice = signal('');
  const startEngine = () => createEngine(() => ({ locale: language.value, unit: unit.value }), () => (notice.value = wordsIn(language.value, unit.value).say('engine-restarted')));
  let last = { kind: '', at: 0 };

  const step = (taken: { history: History; job: Job } | undefined, toJob: 'undo-to-job' | 'redo-to-job') => {
    if (!taken) return;
    last = { kind: '', at: 0 };
    if (taken.job.id !== job.value.id) {
      const words = wordsIn(language.value);
      notice.value = words.say(toJob, { name: jobTitle(taken.job, words) });
    }
    history.value = taken.history;
    job.value = taken.job;
  };
  const machines = computed(() => machinesOf(job.value, records.value));
  const laying = computed(() => layingOf(job.value, machines.value));
  const inputs = computed(() => inputsOf(reading.value, job.value, laying.value));
  const kin = signal<Kin>(NO_KIN);
  const layouts = computed(() => inOrder(job.value.layouts, inputs.value, kin.value));
  const stateNow = (layout: KeptLayout) => stateOf(layout, inputs.value, kin.value);
  const comparison = signal<Compared>({ kind: 'none' });
  const face = signal<Face>('layouts');
  const id = computed(() => job.value.id);
  // What was asked for one job is no answer for another.
  effect(() => {
    void id.value;
    comparison.value = { kind: 'none' };
    face.value = 'layouts';
  });
  const chosen = computed(() => layouts.value.find(({ id }) => id === job.value.chosen) ?? layouts.value[0]);
  return {
    job,
    history,
    change: (edit, kind = '') => {
      const changed = edit(job.value);
      if (changed === job.value) return;
      const now = performance.now();
      const joins = kind !== '' && kind === last.kind && now - last.at < ONE_STEP_MS;
      last = { kind, at: now };
      history.value = remember(history.value, job.value, joins);
      job.value = changed;
    },
    note: (edit) => (job.value = edit(job.value)),
    replace: (other, steps = NO_HISTORY) =>
      batch(() => {
        history.value = steps;
        job.value = other;
      }),
    undo: () => (underHand.value?.canUndo ? underHand.value.undo() : step(stepBack(history.value, job.value), 'undo-to-job')),
    redo: () => (underHand.value?.canRedo ? underHand.value.redo() : step(stepForward(history.value, job.value), 'redo-to-job')),
    canUndo: computed(() => underHand.value?.canUndo === true || history.value.past.length > 0),
    canRedo: computed(() => underHand.value?.canRedo === true || history.value.future.length > 0),
    underHand,
    records,
    remembered: signal<readonly string[]>([]),
    locale: language,
    unit,
    panel: signal<Panel>('drawing'),
    face,
    outlinesRun: signal<OutlinesRun>({ phase: 'idle', issues: [] }),
    notice,
    newVersion: signal(false),
    again: signal(0),
    reading,
    refused: signal<Refused | undefined>(undefined),
    renewed: signal<Job | undefined>(undefined),
    begun: signal<{ readonly id: string; readonly before: Job } | undefined>(undefined),
    frame: signal<Asked<FrameAnswer>>({ kind: 'none' }),
    search,
    searchIssues: signal<readonly Issue[]>([]),
    comparison,
    misses: signal<Misses | undefined>(undefined),
    machines,
    laying,
    faultyFields: computed(() => ('faults' in laying.value ? laying.value.faults : [])),
    inputs,
    layouts,
    chosen,
    chosenState: computed(() => chosen.value && stateNow(chosen.value)),
    kin,
    stateOf: stateNow,
    engine: startEngine(),
    searcher: startEngine(),
    helper: startEngine(),
    planner: startEngine(),
  };
}

function machinesOf({ sheet }: Job, { presses, cutters, boards }: Records): RawMachines {
  const find = (list: Records['presses'], id: string) => list.find((one) => one.id === id)?.record;
  return { press: find(presses, sheet.press), cutter: find(cutters, sheet.cutter), board: find(boards, sheet.board) };
}

function inputsOf(reading: Reading, { drawing, drawnFrom }: Job, laying: Laying): string | undefined {
  if (reading.kind !== 'answer' || reading.of !== drawing || 'faults' in laying || !drawing) return undefined;
  const { fingerprint, scale, blanks } = reading.answer.dieline;
  if (blanks.length === 0) return undefined;
  const options = drawing.kind === 'file' ? drawing.options : drawing.values;
  return inputsText([fingerprint, scale.mmPerUnit, options, rolesOf(blanks), drawnFrom, laying.laying]);
}

/** What every line was taken for, as runs: what a person says of lines in one drawing holds for others, and may move an outline. */
function rolesOf(blanks: ReadAnswer['dieline']['blanks']): string {
  const roles = blanks.flatMap(({ rules }) => rules.map(({ role }) => role));
  const starts = roles.flatMap((role, i) => (role === roles[i - 1] ? [] : [i]));
  return starts.map((start, run) => `${roles[start]} ${(starts[run + 1] ?? roles.length) - start}`).join();
}

/** Runs `work` whenever `value` changes and then stands still for so many milliseconds; stale answers are dropped by the caller. */
export function whenChanged<Value>(value: ReadonlySignal<Value>, milliseconds: number | (() => number), work: (value: Value) => void): void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  effect(() => {
    const now = value.value;
    clearTimeout(timer);
    timer = setTimeout(() => work(now), typeof milliseconds === 'number' ? milliseconds : untracked(milliseconds));
  });
}
