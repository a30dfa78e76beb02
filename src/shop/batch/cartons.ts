import { resolve } from 'node:path';
import { inputError } from '../../base/issue.ts';
import { drawingNamed } from '../library/drawings.ts';
import type { Library } from '../library/open-library.ts';
import { entriesOf } from '../library/records.ts';
import { recordOf, offersOf, type FileReader, type Offered } from '../library/sources.ts';
import { withoutTwins } from '../library/twins.ts';
import type { CartonSource } from './batch-job.ts';

/** The word in a job for all live cartons of the library. */
const LIBRARY = 'library';

/** The cartons a job names, in its order. `folder` is where its paths begin. Throws an InputError where there is none. */
export function cartonsOf(source: CartonSource, { folder, library, read, where }: { folder: string; library: Library; read: FileReader; where: string }): Offered[] {
  const offers = source === LIBRARY ? liveCartons(library) : typeof source === 'string' ? [...offersOf([resolve(folder, source)], 'carton', read)] : listed(source, folder, read, where);
  if (offers.length === 0) throw inputError('batch-no-cartons', { where: `${where}: cartons` });
  // Two rows of one name could not be told apart, whatever they say.
  return withoutTwins(offers, () => true);
}

function liveCartons(library: Library): Offered[] {
  return entriesOf(library, 'carton')
    .filter(({ content }) => content['live'] !== false)
    .map(({ id, content }) => ({ kind: 'carton', id, content, where: `carton ${id}`, drawing: () => drawingNamed(library, String(content['drawing']))! }));
}

function listed(source: Exclude<CartonSource, string>, folder: string, read: FileReader, where: string): Offered[] {
  return source.flatMap((one, index): Offered[] => {
    if (typeof one === 'string') return [...offersOf([resolve(folder, one)], 'carton', read)];
    const id = String(one['id'] ?? one['number'] ?? one['drawing'] ?? index + 1);
    return [recordOf({ ...one, id }, { file: resolve(folder, 'job'), where: `${where}: cartons[${index}]`, as: 'carton', id, read })];
  });
}
