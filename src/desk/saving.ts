import { computed, effect, signal, untracked, type ReadonlySignal } from '@preact/signals';
import type { Desk } from './desk.ts';
import { whenChanged } from './desk.ts';
import { withOtherId } from './job/history.ts';
import { EMPTY_JOB, newJob, type Job } from './job/job.ts';
import { isReadable, openKeep, type Keep, type StoredJob } from './job/keep.ts';
import { goingFrom } from './going.ts';
import { wordsIn } from './words/words.ts';
import { joinRecords, rememberedRecords, type Records } from './job/records.ts';

/** `full`: the browser's store takes no more. `newer`: what it keeps is of a newer desk, and left as it is. */
export type SavingState = 'saved' | 'saving' | 'changed elsewhere' | 'not kept' | 'full' | 'newer';

export interface Saving {
  readonly state: ReadonlySignal<SavingState>;
  readonly jobs: ReadonlySignal<readonly StoredJob[]>;
  /** What was removed since the page was opened, and can be taken back. */
  readonly removed: ReadonlySignal<readonly StoredJob[]>;
  /** Another kept job, or a new one without `id`; a step of the person. */
  open(id?: string): Promise<void>;
  remove(id: string): Promise<void>;
  /** Removes a job that was begun by mistake. */
  drop(id: string): Promise<void>;
  takeBack(removed: StoredJob): Promise<void>;
  /** Where another tab changed the job: take its state, or go on here as a job of its own. */
  takeTheirs(): Promise<void>;
  keepAsCopy(): void;
}

const SAVE_AFTER_MS = 250;

