import { inFields, InputError, mendedByField, type Issue } from '../../base/issue.ts';
import { chooseBlank } from '../../dieline/choose-blank.ts';
import { fingerprintOf } from '../../dieline/fingerprint.ts';
import { readDrawing } from '../../dieline/read-drawing.ts';
import { readRecord } from '../../press/records.ts';
import { drawingNamed, keepDrawing } from './drawings.ts';
import { KINDS, type Kind } from './kinds.ts';
import type { Library } from './open-library.ts';
import { readingOf } from './reading.ts';
import { entryNamed, keepEntry, type Kept } from './records.ts';
import { withoutTwins } from './twins.ts';

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
  readonly refused: readonly Told[];
  /** Drawings that were taken in although they had to be repaired or leave something in doubt. */
  readonly doubtful: readonly Told[];
}

interface Told {
  readonly where: string;
  readonly issues: readonly Issue[];
}

/** Entries that are written in one go: others who write wait no longer than that. */
const AT_ONCE = 100;

/** Takes in all that can be used and lists the rest with its reasons. An offer that is an error was refused before. */
export async function takeIn(library: Library, offers: Iterable<Offer | { readonly where: string; readonly error: InputError }>): Promise<TakenIn> {
  const counts: Record<Kept, number> = { new: 0, changed: 0, unchanged: 0 };
  const [refused, doubtful]: [Told[], Told[]] = [[], []];
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
  for (const offer of withoutTwins(offers, differ)) {
    try {
      if ('error' in offer) throw offer.error;
      // Another offer of this name adds to what the first one left.
      if (ready.some(({ offer: { kind, id } }) => kind === offer.kind && id === offer.id)) write();
      const checked = await check(library, offer);
      ready.push(checked);
      if (checked.doubts.length > 0) doubtful.push({ where: offer.where, issues: checked.doubts });
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      refused.push({ where: offer.where, issues: error.issues });
    }
    // What a customer calls his lines must be known before his cartons are read.
    if (ready.length >= AT_ONCE || ready.at(-1)?.offer.kind === 'customer') write();
  }
  write();
  return { counts, refused, doubtful };
}

interface Checked {
  readonly offer: Offer;
  readonly content: Offer['content'];
  readonly bytes?: Uint8Array;
  /** What is doubtful about a drawing that came with the offer. */
  readonly doubts: readonly Issue[];
}

/** The record by its schema; its drawing must hold the blank that is meant. */
async function check(library: Library, offer: Offer): Promise<Checked> {
  const { kind, id, where, drawing } = offer;
  const content = KINDS[kind].grows ? merged(entryNamed(library, kind, id)?.content ?? {}, offer.content) : offer.content;
  readRecord(KINDS[kind].schema, content, where);
  const given = drawing?.();
  const bytes = given ?? (typeof content['drawing'] === 'string' ? drawingNamed(library, content['drawing']) : undefined);
  if (!bytes) return { offer, content, doubts: [] };
  const options = readingOf(library, content);
  const read = await inFields(where, async () => {
    const dieline = await readDrawing(bytes, options);
    chooseBlank(dieline, options.blank);
    return dieline;
  });
  if (!given) return { offer, content, doubts: [] };
  return { offer, content: { ...content, drawing: fingerprintOf(given) }, bytes: given, doubts: doubtsOf(read.issues, options.blank !== undefined) };
}

/** What asks for a decision; several blanks do not where one was chosen. */
export function doubtsOf(issues: readonly Issue[], isChosen: boolean): Issue[] {
  return issues.filter(({ severity, code }) => severity !== 'note' && !(isChosen && code === 'several-blanks')).map((issue) => mendedByField(issue));
}

/** Whether two offers of one name contradict one another. Of a record that grows they may give different fields. */
function differ(a: Offer, b: Offer): boolean {
  const fields = Object.keys(a.content).filter((field) => field !== 'drawing' && (!KINDS[a.kind].grows || field in b.content));
  if (fields.some((field) => JSON.stringify(a.content[field]) !== JSON.stringify(b.content[field]))) return true;
  if (!KINDS[a.kind].grows && Object.keys(b.content).some((field) => !(field in a.content))) return true;
  return a.drawing !== undefined && b.drawing !== undefined && fileOf(a.drawing) !== fileOf(b.drawing);
}

/** A file that cannot be read is told of when it is taken in. */
function fileOf(read: () => Uint8Array): string {
  try {
    return fingerprintOf(read());
  } catch (error) {
    if (error instanceof InputError) return '';
    throw error;
  }
}

/** Fields that are not given stay as they are; null takes a field away. */
function merged(before: Offer['content'], given: Offer['content']): Offer['content'] {
  return Object.fromEntries(Object.entries({ ...before, ...given }).filter(([, value]) => value !== null));
}
