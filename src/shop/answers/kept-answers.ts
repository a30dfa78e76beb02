import { gunzipSync, gzipSync } from 'node:zlib';
import { InputError, type Issue } from '../../base/issue.ts';
import { readLayoutFile } from '../../layout/layout-file.ts';
import { judgeForProduction } from '../../layout/sound.ts';
import type { NestAnswer } from '../../pipeline/nest-task.ts';
import type { Library } from '../library/open-library.ts';
import { engineVersion } from './engine.ts';

/** What is told of an answer without opening it. */
export interface AnswerLine {
  readonly engine: string;
  /** When it was found, ISO 8601 in UTC. */
  readonly at: string;
  readonly ups: number;
  readonly upperBound: number;
}

/** Answers of all engines to a task, this engine's first, then the latest. */
export function answerLines(library: Library, task: string): AnswerLine[] {
  return library.rows<AnswerLine>('SELECT engine, at, ups, upper_bound AS upperBound FROM answer WHERE task = ? ORDER BY engine = ? DESC, at DESC', task, engineVersion());
}

/** The layouts of this engine, or of the one named; undefined where there are none. Judged again, as all that is read. */
export function keptAnswer(library: Library, task: string, engine = engineVersion()): NestAnswer | undefined {
  const [row] = library.rows<{ content: ArrayBuffer }>('SELECT content FROM answer WHERE task = ? AND engine = ? AND ups > 0', task, engine);
  return row && unpackAnswer(new Uint8Array(row.content));
}

/** Keeps an answer once: a second one to the same task by the same engine changes nothing. Returns whether it was new. */
export function keepAnswer(library: Library, task: string, answer: NestAnswer, packed = packAnswer(answer), at = new Date()): boolean {
  const { changes } = library.run(
    'INSERT INTO answer (task, engine, at, ups, upper_bound, content) VALUES (?, ?, ?, ?, ?, ?) ON CONFLICT DO NOTHING',
    task, engineVersion(), at.toISOString(), answer.layouts[0].file.placements.length, answer.solution.limit.ups, Buffer.from(packed),
  );
  return changes === 1;
}

/** Keeps that nothing is possible, with the reasons: an answer of 0 ups. Returns whether it was new. */
export function keepNothing(library: Library, task: string, issues: readonly Issue[], at = new Date()): boolean {
  const { changes } = library.run(
    'INSERT INTO answer (task, engine, at, ups, upper_bound, content) VALUES (?, ?, ?, 0, 0, ?) ON CONFLICT DO NOTHING',
    task, engineVersion(), at.toISOString(), Buffer.from(gzipSync(JSON.stringify({ issues }))),
  );
  return changes === 1;
}

/** Why this engine found nothing possible; undefined where it found a layout or was never asked. */
export function keptReasons(library: Library, task: string): readonly Issue[] | undefined {
  const [row] = library.rows<{ content: ArrayBuffer }>('SELECT content FROM answer WHERE task = ? AND engine = ? AND ups = 0', task, engineVersion());
  return row && (JSON.parse(gunzipSync(new Uint8Array(row.content), { maxOutputLength: MOST_BYTES }).toString()) as { issues: readonly Issue[] }).issues;
}

/** As bytes for the library and for other machines. */
export function packAnswer(answer: NestAnswer): Uint8Array {
  // How the search went is told from the history; layouts on the way are not kept, nor those beside the wish for stripping: each layout tells how it stands to it.
  const history = answer.solution.history.map((event) => (event.kind === 'layout' ? { ...event, layout: undefined } : event));
  return gzipSync(JSON.stringify({ ...answer, stripping: undefined, solution: { ...answer.solution, history, best: undefined, alternatives: undefined } }));
}

/** Throws an InputError where the bytes are no answer or a layout is not sound: they may come from anywhere. */
export function unpackAnswer(bytes: Uint8Array): NestAnswer {
  let answer: NestAnswer;
  try {
    answer = JSON.parse(gunzipSync(bytes, { maxOutputLength: MOST_BYTES }).toString());
    const layouts = answer.layouts.map(({ file, ranked }) => ({ ranked, file: judgeForProduction(readLayoutFile({ format: 'blankwright-layout', version: 1, units: 'mm', ...file }, 'answer')).sound! }));
    if (layouts.length === 0 || layouts.some(({ file }) => !file)) throw new Error('not sound');
    return { ...answer, layouts, solution: { ...answer.solution, best: layouts[0].ranked, alternatives: layouts.map(({ ranked }) => ranked) } };
  } catch (error) {
    if (error instanceof InputError) throw error;
    throw new InputError([{ code: 'answer-not-valid', severity: 'error', facts: { reason: (error as Error).message } }]);
  }
}

/** A larger one is no answer. */
const MOST_BYTES = 256 * 2 ** 20;
