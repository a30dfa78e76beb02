import { openDB, type DBSchema, type IDBPDatabase } from 'idb';
import type { Job } from './job.ts';

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

export interface Keep {
  load(id: string): Promise<StoredJob | undefined>;
  /** The latest first. */
  list(): Promise<readonly StoredJob[]>;
  /** Writes only over the revision it builds on, so that two tabs never overwrite each other. */
  save(id: string, basedOn: number, job: Job): Promise<Saved>;
  remove(id: string): Promise<void>;
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

export async function openKeep(): Promise<Keep> {
  const database: IDBPDatabase<Schema> = await openDB<Schema>(NAME, 1, {
    upgrade: (fresh) => {
      fresh.createObjectStore('jobs', { keyPath: 'id' });
      fresh.createObjectStore('settings');
    },
  });
  const channel = new BroadcastChannel(NAME);
  return {
    load: (id) => database.get('jobs', id),
    list: async () => (await database.getAll('jobs')).toSorted((a, b) => b.savedAt - a.savedAt),
    save: async (id, basedOn, job) => {
      const transaction = database.transaction('jobs', 'readwrite');
      const stored = await transaction.store.get(id);
      if (stored && stored.revision !== basedOn) return { kind: 'changed elsewhere', stored };
      const revision = basedOn + 1;
      await transaction.store.put({ id, revision, savedAt: Date.now(), job });
      await transaction.done;
      channel.postMessage({ id, revision });
      return { kind: 'saved', revision };
    },
    remove: (id) => database.delete('jobs', id),
    loadSetting: async <Value>(name: string) => (await database.get('settings', name)) as Value | undefined,
    saveSetting: async (name, value) => {
      await database.put('settings', value, name);
    },
    onSavedElsewhere: (listener) => {
      channel.onmessage = ({ data }: MessageEvent<{ id: string; revision: number }>) => listener(data.id, data.revision);
    },
  };
}
