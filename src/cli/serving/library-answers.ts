import { basename } from 'node:path';
import type { z } from 'zod';
import { inputError } from '../../base/issue.ts';
import { micronRing } from '../../layout/rings.ts';
import { writeLayoutFile } from '../../layout/layout-file.ts';
import { answerLines, keptAnswer } from '../../shop/answers/kept-answers.ts';
import { named } from '../../shop/answers/task-fingerprint.ts';
import { drawingNamed } from '../../shop/library/drawings.ts';
import { endingOf } from '../../shop/library/export.ts';
import { findPart, type Found, type Wanted } from '../../shop/library/find.ts';
import { KINDS, type Kind } from '../../shop/library/kinds.ts';
import type { Library } from '../../shop/library/open-library.ts';
import { readingOf } from '../../shop/library/reading.ts';
import { entryNamed, historyOf, keepEntry, type Entry } from '../../shop/library/records.ts';
import { PAGE, type EntriesReply, type EntryReply } from '../../wire/library.ts';
import type * as asks from '../../wire/library.ts';
import { batchPage } from './library-batch.ts';
import { factsOf, historyLines, tablesOf, toldOf } from './library-facts.ts';
import { pictureOf } from './library-picture.ts';
import type { Answers } from './http.ts';

type Of<Schema extends z.ZodType> = z.output<Schema>;

/** Answers about a library that is open as long as the server runs. Nothing is written but jobs. */
export function libraryAnswers(library: Library): Answers {
  return {
    library: () => {
      const counts = library.rows<{ kind: Kind; count: number }>('SELECT kind, count(*) AS count FROM present GROUP BY kind');
      return { name: basename(library.path), kinds: (Object.keys(KINDS) as Kind[]).map((kind) => ({ kind, count: counts.find((one) => one.kind === kind)?.count ?? 0 })) };
    },
    entries: ({ text, kind, within, page }: Of<typeof asks.entriesAsk>) => entriesPage(library, { text, kind, within }, page),
    like: ({ outline, kind, within, page }: Of<typeof asks.likeAsk>) => entriesPage(library, { like: { outline: micronRing(outline), creases: { across: [], up: [] } }, kind, within }, page),
    entry: ({ kind, id }: Of<typeof asks.entryAsk>) => entryReply(library, present(library, kind, id)),
    file: ({ kind, id }: Of<typeof asks.entryAsk>) => fileOf(library, present(library, kind, id)),
    batch: ({ id, page }: Of<typeof asks.batchAsk>) => batchPage(present(library, 'batch', id), page),
    answer: ({ key, name }: Of<typeof asks.answerAsk>) => {
      const line = answerLines(library, key).find(({ ups }) => ups > 0);
      const answer = line && keptAnswer(library, key, line.engine);
      if (!line || !answer) throw inputError('answer-not-there', { where: key.slice(0, 12) });
      const { file } = answer.layouts[0];
      return { layout: JSON.parse(writeLayoutFile(named(file, { ...file.designs[0]!, id: name }))), engine: line.engine, at: line.at, ups: line.ups, upperBound: line.upperBound };
    },
    keepJob: ({ id, content }: Of<typeof asks.keepJobAsk>) => {
      const kept = keepEntry(library, 'job', id, content);
      return { kept, revision: entryNamed(library, 'job', id)!.revision };
    },
  };
}

function present(library: Library, kind: Kind, id: string): Entry {
  const entry = entryNamed(library, kind, id);
  if (!entry) throw inputError('library-no-such', { where: `${kind} ${id}`, facts: { kind } });
  return entry;
}

async function entriesPage(library: Library, wanted: Wanted, page: number): Promise<EntriesReply> {
  const { total, found } = await findPart(library, wanted, (page - 1) * PAGE, PAGE);
  return { total, page, pages: Math.max(1, Math.ceil(total / PAGE)), entries: found.map(({ entry, by }) => lineOf(library, entry, by)) };
}

function lineOf(library: Library, entry: Entry, by?: Found['by']): EntriesReply['entries'][number] {
  const { kind, id, revision, at, content } = entry;
  const picture = pictureOf(library, entry);
  return { kind, id, revision, at, told: toldOf(content), ...(by && by.how !== 'words' && { by }), ...(picture && { picture }) };
}

const MOST_REVISIONS = 50;

function entryReply(library: Library, entry: Entry): EntryReply {
  const { kind, id, content } = entry;
  const revisions = historyOf(library, kind, id);
  const { scale, widthIs, blank, page } = content as { scale?: number; widthIs?: number; blank?: number; page?: number };
  return {
    ...lineOf(library, entry),
    facts: factsOf(content),
    tables: tablesOf(content),
    history: historyLines(revisions.slice(0, MOST_REVISIONS + 1)).slice(0, MOST_REVISIONS),
    moreRevisions: Math.max(0, revisions.length - MOST_REVISIONS),
    file: fileName(library, entry) ?? null,
    reading: {
      ...(scale !== undefined && { scale }), ...(widthIs !== undefined && { widthIs }), ...(blank !== undefined && { blank }), ...(page !== undefined && { page }),
      ...(content['drawnFrom'] === 'inside' && { drawnFrom: 'inside' as const }),
      roles: kind === 'carton' || kind === 'die' ? readingOf(library, content).roles.map(({ text }) => text) : [],
    },
  };
}

function fileName(library: Library, { kind, id, content }: Entry): string | undefined {
  const stem = id.replace(/[^\p{L}\p{N} ._()+,×-]/gu, '-');
  if (kind !== 'carton' && kind !== 'die') return `${stem}.json`;
  const drawing = content['drawing'];
  const bytes = typeof drawing === 'string' ? drawingNamed(library, drawing) : undefined;
  return bytes && `${stem}.${endingOf(bytes)}`;
}

function fileOf(library: Library, { kind, id, content }: Entry): Uint8Array {
  if (kind !== 'carton' && kind !== 'die') return Buffer.from(JSON.stringify(content));
  const bytes = typeof content['drawing'] === 'string' ? drawingNamed(library, content['drawing']) : undefined;
  if (!bytes) throw inputError('library-no-such', { where: `${kind} ${id}`, facts: { kind } });
  return bytes;
}
