import { signal, type ReadonlySignal } from '@preact/signals';
import type { Desk } from './desk.ts';
import { whenChanged } from './desk.ts';
import { EMPTY_JOB, type Job } from './job/job.ts';
import { isReadable, openKeep, type Keep, type StoredJob } from './job/keep.ts';
import { wordsIn } from './words/words.ts';
import { newId } from './new-id.ts';

/** `full`: the browser's store takes no more. `newer`: what it keeps is of a newer desk, and left as it is. */
export type SavingState = 'saved' | 'saving' | 'changed elsewhere' | 'not kept' | 'full' | 'newer';

export interface Saving {
  readonly state: ReadonlySignal<SavingState>;
  readonly jobs: ReadonlySignal<readonly StoredJob[]>;
  /** Another kept job, or a new one without `id`. */
  open(id?: string): Promise<void>;
  remove(id: string): Promise<void>;
  /** Where another tab changed the job: take its state, or go on here as a job of its own. */
  takeTheirs(): Promise<void>;
  keepAsCopy(): void;
}

const SAVE_AFTER_MS = 250;

/** Keeps the job in the browser after every change, and brings back the one whose id is in the address. */
export async function keepSaving(desk: Desk): Promise<Saving> {
  const state = signal<SavingState>('saved');
  const jobs = signal<readonly StoredJob[]>([]);
  let keep: Keep;
  try {
    keep = await openKeep();
  } catch {
    // A browser that keeps nothing (private windows of some) still lays out.
    state.value = 'not kept';
    return { state, jobs, open: async () => desk.replace(EMPTY_JOB), remove: async () => {}, takeTheirs: async () => {}, keepAsCopy: () => {} };
  }
  let id = idInAddress() ?? newId();
  let revision = 0;
  let saved: Job = EMPTY_JOB;
  const list = async () => (jobs.value = await keep.list());

  const load = async (wanted: string) => {
    const found = await keep.load(wanted);
    const stored = found && isReadable(found) ? found : undefined;
    // A job of a newer desk is neither shown in part nor written over.
    id = found && !stored ? newId() : wanted;
    if (found && !stored) desk.notice.value = wordsIn(desk.locale.value).say('job-of-newer');
    revision = stored?.revision ?? 0;
    saved = stored ? { ...EMPTY_JOB, ...stored.job } : EMPTY_JOB;
    state.value = keep.isNewer ? 'newer' : 'saved';
    window.history.replaceState(null, '', `#job=${id}`);
    desk.replace(saved);
  };
  let writing = Promise.resolve();
  const save = async () => {
    const { value: job } = desk.job;
    if (job === saved || state.value === 'changed elsewhere' || state.value === 'newer') return;
    state.value = 'saving';
    try {
      const outcome = await keep.save(id, revision, job);
      if (outcome.kind === 'changed elsewhere') {
        state.value = 'changed elsewhere';
        return;
      }
      revision = outcome.revision;
      saved = job;
      state.value = 'saved';
      await list();
    } catch (error) {
      state.value = (error as DOMException).name === 'QuotaExceededError' ? 'full' : 'not kept';
    }
  };
  const saveSoon = () => {
    writing = writing.then(save);
    return writing;
  };

  await load(id);
  await list();
  desk.remembered.value = (await keep.loadSetting<readonly string[]>('roles')) ?? [];
  desk.unit.value = (await keep.loadSetting('unit')) === 'in' ? 'in' : 'mm';
  whenChanged(desk.unit, SAVE_AFTER_MS, (unit) => void keep.saveSetting('unit', unit));
  whenChanged(desk.job, SAVE_AFTER_MS, () => void saveSoon());
  whenChanged(desk.remembered, SAVE_AFTER_MS, (rules) => void keep.saveSetting('roles', rules));
  keep.onSavedElsewhere((other, at) => {
    if (other !== id) void list();
    else if (at !== revision) state.value = 'changed elsewhere';
  });
  // A tab that closes has one last moment.
  addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'hidden') void saveSoon();
  });
  return {
    state,
    jobs,
    open: async (wanted) => {
      await saveSoon();
      await load(wanted ?? newId());
    },
    remove: async (unwanted) => {
      await keep.remove(unwanted);
      if (unwanted === id) await load(newId());
      await list();
      // There may be room now.
      await saveSoon();
    },
    takeTheirs: () => load(id),
    keepAsCopy: () => {
      id = newId();
      revision = 0;
      saved = EMPTY_JOB;
      state.value = 'saved';
      window.history.replaceState(null, '', `#job=${id}`);
      void saveSoon();
    },
  };
}

function idInAddress(): string | undefined {
  return /^#job=([\w-]{1,40})$/.exec(location.hash)?.[1];
}
