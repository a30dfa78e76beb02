import Database from 'libsql';

/** A value as the database keeps it. */
export type Value = string | number | null | Uint8Array;

/**
 * The one place that knows the database library. Statements are prepared once by their text. Several processes may have
 * the same file open: readers never wait, writers wait for one another.
 */
export interface Store {
  readonly path: string;
  rows<Row>(sql: string, ...values: readonly Value[]): Row[];
  run(sql: string, ...values: readonly Value[]): { readonly changes: number };
  /** Several statements without values. */
  script(sql: string): void;
  /** All of the work or none of it, as one writer at a time. Calls within a call are part of it. */
  whole<Result>(work: () => Result): Result;
  close(): void;
}

/** How long a writer waits for another, milliseconds. */
const PATIENCE_MS = 20_000;

export function openStore(path: string): Store {
  const database = new Database(path);
  const prepared = new Map<string, Database.Statement<unknown[]>>();
  const statement = (sql: string) => {
    const known = prepared.get(sql) ?? database.prepare(sql);
    prepared.set(sql, known);
    return known;
  };
  database.exec(`PRAGMA busy_timeout = ${PATIENCE_MS}`);
  let depth = 0;
  return {
    path,
    rows: <Row>(sql: string, ...values: readonly Value[]) => statement(sql).all([...values]) as Row[],
    run: (sql, ...values) => ({ changes: statement(sql).run([...values]).changes }),
    script: (sql) => database.exec(sql),
    whole: (work) => {
      if (depth > 0) return work();
      database.exec('BEGIN IMMEDIATE');
      depth++;
      try {
        const result = work();
        database.exec('COMMIT');
        return result;
      } catch (error) {
        // A full disk has rolled back already; the reason is what is to be told.
        if (database.inTransaction) database.exec('ROLLBACK');
        throw error;
      } finally {
        depth--;
      }
    },
    close: () => {
      prepared.clear();
      database.close();
    },
  };
}
