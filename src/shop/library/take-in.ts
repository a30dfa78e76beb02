import { InputError, type Issue } from '../../base/issue.ts';
import { chooseBlank } from '../../dieline/choose-blank.ts';
import { fingerprintOf } from '../../dieline/fingerprint.ts';
import { readDrawing } from '../../dieline/read-drawing.ts';
import { readRecord } from '../../press/records.ts';
import { drawingNamed, keepDrawing } from './drawings.ts';
import { KINDS, type Kind } from './kinds.ts';
import type { Library } from './open-library.ts';
import { readingOf } from './reading.ts';
import { entryNamed, keepEntry, type Kept } from './records.ts';

/** Something that is to be kept, not yet looked at. */
export interface Offer {
  readonly kind: Kind;
  readonly id: string;
  readonly content: Readonly<Record<string, unknown>>;
  /** Names the place it comes from in messages. */
  readonly where: string;
  /** Reads the drawing's file. */
  readonly drawing?: (() => Uint8Array) | undefined;
}

export interface TakenIn {
  readonly counts: Readonly<Record<Kept, number>>;
  /** One entry for each thing that could not be used. */
  readonly refused: readonly { readonly where: string; readonly issues: readonly Issue[] }[];
}

/** Entries that are written in one go: others who write wait no longer than that. */
const AT_ONCE = 100;

/** Takes in all that can be used and lists the rest with its reasons. An offer that is an error was refused before. */
export async function takeIn(library: Library, offers: Iterable<Offer | { readonly where: string; readonly error: InputError }>): Promise<TakenIn> {
  const counts: Record<Kept, number> = { new: 0, changed: 0, unchanged: 0 };
  const refused: { where: string; issues: readonly Issue[] }[] = [];
  let ready: Checked[] = [];
  const write = () => {
    library.whole(() => {
      for (const { offer, content, bytes } of ready) {
        if (bytes) keepDrawing(library, bytes);
        counts[keepEntry(library, offer.kind, offer.id, content)]++;
      }
    });
    ready = [];
  };
  for (const offer of offers) {
    try {
      if ('error' in offer) throw offer.error;
      ready.push(await check(library, offer));
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      refused.push({ where: offer.where, issues: error.issues });
    }
    // What a customer calls his lines must be known before his cartons are read.
    if (ready.length >= AT_ONCE || ready.at(-1)?.offer.kind === 'customer') write();
  }
  write();
  return { counts, refused };
}

interface Checked {
  readonly offer: Offer;
  readonly content: Offer['content'];
  readonly bytes?: Uint8Array;
}

/** The record by its schema; its drawing must hold the blank that is meant. */
async function check(library: Library, offer: Offer): Promise<Checked> {
  const { kind, id, where, drawing } = offer;
  const content = KINDS[kind].grows ? merged(entryNamed(library, kind, id)?.content ?? {}, offer.content) : offer.content;
  readRecord(KINDS[kind].schema, content, where);
  const given = drawing?.();
  const bytes = given ?? (typeof content['drawing'] === 'string' ? drawingNamed(library, content['drawing']) : undefined);
  if (!bytes) return { offer, content };
  const options = readingOf(library, content);
  await located(where, async () => chooseBlank(await readDrawing(bytes, options), options.blank));
  return { offer, content: given ? { ...content, drawing: fingerprintOf(given) } : content, ...(given && { bytes: given }) };
}

/** Fields that are not given stay as they are; null takes a field away. */
function merged(before: Offer['content'], given: Offer['content']): Offer['content'] {
  return Object.fromEntries(Object.entries({ ...before, ...given }).filter(([, value]) => value !== null));
}

/** Reasons of the drawing name the file that it came from. */
async function located(where: string, work: () => Promise<unknown>): Promise<void> {
  try {
    await work();
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    throw new InputError(error.issues.map((issue) => ({ ...issue, where: issue.where === undefined ? where : `${where}, ${issue.where}` })));
  }
}
