import { openDB, type DBSchema, type IDBPDatabase } from 'idb';
import { EMPTY_JOB, type Job } from './job.ts';

/** A job as it lies in the browser's database. */
export interface StoredJob {
  readonly id: string;
  /** Counts up with every save: who saves must name the one it builds on. */
  readonly revision: number;
  /** Milliseconds since 1970. */
  readonly savedAt: number;
  readonly job: Job;
}

export type Saved = { readonly kind: 'saved'; readonly revision: number } | { readonly kind: 'changed elsewhere'; readonly stored: StoredJob };

/** Whether this desk can read it: jobs of a newer one are left as they are. */
export function isReadable({ job }: StoredJob): boolean {
  return job.format === EMPTY_JOB.format && job.version === EMPTY_JOB.version;
}

export interface Keep {
  /** The database is of a newer desk: nothing is written. */
  readonly isNewer: boolean;
  load(id: string): Promise<StoredJob | undefined>;
  /** The latest first. */
  list(): Promise<readonly StoredJob[]>;
  /** Writes only over the revision it builds on, so that two tabs never overwrite each other. */
  save(id: string, basedOn: number, job: Job): Promise<Saved>;
  remove(id: string): Promise<void>;
  /** Puts back what was removed, as it was. */
  restore(removed: StoredJob): Promise<void>;
  /** Things of the house that hold for every job: rules for roles, records. */
  loadSetting<Value>(name: string): Promise<Value | undefined>;
  saveSetting(name: string, value: unknown): Promise<void>;
  /** Called when another tab saved a job. */
  onSavedElsewhere(listener: (id: string, revision: number) => void): void;
}

interface Schema extends DBSchema {
  jobs: { key: string; value: StoredJob };
  settings: { key: string; value: unknown };
}

const NAME = 'blankwright-desk';

const VERSION = 1;

export async function openKeep(): Promise<Keep> {
  const database = await openDatabase();
  const isNewer = database.version > VERSION;
  const channel = new BroadcastChannel(NAME);
  /** A newer desk may keep things elsewhere. */
  const read = async <Value>(from: () => Promise<Value>, none: Value): Promise<Value> => {
    try {
      return await from();
    } catch (error) {
      if (isNewer) return none;
      throw error;
    }
  };
  return {
    isNewer,
    load: (id) => read(() => database.get('jobs', id), undefined),
    list: async () => (await read(() => database.getAll('jobs'), [])).toSorted((a, b) => b.savedAt - a.savedAt),
    save: async (id, basedOn, job) => {
      if (isNewer) throw new Error('the database is of a newer desk');
      const transaction = database.transaction('jobs', 'readwrite');
      const stored = await transaction.store.get(id);
      if (stored && stored.revision !== basedOn) return { kind: 'changed elsewhere', stored };
      const revision = basedOn + 1;
      // A full disk may be told by either.
      await Promise.all([transaction.store.put({ id, revision, savedAt: Date.now(), job }), transaction.done]);
      channel.postMessage({ id, revision });
      return { kind: 'saved', revision };
    },
    remove: async (id) => {
      if (!isNewer) await database.delete('jobs', id);
    },
    restore: async (removed) => {
      if (!isNewer) await database.put('jobs', removed);
    },
    loadSetting: async <Value>(name: string) => (await read(() => database.get('settings', name), undefined)) as Value | undefined,
    saveSetting: async (name, value) => {
      // What a full disk does not take is typed again; the job's own mark says that it is full.
      if (!isNewer) await database.put('settings', value, name).catch(() => undefined);
    },
    onSavedElsewhere: (listener) => {
      channel.onmessage = ({ data }: MessageEvent<{ id: string; revision: number }>) => listener(data.id, data.revision);
    },
  };
}

/** As it stands where a newer desk has made it. */
async function openDatabase(): Promise<IDBPDatabase<Schema>> {
  const upgrade = (fresh: IDBPDatabase<Schema>) => {
    fresh.createObjectStore('jobs', { keyPath: 'id' });
    fresh.createObjectStore('settings');
  };
  try {
    return await openDB<Schema>(NAME, VERSION, { upgrade });
  } catch (error) {
    if ((error as DOMException).name !== 'VersionError') throw error;
    return openDB<Schema>(NAME);
  }
}
