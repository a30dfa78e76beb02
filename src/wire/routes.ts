import { z } from 'zod';
import * as library from './library.ts';
import * as questions from './questions.ts';

/** A way in: what is asked by whom, and what comes back. A `get` takes its question from the address, a `post` from a JSON body. */
export interface Route {
  readonly method: 'get' | 'post';
  /** Below `api/`. */
  readonly path: string;
  readonly name: string;
  readonly summary: string;
  readonly ask: z.ZodType;
  /** Undefined where bytes come back. */
  readonly reply: z.ZodType | undefined;
  /** Only where a library is served. */
  readonly ofLibrary: boolean;
}

const question = (name: string, summary: string, ask: z.ZodType, reply: z.ZodType): Route => ({ method: 'post', path: name, name, summary, ask, reply, ofLibrary: false });
const ofLibrary = (method: Route['method'], path: string, name: string, summary: string, ask: z.ZodType, reply?: z.ZodType): Route => ({ method, path, name, summary, ask, reply, ofLibrary: true });

export const ROUTES: readonly Route[] = [
  question('read', 'Reads a drawing: blanks, rules, faults with places.', questions.readAsk, questions.readReply),
  question('nest', 'The best layout of one design on one sheet, with its limit.', questions.nestAsk, questions.nestReply),
  question('judge', 'Judges a layout from scratch, whoever made it.', questions.judgeAsk, questions.judgeReply),
  question('compare', 'One design on several sheets: which takes least board.', questions.compareAsk, questions.compareReply),
  question('quote', 'Quantities to sheets, weight, hours and cost.', questions.quoteAsk, questions.quoteReply),
  ofLibrary('get', 'library', 'library', 'What the library holds.', library.emptyAsk, library.libraryReply),
  ofLibrary('get', 'library/entries', 'entries', 'Entries by words or dimensions, a page of them.', library.entriesAsk, library.entriesReply),
  ofLibrary('post', 'library/like', 'like', 'Cartons and dies whose outline is like the one given.', library.likeAsk, library.entriesReply),
  ofLibrary('get', 'library/entry', 'entry', 'One entry with its history.', library.entryAsk, library.entryReply),
  ofLibrary('get', 'library/file', 'file', 'The drawing of a carton or die, the content of another entry: bytes.', library.entryAsk),
  ofLibrary('get', 'library/batch', 'batch', 'What a batch found: savings a year by carton and sheet.', library.batchAsk, library.batchReply),
  ofLibrary('get', 'library/answer', 'answer', 'A kept layout, judged again.', library.answerAsk, library.answerReply),
  ofLibrary('post', 'library/jobs', 'keepJob', 'Keeps a job; an earlier one of the name stays as a revision.', library.keepJobAsk, library.keepJobReply),
];
