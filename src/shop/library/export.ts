import { drawingNamed } from './drawings.ts';
import { KINDS } from './kinds.ts';
import type { Library } from './open-library.ts';
import { entriesOf, historyOf, type Entry } from './records.ts';

export interface ExportedFile {
  /** Path within the folder. */
  readonly name: string;
  readonly content: string | Uint8Array;
}

const DRAWINGS = 'drawings';
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
    const own = typeof drawing === 'string' ? { ...content, drawing: `../${DRAWINGS}/${fileName(library, drawing)}` } : content;
    yield { name: `${KINDS[kind].plural}/${encodeURIComponent(id)}.json`, content: `${JSON.stringify({ kind, id, ...own }, null, 2)}\n` };
  }
  for (const { fingerprint } of library.rows<{ fingerprint: string }>('SELECT fingerprint FROM drawing ORDER BY fingerprint')) {
    yield { name: `${used.has(fingerprint) ? DRAWINGS : FORMER}/${fileName(library, fingerprint)}`, content: drawingNamed(library, fingerprint)! };
  }
  yield { name: 'history.jsonl', content: revisions.map((line) => `${line}\n`).join('') };
}

function fileName(library: Library, fingerprint: string): string {
  return `${fingerprint}.${endingOf(drawingNamed(library, fingerprint) ?? new Uint8Array())}`;
}

/** What a drawing's file is called by its content. */
export function endingOf(drawing: Uint8Array): string {
  const start = Buffer.from(drawing.subarray(0, 64)).toString('latin1');
  return start.startsWith('%PDF') ? 'pdf' : start.startsWith('\x1f\x8b') ? 'svgz' : start.includes('<') ? 'svg' : 'dxf';
}
