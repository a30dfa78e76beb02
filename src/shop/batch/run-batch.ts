import { InputError, type Issue } from '../../base/issue.ts';
import { createRandom } from '../../base/random.ts';
import type { SheetCandidate } from '../../press/sheet-candidates.ts';
import { answerLines, keepAnswer, keepNothing, keptReasons, unpackAnswer, type AnswerLine } from '../answers/kept-answers.ts';
import type { Library } from '../library/open-library.ts';
import type { Offered } from '../library/sources.ts';
import type { BatchJob } from './batch-job.ts';
import { SetAside, type Done, type Executor } from './executor.ts';
import { planCarton, type Cell } from './plan.ts';
import { engineVersion } from '../answers/engine.ts';

/** One carton on one sheet, done. */
export type Result =
  | { readonly candidate: SheetCandidate; readonly key: string; readonly ups: number; readonly upperBound: number; readonly before?: AnswerLine | undefined }
  | { readonly candidate: SheetCandidate; readonly issues: readonly Issue[] }
  | { readonly candidate: SheetCandidate; readonly setAside: string };

export type CartonResult =
  | { readonly id: string; readonly name: string | undefined; readonly yearly: number | undefined; readonly usual: number; readonly doubts: readonly Issue[]; readonly results: readonly Result[] }
  | { readonly id: string; readonly where: string; readonly issues: readonly Issue[] };

export interface BatchProgress {
  /** Tasks of the whole batch as far as they can be known, and how many are done. */
  readonly tasks: number;
  readonly done: number;
  /** Of those done: answers that were there already. */
  readonly kept: number;
  readonly refusedCartons: number;
  /** Counted work of the task just computed. */
  readonly work?: number | undefined;
}

export interface BatchHost {
  readonly library: Library;
  readonly executor: Executor;
  readonly onProgress: (progress: BatchProgress) => void;
  /** Ends the batch with what there is. */
  readonly signal: AbortSignal;
}

/**
 * Every carton on every sheet. Answers go into the library as they come, so a batch that was ended anyhow goes on where it
 * was when it is run again. The results are in the job's order and the same wherever and in whatever order they were
 * computed. Cartons that were not reached are left out.
 */
export async function runBatch(job: BatchJob, offers: readonly Offered[], host: BatchHost): Promise<CartonResult[]> {
  const results: (CartonResult | undefined)[] = offers.map(() => undefined);
  const run = createRun(offers.length * job.candidates.length, job.candidates.length, host);
  for (const index of shuffled(offers.length)) {
    if (host.signal.aborted) break;
    const offer = offers[index];
    const carton = await attempt(() => planCarton(host.library, offer, job));
    if ('issues' in carton) {
      results[index] = { id: 'id' in offer ? offer.id : offer.where, where: offer.where, issues: carton.issues };
      run.refuse();
      continue;
    }
    const { id, name, yearly, usual, doubts, cells } = carton;
    const done: (Result | undefined)[] = cells.map(() => undefined);
    results[index] = { id, name, yearly, usual, doubts, results: done as Result[] };
    for (const [column, cell] of cells.entries()) await run.start(cell, (result) => (done[column] = result));
  }
  await run.finish();
  return results.filter((result) => result !== undefined).filter((result) => 'issues' in result || result.results.every((one) => one !== undefined));
}

async function attempt<Value extends object>(work: () => Promise<Value>): Promise<Value | { readonly issues: readonly Issue[] }> {
  try {
    return await work();
  } catch (error) {
    if (error instanceof InputError) return { issues: error.issues };
    throw error;
  }
}

/** Hands tasks over, never more than the executor's width at a time; the same task twice is computed once. */
function createRun(tasks: number, sheets: number, { library, executor, onProgress, signal }: BatchHost) {
  const running = new Map<string, Promise<void>>();
  let [done, kept, refusedCartons] = [0, 0, 0];
  let total = tasks;
  let failure: { readonly error: unknown } | undefined;
  /** Called whenever a task ends, and by an interruption. */
  let wake = () => {};
  signal.addEventListener('abort', () => wake(), { once: true });
  const untilSome = () => new Promise<void>((resolve) => (wake = resolve));
  const failOnce = () => {
    if (failure) throw failure.error;
  };
  const tell = (work?: number) => onProgress({ tasks: Math.max(total, done), done, kept, refusedCartons, work });
  const lookUp = (candidate: SheetCandidate, key: string): Result | undefined => {
    const lines = answerLines(library, key);
    const [first] = lines;
    if (first?.engine !== engineVersion()) return undefined;
    const reasons = keptReasons(library, key);
    if (reasons) return { candidate, issues: reasons };
    return { candidate, key, ups: first.ups, upperBound: first.upperBound, before: lines.find(({ engine, ups }) => engine !== first.engine && ups !== first.ups) };
  };
  const settle = (candidate: SheetCandidate, key: string, outcome: Done): { result: Result; work: number } => {
    const answer = 'issues' in outcome ? undefined : unpackAnswer(outcome.packed);
    if ('issues' in outcome) keepNothing(library, key, outcome.issues);
    else keepAnswer(library, key, answer!, outcome.packed);
    executor.forget?.(key);
    return { result: lookUp(candidate, key)!, work: answer?.solution.work ?? 0 };
  };
  return {
    refuse: () => {
      refusedCartons++;
      total -= sheets;
      tell();
    },
    async start(cell: Cell, take: (result: Result) => void): Promise<void> {
      const finish = (result: Result, work?: number) => {
        take(result);
        done++;
        tell(work);
      };
      const { candidate } = cell;
      if ('issues' in cell) return finish({ candidate, issues: cell.issues });
      const { key, task } = cell;
      // The same outline on the same sheet may be on its way for another carton.
      while (running.has(key) && !signal.aborted && !failure) await untilSome();
      const known = lookUp(candidate, key);
      if (known) {
        kept++;
        return finish(known);
      }
      while (running.size >= executor.width && !signal.aborted && !failure) await untilSome();
      failOnce();
      if (signal.aborted) return;
      const work = executor
        .run(key, task)
        .then((outcome) => settle(candidate, key, outcome))
        .then(({ result, work: counted }) => finish(result, counted))
        .catch((error: unknown) => {
          if (signal.aborted) return;
          if (error instanceof SetAside) finish({ candidate, setAside: error.message });
          else failure ??= { error };
        })
        .finally(() => {
          running.delete(key);
          wake();
        });
      running.set(key, work);
    },
    finish: async () => {
      while (running.size > 0 && !signal.aborted && !failure) await untilSome();
      failOnce();
    },
  };
}

/** Any order gives the same results; a random one lets the tasks done stand for those to come. */
function shuffled(count: number): number[] {
  const random = createRandom(1);
  const order = Array.from({ length: count }, (_, i) => i);
  for (let i = count - 1; i > 0; i--) {
    const j = random.below(i + 1);
    [order[i], order[j]] = [order[j], order[i]];
  }
  return order;
}
