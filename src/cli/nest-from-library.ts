import { InputError } from '../base/issue.ts';
import { nest, outcomeOf, prepareNest, type NestJob, type NestOutcome, type SearchSettings } from '../pipeline/nest.ts';
import { answerTask } from '../pipeline/nest-task.ts';
import { english } from '../render/messages/english.ts';
import { answerLines, keepAnswer, keepNothing, keptAnswer, keptReasons } from '../shop/answers/kept-answers.ts';
import { bareTask, namedAnswer, NAMELESS, taskFingerprint } from '../shop/answers/task-fingerprint.ts';
import { withLibrary } from './library-option.ts';

/**
 * `nest` with a memory: a question that this engine has answered before is answered at once, and what was not cut short is
 * kept. An answer of an earlier engine is told of, and stays beside the new one. Answers to a wish for stripping and with backs on one half are not kept.
 */
export async function nestFromLibrary(path: string, job: NestJob, search: SearchSettings): Promise<NestOutcome> {
  const prepared = prepareNest(job);
  const { problem, design, backDesign, stripping } = prepared;
  if (stripping || backDesign) {
    say('answer-not-kept', { kind: stripping ? 'to a wish for stripping' : 'with backs on one half of the sheet' });
    return nest(job, search);
  }
  const { effort, seed, ...host } = search;
  const task = { problem, design, layouts: job.layouts, effort, seed };
  const key = taskFingerprint(bareTask(task));
  return withLibrary(path, { create: true }, async (library) => {
    const kept = keptAnswer(library, key);
    const [line] = answerLines(library, key);
    if (kept && line) {
      say('answer-kept', { at: line.at });
      for (const event of kept.solution.history) search.onImprovement?.(event);
      return outcomeOf(prepared, namedAnswer(kept, design));
    }
    const reasons = keptReasons(library, key);
    if (reasons && line) {
      say('answer-kept', { at: line.at });
      throw new InputError(reasons.map((issue) => (issue.where === NAMELESS ? { ...issue, where: design.id } : issue)));
    }
    if (line) say('answer-of-earlier-engine', { at: line.at, ups: line.ups, engine: line.engine });
    const answer = await answerTask(task, host).catch((error: unknown) => {
      if (error instanceof InputError && host.stop() === undefined) keepNothing(library, key, error.issues.map((issue) => (issue.where === design.id ? { ...issue, where: NAMELESS } : issue)));
      throw error;
    });
    const { stopped } = answer.solution;
    if (stopped === 'limit-met' || stopped === 'effort') keepAnswer(library, key, answer);
    return outcomeOf(prepared, answer);
  });
}

function say(code: string, facts: Readonly<Record<string, string | number>>): void {
  process.stderr.write(`${english.sentence({ code, severity: 'note', facts })}\n`);
}
