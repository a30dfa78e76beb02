import { z } from 'zod';
import type { Issue } from '../base/issue.ts';
import { readNoted } from '../press/known-fields.ts';
import { kindOf, type TableKind } from '../press/tables/record-tables.ts';

/** Reads files that a job names, relative to the job; records of a `kind` may stand in a table. Throws an InputError. */
export type LoadJson = (path: string, kind?: TableKind) => unknown;

/** A record itself, or the path of its file. */
export const recordOrFile = z.union([z.string(), z.record(z.string(), z.unknown())]);
export type RecordOrFile = z.output<typeof recordOrFile> | undefined;

/** The records of one job, which stand in it or are named by it; `notes` gathers the fields in them that nobody knows. */
export interface RecordReader {
  read<Schema extends z.ZodType>(schema: Schema, value: RecordOrFile, field: string): z.output<Schema> | undefined;
  readonly notes: readonly Issue[];
}

export function createRecordReader(where: string, load: LoadJson): RecordReader {
  const notes: Issue[] = [];
  return {
    notes,
    read(schema, value, field) {
      if (value === undefined) return undefined;
      const isFile = typeof value === 'string';
      const found = readNoted(schema, isFile ? load(value, kindOf(schema)) : value, isFile ? value : `${where}: ${field}`);
      notes.push(...found.notes);
      return found.record;
    },
  };
}
