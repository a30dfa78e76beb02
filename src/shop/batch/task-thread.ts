import { InputError } from '../../base/issue.ts';
import { inlineRunner } from '../../nesting/tasks.ts';
import { answerTask, type NestTask } from '../../pipeline/nest-task.ts';
import { packAnswer } from '../answers/kept-answers.ts';
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
