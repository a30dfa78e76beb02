import type { Kind } from './kinds.ts';
import type { Library } from './open-library.ts';

export interface Entry {
  readonly kind: Kind;
  readonly id: string;
  /** Counts from 1. */
  readonly revision: number;
  /** When it was written, ISO 8601 in UTC. */
  readonly at: string;
  readonly removed: boolean;
  readonly content: Readonly<Record<string, unknown>>;
}

interface Row {
  readonly kind: Kind;
  readonly id: string;
  readonly revision: number;
  readonly at: string;
  readonly removed: number;
  readonly content: string;
}

const COLUMNS = 'kind, id, revision, at, removed, content';

function entryOf({ kind, id, revision, at, removed, content }: Row): Entry {
  return { kind, id, revision, at, removed: removed === 1, content: JSON.parse(content) };
}

/** Every revision, the latest first. */
export function historyOf(library: Library, kind: Kind, id: string): Entry[] {
  return library.rows<Row>(`SELECT ${COLUMNS} FROM record WHERE kind = ? AND id = ? ORDER BY revision DESC`, kind, id).map(entryOf);
}

/** The latest revision; undefined where there is none or it was removed. */
export function entryNamed(library: Library, kind: Kind, id: string): Entry | undefined {
  return library.rows<Row>(`SELECT ${COLUMNS} FROM present WHERE kind = ? AND id = ?`, kind, id).map(entryOf)[0];
}

/** All that is there now, by kind and id. */
export function entriesOf(library: Library, kind?: Kind): Entry[] {
  const rows = kind
    ? library.rows<Row>(`SELECT ${COLUMNS} FROM present WHERE kind = ? ORDER BY id`, kind)
    : library.rows<Row>(`SELECT ${COLUMNS} FROM present ORDER BY kind, id`);
  return rows.map(entryOf);
}

/** Entries of a kind, or of all, in the order of `entriesOf`: so many from one on, counted from 0. */
export function partOfEntries(library: Library, kind: Kind | undefined, from: number, count: number): Entry[] {
  return library.rows<Row>(`SELECT ${COLUMNS} FROM present WHERE ?1 IS NULL OR kind = ?1 ORDER BY kind, id LIMIT ?2 OFFSET ?3`, kind ?? null, count, from).map(entryOf);
}

export function countOfEntries(library: Library, kind: Kind | undefined): number {
  return library.rows<{ count: number }>('SELECT count(*) AS count FROM present WHERE ?1 IS NULL OR kind = ?1', kind ?? null)[0].count;
}

/** Entries in whose kind, name or content each of these stands, small letters of ASCII for either case. More than hold it may come: names of fields count as well. */
export function entriesHolding(library: Library, pieces: readonly string[], kind: Kind | undefined): Entry[] {
  const each = pieces.map((_, i) => ` AND instr(lower(kind || ' ' || id || ' ' || content), ?${i + 2}) > 0`).join('');
  return library.rows<Row>(`SELECT ${COLUMNS} FROM present WHERE (?1 IS NULL OR kind = ?1)${each} ORDER BY kind, id`, kind ?? null, ...pieces).map(entryOf);
}

export type Kept = 'new' | 'changed' | 'unchanged';

/** Writes a revision where the content is another than the latest. Nothing is ever overwritten. */
export function keepEntry(library: Library, kind: Kind, id: string, content: Entry['content'], at = new Date()): Kept {
  return library.whole(() => {
    const [latest] = historyOf(library, kind, id);
    if (latest && !latest.removed && JSON.stringify(latest.content) === JSON.stringify(content)) return 'unchanged';
    addRevision(library, { kind, id, revision: (latest?.revision ?? 0) + 1, at: at.toISOString(), removed: false, content });
    return latest ? 'changed' : 'new';
  });
}

/** Takes an entry out of the lists; its history stays. False where there is none. */
export function removeEntry(library: Library, kind: Kind, id: string, at = new Date()): boolean {
  return library.whole(() => {
    const present = entryNamed(library, kind, id);
    if (present) addRevision(library, { ...present, revision: present.revision + 1, at: at.toISOString(), removed: true });
    return present !== undefined;
  });
}

function addRevision(library: Library, { kind, id, revision, at, removed, content }: Entry): void {
  library.run(`INSERT INTO record (${COLUMNS}) VALUES (?, ?, ?, ?, ?, ?)`, kind, id, revision, at, removed ? 1 : 0, JSON.stringify(content));
}
