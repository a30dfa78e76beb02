import type { MessageTable } from './catalogue.ts';

/** The library of the shop, batches, and the queue. */
export const shopMessages: MessageTable = {
  'library-not-found': '{where}: there is no library there. Take things in with library add, or name another with --library.',
  'library-not-ours': '{where}: this file is no library of Blankwright; it was not touched. Name another with --library.',
  'library-newer': '{where}: this library was written by a newer Blankwright (version {version}, this one knows {known}); it was not touched. Use the newer program.',
  'library-disk-full': '{where}: the disk is full; what was there before is kept. Free some space and run it again.',
  'library-busy': '{where}: another program has been writing for a long time. Run it again when that has ended.',
  'library-not-writable': '{where}: the library cannot be written to ({reason}); what was there before is kept. Check folder, rights and disk.',
  'library-damaged': '{where}: the library is damaged ({reason}). Put back the last backup.',
  'library-kind-unknown': '{where}: what is this? Say it with --as press, cutter, board, sheets, customer, carton, die, job, layout or quote, or put the file into a folder of that name.',
  'library-id-missing': '{where}: a number or id is missing. Add the field or column "number".',
  'library-kind-not-valid': '{where}: the library holds {known}.',
  'library-no-such': '{where}: the library has none of this name. See library list {kind}.',
  'library-kept': '{where}: {new} new, {changed} changed, {unchanged} unchanged, {refused} refused.',
  'library-removed': '{kind} {id} removed; library show {kind} {id} still shows its history.',
  'library-backed-up': '{where}: backup written.',
  'library-exported': '{where}: {count} files written.',
  'found-by-dimensions': 'dimensions as recorded, {off} mm off at most',
  'found-by-creases': 'by the distances of its creases, {off} mm off at most',
  'found-by-shape': 'outline within {off} mm{turned}{mirrored}',
  'library-empty': 'nothing found.',
  'backup-exists': '{where}: there is such a file already. Give the backup a name of its own.',
  'batch-no-cartons': '{where}: there is not one carton. Name drawings, a folder or a table, or "library" for the live cartons of the library.',
  'answer-not-valid': 'an answer could not be used ({reason}).',
  'csv-not-valid': '{where}, line {line}: this is no table of separated values ({reason}).',
};
