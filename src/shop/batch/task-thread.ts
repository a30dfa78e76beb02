import { InputError } from '../../base/issue.ts';
import { inlineRunner } from '../../nesting/tasks.ts';
import { answerTask, type NestTask } from '../../pipeline/nest-task.ts';
import { checkAnswer } from '../../pipeline/check-answer.ts';
import type { Checked } from '../../proof/check.ts';
import { packAnswer, unpackAnswer } from '../answers/kept-answers.ts';
import type { Done } from './executor.ts';

/** What a thread does with a task. Nothing but the task decides the answer: no clock cuts it short. */
export default async function computeTask(task: NestTask): Promise<Done> {
  try {
    return { packed: packAnswer(await answerTask(task, { runner: inlineRunner(), stop: () => undefined })) };
  } catch (error) {
    if (error instanceof InputError) return { issues: error.issues };
    throw error;
  }
}

/** What a thread does with an answer of another machine. Cannot be used, is no answer: both are reasons. */
export function checkPacked({ task, packed }: { readonly task: NestTask; readonly packed: Uint8Array }): Checked {
  try {
    return checkAnswer(task, unpackAnswer(packed));
  } catch (error) {
    return { ok: false, reason: (error as Error).message };
  }
}
