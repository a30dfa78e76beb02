import { gunzipSync, gzipSync } from 'node:zlib';
import type { NestTask } from '../../pipeline/nest-task.ts';
import { taskFingerprint } from '../answers/task-fingerprint.ts';
import type { Done } from '../batch/executor.ts';

/** What travels: a task of a carton is some kilobytes. */
export interface PackedTask {
  readonly task: string;
}

/** A larger one is no task. */
const MOST_BYTES = 64 * 2 ** 20;

export function packTask(task: NestTask): PackedTask {
  return { task: gzipSync(JSON.stringify(task)).toString('base64') };
}

/** Throws where the content is not the task whose fingerprint it goes by. */
export function unpackTask({ task }: PackedTask, key: string): NestTask {
  const unpacked = JSON.parse(gunzipSync(Buffer.from(task, 'base64'), { maxOutputLength: MOST_BYTES }).toString()) as NestTask;
  if (taskFingerprint(unpacked) !== key) throw new Error('the task is another than its fingerprint says');
  return unpacked;
}

/** Results as text, since the queue carries JSON. */
export function packDone(done: Done): string {
  return JSON.stringify('packed' in done ? { packed: Buffer.from(done.packed).toString('base64') } : done);
}

export function unpackDone(text: string): Done {
  const done = JSON.parse(text) as { packed: string } | Exclude<Done, { packed: unknown }>;
  return 'packed' in done ? { packed: Buffer.from(done.packed, 'base64') } : done;
}
