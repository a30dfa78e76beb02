import { readdirSync, statSync } from 'node:fs';
import { basename, dirname, extname, join, relative, resolve } from 'node:path';
import { inputError, InputError } from '../../base/issue.ts';
import { LAYOUT_FORMAT } from '../../layout/layout-file.ts';
import { readCsv } from './csv.ts';
import { FORMER } from './export.ts';
import { isNamedKind, kindOf, type Kind } from './kinds.ts';
import type { Offer } from './take-in.ts';

/** Reads files for this module; throws an InputError that names the file. */
export interface FileReader {
  readonly bytes: (path: string) => Uint8Array;
  readonly text: (path: string) => string;
  readonly json: (path: string) => unknown;
}

export type Offered = Offer | { readonly where: string; readonly error: InputError };

const DRAWING = /\.(svgz?|dxf|pdf)$/i;

/**
 * Everything that files and folders offer: records as JSON, tables as CSV, and every drawing that no record names as a
 * carton of its own. What a file is follows from `as`, else its field `kind`, else the name of its folder or table.
 */
export function* offersOf(paths: readonly string[], as: Kind | undefined, read: FileReader): Generator<Offered> {
  const files = paths.flatMap(filesAt);
  const named = new Set<string>();
  const records = files.filter((file) => /\.(json|csv)$/i.test(file)).toSorted((a, b) => Number(isOfCustomers(b)) - Number(isOfCustomers(a)));
  for (const file of records) {
    for (const offered of tried(file, () => recordsIn(file, as, read))) {
      if ('drawingPath' in offered && offered.drawingPath !== undefined) named.add(offered.drawingPath);
      yield offered;
    }
  }
  for (const file of files.filter((path) => DRAWING.test(path) && !named.has(resolve(path)))) {
    const kind = as ?? 'carton';
    yield { kind, id: stemOf(file), content: { drawing: basename(file) }, where: file, drawing: () => read.bytes(file) };
  }
}

/** These come first: they say how the drawings of the others are read. */
function isOfCustomers(file: string): boolean {
  return kindFrom(undefined, {}, file) === 'customer';
}

/** A folder's files, those of folders within it too, in the order of their names; hidden ones and those of former states are left out. */
function filesAt(path: string): string[] {
  let isFolder: boolean;
  try {
    isFolder = statSync(path).isDirectory();
  } catch {
    throw inputError('file-not-found', { where: path });
  }
  if (!isFolder) return [path];
  const inside = readdirSync(path, { withFileTypes: true }).filter(({ name }) => !name.startsWith('.') && name !== FORMER);
  return inside.toSorted((a, b) => (a.name < b.name ? -1 : 1)).flatMap((entry) => (entry.isDirectory() || entry.isFile() ? filesAt(join(path, entry.name)) : []));
}

function stemOf(file: string): string {
  return basename(file, extname(file));
}

type Named = Offer & { readonly drawingPath?: string | undefined };

function tried(where: string, work: () => (Named | { where: string; error: InputError })[]): (Named | { where: string; error: InputError })[] {
  try {
    return work();
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    return [{ where, error }];
  }
}

function recordsIn(file: string, as: Kind | undefined, read: FileReader): (Named | { where: string; error: InputError })[] {
  if (/\.csv$/i.test(file)) {
    const kind = as ?? kindFrom(undefined, {}, file);
    return readCsv(read.text(file), file, isNamedKind(kind) ? kind : undefined).flatMap(({ line, fields }) => {
      const where = `${file}, line ${line}`;
      return tried(where, () => [recordOf(fields, { file, where, as, id: undefined, read })]);
    });
  }
  const json = read.json(file);
  if (!Array.isArray(json)) return [recordOf(json, { file, where: file, as, id: stemOf(file), read })];
  return json.flatMap((one, index) => {
    const where = `${file}, entry ${index + 1}`;
    return tried(where, () => [recordOf(one, { file, where, as, id: undefined, read })]);
  });
}

export interface Place {
  readonly file: string;
  readonly where: string;
  readonly as: Kind | undefined;
  /** Name where the record has none of its own. */
  readonly id: string | undefined;
  readonly read: FileReader;
}

export function recordOf(json: unknown, { file, where, as, id, read }: Place): Named {
  if (typeof json !== 'object' || json === null || Array.isArray(json)) throw inputError('field-not-valid', { where, facts: { reason: 'a record {…} is wanted' } });
  const { kind: ownKind, id: ownId, number, ...content } = json as Record<string, unknown>;
  const kind = as ?? kindFrom(ownKind, content, file);
  if (!kind) throw inputError('library-kind-unknown', { where });
  // A press or a board is told from others by its name; a carton's name is only beside its number.
  const name = ownId ?? number ?? id ?? (isNamedKind(kind) ? content['name'] : undefined);
  if (typeof name !== 'string' && typeof name !== 'number') throw inputError('library-id-missing', { where });
  const drawing = content['drawing'];
  const hasDrawing = (kind === 'carton' || kind === 'die') && typeof drawing === 'string';
  const path = hasDrawing ? resolve(dirname(file), drawing) : undefined;
  return { kind, id: String(name).trim(), content, where, drawingPath: path, drawing: path === undefined ? undefined : () => read.bytes(relative('', path)) };
}

/** `presses/one.json`, `presses.csv` and `old-presses.csv` hold presses. */
function kindFrom(own: unknown, content: Record<string, unknown>, file: string): Kind | undefined {
  if (typeof own === 'string') return kindOf(own);
  if (content['format'] === LAYOUT_FORMAT) return 'layout';
  return kindOf(stemOf(file).split(/[\s_-]/).at(-1)!) ?? kindOf(basename(dirname(resolve(file))));
}
