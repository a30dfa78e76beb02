import type { Job } from './job.ts';

/** Steps that can be taken back, without end, from one job into the one before it too. Plain values: a step costs only what it changed. */
export interface History {
  readonly past: readonly Job[];
  readonly future: readonly Job[];
}

export const NO_HISTORY: History = { past: [], future: [] };

/** `kind` joins quick changes of one kind (typing in one field) into one step. */
export function remember({ past }: History, present: Job, joins: boolean): History {
  return { past: joins && past.length > 0 ? past : [...past, present], future: [] };
}

export function stepBack({ past, future }: History, present: Job): { history: History; job: Job } | undefined {
  const job = past.at(-1);
  return job && { history: { past: past.slice(0, -1), future: [present, ...future] }, job: withFound(job, present) };
}

export function stepForward({ past, future }: History, present: Job): { history: History; job: Job } | undefined {
  const [job, ...rest] = future;
  return job && { history: { past: [...past, present], future: rest }, job: withFound(job, present) };
}

/** Searches work on while a person thinks: what they found since is no step of the person's and is not lost. */
function withFound(job: Job, present: Job): Job {
  if (job.id !== present.id) return job;
  const known = new Set(job.layouts.map(({ id }) => id));
  return { ...job, layouts: [...job.layouts, ...present.layouts.filter(({ id }) => !known.has(id))] };
}

/** The steps of a job that goes on under another id. */
export function withOtherId({ past, future }: History, from: string, to: string): History {
  const other = (job: Job) => (job.id === from ? { ...job, id: to } : job);
  return { past: past.map(other), future: future.map(other) };
}
