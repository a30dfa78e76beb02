import type { Store } from './database.ts';

/** Marks a database file as a library of ours: `BWLB` in ASCII, in the header field that SQLite keeps for this. */
export const APPLICATION_ID = 0x42574c42;

/**
 * Step n brings a library from version n to version n + 1. A step that has been released is never changed: a new one is
 * added. All of it happens in one transaction, so that a killed process leaves the old version or the new one.
 */
const STEPS: readonly string[] = [
  // 0 → 1: records with all their revisions, drawings by their content.
  `CREATE TABLE record (
     kind TEXT NOT NULL,
     id TEXT NOT NULL,
     revision INTEGER NOT NULL,
     at TEXT NOT NULL,
     removed INTEGER NOT NULL,
     content TEXT NOT NULL,
     PRIMARY KEY (kind, id, revision)
   ) STRICT, WITHOUT ROWID;
   CREATE VIEW present AS
     SELECT * FROM record AS r
     WHERE removed = 0 AND revision = (SELECT max(revision) FROM record AS s WHERE s.kind = r.kind AND s.id = r.id);
   CREATE TABLE drawing (
     fingerprint TEXT PRIMARY KEY,
     bytes BLOB NOT NULL
   ) STRICT;`,
  // 1 → 2: shapes of cartons and dies, made from their drawings when they are first asked for.
  `CREATE TABLE shape (
     kind TEXT NOT NULL,
     id TEXT NOT NULL,
     revision INTEGER NOT NULL,
     long_mm REAL,
     short_mm REAL,
     shape TEXT,
     PRIMARY KEY (kind, id)
   ) STRICT, WITHOUT ROWID;
   CREATE INDEX shape_size ON shape (long_mm, short_mm);`,
  // 2 → 3: answers by the fingerprint of all they depend on, one for each engine.
  `CREATE TABLE answer (
     task TEXT NOT NULL,
     engine TEXT NOT NULL,
     at TEXT NOT NULL,
     ups INTEGER NOT NULL,
     upper_bound INTEGER NOT NULL,
     content BLOB NOT NULL,
     PRIMARY KEY (task, engine)
   ) STRICT;`,
];

export const NEWEST_VERSION = STEPS.length;

export function versionOf(store: Store): number {
  return store.rows<{ user_version: number }>('PRAGMA user_version')[0].user_version;
}

/** Brings the library to `version`, step by step. */
export function migrate(store: Store, version = NEWEST_VERSION): void {
  if (versionOf(store) >= version) return;
  store.whole(() => {
    // Another process may have been first.
    for (let from = versionOf(store); from < version; from++) {
      store.script(STEPS[from]);
      store.script(`PRAGMA user_version = ${from + 1}`);
    }
    store.script(`PRAGMA application_id = ${APPLICATION_ID}`);
  });
}
