import type { Issue } from '../../base/issue.ts';
import type { NestTask } from '../../pipeline/nest-task.ts';

/** What became of a task: a packed answer, or that nothing is possible, which is an answer too. */
export type Done = { readonly packed: Uint8Array } | { readonly issues: readonly Issue[] };

/** Where tasks are computed: threads of this machine, or a queue that others work at. */
export interface Executor {
  /** So many tasks are handed over at a time; memory stays within it. */
  readonly width: number;
  /** Throws `SetAside` when a task failed again and again. */
  run(key: string, task: NestTask): Promise<Done>;
  /** The answer is safe in the library: nothing of it need be kept anywhere else. */
  forget?(key: string): void;
  /** Ends at once; what runs is given up. */
  close(): Promise<void>;
}

/** How often a task may fail before it is set aside. */
export const TRIES = 3;

/** A task that fails wherever it is tried. The message is the last one. */
export class SetAside extends Error {
  constructor(message: string) {
    super(message);
    this.name = 'SetAside';
  }
}