/** Keeps every job in the browser after every change, and brings back the one whose id is in the address. */
export async function keepSaving(desk: Desk): Promise<Saving> {
  let keep: Keep;
  try {
    keep = await openKeep();
  } catch {
    return keepNothing(desk);
  }
  const state = signal<SavingState>('saved');
  const jobs = signal<readonly StoredJob[]>([]);
  const removed = signal<readonly StoredJob[]>([]);
  /** What the browser holds of a job, as far as this page knows. */
  const known = new Map<string, { readonly revision: number; readonly job: Job }>();
  /** Jobs that another tab has changed under this one. */
  const conflicts = new Set<string>();
  const list = async () => (jobs.value = await keep.list());

  /** The job as it is kept; one that is not kept begins, and is only kept once something is on it. */
  const load = async (id?: string): Promise<Job> => {
    const found = id === undefined ? undefined : await keep.load(id);
    const stored = found && isReadable(found) ? found : undefined;
    // A job of a newer desk is neither shown in part nor written over.
    if (found && !stored) desk.notice.value = wordsIn(desk.locale.value).say('job-of-newer');
    const job = stored ? { ...EMPTY_JOB, ...stored.job, id: stored.id } : newJob(found ? undefined : id);
    known.set(job.id, { revision: stored?.revision ?? 0, job });
    conflicts.delete(job.id);
    return job;
  };
  const stateHere = (id: string, now: SavingState) => {
    if (id === desk.job.value.id) state.value = now;
  };
  let writing = Promise.resolve();
  const save = async (job: Job) => {
    if (known.get(job.id)?.job === job || conflicts.has(job.id) || keep.isNewer) return;
    stateHere(job.id, 'saving');
    try {
      const outcome = await keep.save(job.id, known.get(job.id)?.revision ?? 0, job);
      if (outcome.kind === 'changed elsewhere') {
        conflicts.add(job.id);
        stateHere(job.id, 'changed elsewhere');
        return;
      }
      known.set(job.id, { revision: outcome.revision, job });
      stateHere(job.id, 'saved');
      jobs.value = [{ id: job.id, revision: outcome.revision, savedAt: Date.now(), job }, ...jobs.value.filter(({ id }) => id !== job.id)];
    } catch (error) {
      stateHere(job.id, (error as DOMException).name === 'QuotaExceededError' ? 'full' : 'not kept');
    }
  };
  const saveSoon = (job = desk.job.value) => {
    writing = writing.then(() => save(job));
    return writing;
  };
  const drop = async (id: string) => {
    await writing;
    await keep.remove(id);
    // Steps back may still lead to it: then it is kept anew.
    known.delete(id);
    await list();
  };

  desk.replace(await load(idInAddress()));
  await list();
  desk.remembered.value = (await keep.loadSetting<readonly string[]>('roles')) ?? [];
  desk.unit.value = (await keep.loadSetting('unit')) === 'in' ? 'in' : 'mm';
  whenChanged(desk.unit, SAVE_AFTER_MS, (unit) => void keep.saveSetting('unit', unit));
  let pending: ReturnType<typeof setTimeout> | undefined;
  effect(() => {
    void desk.job.value;
    // Not when changes cease: a search brings them without a pause, and what was typed meanwhile would not be kept.
    pending ??= setTimeout(() => {
      pending = undefined;
      void saveSoon();
    }, SAVE_AFTER_MS);
  });
  desk.records.value = joinRecords(desk.records.value, (await keep.loadSetting<Records>('records')) ?? {});
  whenChanged(desk.records, SAVE_AFTER_MS, (records) => void keep.saveSetting('records', rememberedRecords(records)));
  whenChanged(desk.remembered, SAVE_AFTER_MS, (rules) => void keep.saveSetting('roles', rules));
  let last = desk.job.value;
  effect(() => {
    const job = desk.job.value;
    if (job.id !== last.id) void saveSoon(last);
    last = job;
  });
  const id = computed(() => desk.job.value.id);
  effect(() => {
    state.value = keep.isNewer ? 'newer' : conflicts.has(id.value) ? 'changed elsewhere' : 'saved';
    untracked(() => showInAddress(id.value));
  });
  addEventListener('popstate', () => {
    const wanted = idInAddress();
    if (wanted !== undefined && wanted !== desk.job.value.id) void saving.open(wanted);
  });
  keep.onSavedElsewhere((other, at) => {
    if (at !== known.get(other)?.revision && known.has(other)) conflicts.add(other);
    if (other !== desk.job.value.id) void list();
    else if (conflicts.has(other)) state.value = 'changed elsewhere';
  });
  // A tab that closes has one last moment.
  addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'hidden') void saveSoon();
  });
  const saving: Saving = {
    state,
    jobs,
    removed,
    open: async (wanted) => {
      if (wanted === desk.job.value.id) return;
      const go = goingFrom(desk);
      await saveSoon();
      const job = await load(wanted);
      desk.change(() => job);
      go(job.layouts.length > 0 ? 'layouts' : 'drawing');
    },
    remove: async (unwanted) => {
      if (unwanted === desk.job.value.id) await saving.open();
      await writing;
      const stored = await keep.load(unwanted);
      await drop(unwanted);
      if (stored) removed.value = [stored, ...removed.value];
      // There may be room now.
      await saveSoon();
    },
    drop,
    takeBack: async (stored) => {
      await keep.restore(stored);
      removed.value = removed.value.filter((one) => one !== stored);
      await list();
    },
    takeTheirs: async () => {
      desk.replace(await load(desk.job.value.id));
      state.value = 'saved';
    },
    keepAsCopy: () => {
      const { value: job } = desk.job;
      const copy = newJob().id;
      desk.replace({ ...job, id: copy }, withOtherId(desk.history.value, job.id, copy));
    },
  };
  return saving;
}

/** A browser that keeps nothing (private windows of some) still lays out. */
function keepNothing(desk: Desk): Saving {
  desk.replace(newJob());
  const open = async () => {
    desk.change(() => newJob());
    desk.panel.value = 'drawing';
  };
  return { state: signal<SavingState>('not kept'), jobs: signal([]), removed: signal([]), open, remove: async () => {}, drop: async () => {}, takeBack: async () => {}, takeTheirs: async () => {}, keepAsCopy: () => {} };
}

function idInAddress(): string | undefined {
  return /^#job=([\w-]{1,40})$/.exec(location.hash)?.[1];
}

/** The browser's own step back leads to the job before. */
function showInAddress(id: string): void {
  const before = idInAddress();
  if (before === id) return;
  window.history[before === undefined ? 'replaceState' : 'pushState'](null, '', `#job=${id}`);
}
