import { availableParallelism } from 'node:os';
import { Tinypool } from 'tinypool';
import { InputError, inputError } from '../../base/issue.ts';
import { USUAL_SECONDS } from '../../wire/questions.ts';
import type { Answers } from './http.ts';
import { QUESTION_NAMES, type Outcome } from './question-thread.ts';

/** Questions that are worked on at a time, and those that may wait. */
const MOST_THREADS = 4;
const MOST_WAITING = 16;
/** A search ends by itself when its time is up; what goes on longer than this is ended with its thread, seconds. */
const GRACE = 30;
const MEMORY_MB = 2048;

export interface Questions {
  readonly answers: Answers;
  close(): Promise<void>;
}

/** Answers other programs in threads of their own, so that the page is served meanwhile. Threads start when they are needed. */
export function createQuestions({ grace = GRACE, waiting = MOST_WAITING } = {}): Questions {
  const count = Math.max(1, Math.min(MOST_THREADS, availableParallelism() - 1));
  const script = new URL(import.meta.url.endsWith('.ts') ? './question-thread.ts' : './question-thread.js', import.meta.url);
  const pool = new Tinypool({ filename: script.href, minThreads: 0, maxThreads: count, idleTimeout: 30_000, resourceLimits: { maxOldGenerationSizeMb: MEMORY_MB } });
  let asked = 0;
  const answer = (name: string) => async (ask: { seconds?: number }, gone: AbortSignal) => {
    if (asked >= count + waiting) throw inputError('too-much-asked', { facts: { count } });
    asked++;
    const seconds = (ask.seconds ?? USUAL_SECONDS) + grace;
    const tooLong = AbortSignal.timeout(seconds * 1000);
    try {
      const outcome = (await pool.run({ name, ask }, { signal: AbortSignal.any([gone, tooLong]) })) as Outcome;
      if ('issues' in outcome) throw new InputError(outcome.issues);
      return outcome.reply;
    } catch (error) {
      if (tooLong.aborted && !(error instanceof InputError)) throw inputError('question-too-long', { facts: { seconds } });
      throw error;
    } finally {
      asked--;
    }
  };
  return { answers: Object.fromEntries(QUESTION_NAMES.map((name) => [name, answer(name)])), close: () => pool.destroy() };
}
