import type { z } from 'zod';
import { compare, judge, nest, quote, read } from '../../api/index.ts';
import { InputError, inputError, type Issue } from '../../base/issue.ts';
import { chooseBlank } from '../../dieline/choose-blank.ts';
import { DEFAULT_READ_OPTIONS } from '../../dieline/options.ts';
import { drawingJson } from '../../render/drawing-json.ts';
import type { compareAsk, judgeAsk, nestAsk, quoteAsk, readAsk } from '../../wire/questions.ts';
import { issuesReply } from './http.ts';

/** What a thread does with a question of another program: one function of `api` each, in the schemas' terms. */
type Of<Schema extends z.ZodType> = z.output<Schema>;

export type Outcome = { readonly reply: unknown } | { readonly issues: readonly Issue[] };

const QUESTIONS = { read: reading, nest: nesting, judge: judging, compare: comparing, quote: quoting };
export type QuestionName = keyof typeof QUESTIONS;
export const QUESTION_NAMES = Object.keys(QUESTIONS) as readonly QuestionName[];

export default async function answerQuestion({ name, ask }: { readonly name: QuestionName; readonly ask: unknown }): Promise<Outcome> {
  try {
    return { reply: await QUESTIONS[name](ask as never) };
  } catch (error) {
    if (error instanceof InputError) return { issues: error.issues };
    throw error;
  }
}

function bytesOf(drawing: Of<typeof readAsk>['drawing']): string | Uint8Array {
  return typeof drawing === 'string' ? drawing : Buffer.from(drawing.base64, 'base64');
}

async function reading({ drawing, ...how }: Of<typeof readAsk>): Promise<unknown> {
  const dieline = await read(bytesOf(drawing), how as object);
  const chosen = how.blank === undefined && dieline.blanks.length !== 1 ? undefined : chooseBlank(dieline, how.blank);
  return { ...JSON.parse(drawingJson('drawing', dieline, chosen, DEFAULT_READ_OPTIONS)), issues: issuesReply(dieline.issues) };
}

/** Fields that are not given are left out; the time is up after so many seconds. */
function searching<Ask extends { drawing: Of<typeof readAsk>['drawing']; seconds: number }>({ seconds, drawing, ...ask }: Ask) {
  return { ...ask, drawing: bytesOf(drawing), signal: AbortSignal.timeout(seconds * 1000) };
}

async function nesting({ svg, ...ask }: Of<typeof nestAsk>): Promise<unknown> {
  const reply = await nest(searching(ask) as Parameters<typeof nest>[0]);
  const { ups, upperBound, boundBy, optimal, stopped, layouts, issues } = reply;
  return { ups, upperBound, boundBy, optimal, stopped, layouts: layouts.map((_, index) => JSON.parse(reply.layoutText(index))), ...(svg && { svg: reply.svg() }), issues: issuesReply(issues) };
}

function judging({ layout }: Of<typeof judgeAsk>): unknown {
  return judge(layout);
}

function comparing(ask: Of<typeof compareAsk>): Promise<unknown> {
  return compare(searching(ask) as Parameters<typeof compare>[0]);
}

function quoting({ job }: Of<typeof quoteAsk>): unknown {
  return quote(job, (file) => {
    throw inputError('no-files-here', { where: 'job', facts: { file } });
  });
}
