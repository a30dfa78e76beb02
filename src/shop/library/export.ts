import { drawingNamed } from './drawings.ts';
import { KINDS } from './kinds.ts';
import type { Library } from './open-library.ts';
import { entriesOf, historyOf, type Entry } from './records.ts';

export interface ExportedFile {
  /** Path within the folder. */
  readonly name: string;
  readonly content: string | Uint8Array;
}

/** Drawings of earlier revisions and of what was removed: kept for the history, no cartons of today. */
export const FORMER = 'former';

/**
 * Everything as files that `library add` takes in again: one JSON a record in a folder named after its kind, drawings by
 * their fingerprint, and all revisions in history.jsonl, one a line.
 */
export function* exportedFiles(library: Library): Generator<ExportedFile> {
  const revisions: string[] = [];
  for (const { kind, id } of library.rows<Pick<Entry, 'kind' | 'id'>>('SELECT DISTINCT kind, id FROM record ORDER BY kind, id')) {
    for (const entry of historyOf(library, kind, id).toReversed()) revisions.push(JSON.stringify(entry));
  }
  const used = new Set<unknown>();
  for (const { kind, id, content } of entriesOf(library)) {
    used.add(content['drawing']);
    const drawing = content['drawing'];
    const own = typeof drawing === 'string' ? { ...content, drawing: `../${drawingFile(drawing)}` } : content;
    yield { name: `${KINDS[kind].plural}/${encodeURIComponent(id)}.json`, content: `${JSON.stringify({ kind, id, ...own }, null, 2)}\n` };
  }
  for (const { fingerprint } of library.rows<{ fingerprint: string }>('SELECT fingerprint FROM drawing ORDER BY fingerprint')) {
    yield { name: used.has(fingerprint) ? drawingFile(fingerprint) : `${FORMER}/${fingerprint}.svg`, content: drawingNamed(library, fingerprint)! };
  }
  yield { name: 'history.jsonl', content: revisions.map((line) => `${line}\n`).join('') };
}

function drawingFile(fingerprint: string): string {
  return `drawings/${fingerprint}.svg`;
}
