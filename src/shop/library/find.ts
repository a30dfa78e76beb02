import { toMicrons, toMillimetres } from '../../base/units.ts';
import { degreesOf } from '../../geometry/turn.ts';
import { outlineLikeness } from '../../geometry/outline-likeness.ts';
import type { CreaseDistances } from './crease-distances.ts';
import { kindOf, parseDimensions, type Kind } from './kinds.ts';
import type { Library } from './open-library.ts';
import { countOfEntries, entriesHolding, entryNamed, partOfEntries, type Entry } from './records.ts';
import { allShapes, bringShapesUp, shapesOfSize, sidesOf, type Shape } from './shapes.ts';

/** One entry found, and why. */
export interface Found {
  readonly entry: Entry;
  readonly by:
    | { readonly how: 'words' }
    /** Dimensions as recorded, or as the distances between creases of the drawing give them; how far off at most, mm. */
    | { readonly how: 'dimensions' | 'creases'; readonly offMm: number }
    /** Outline laid on outline. */
    | { readonly how: 'shape'; readonly offMm: number; readonly rotation: number; readonly mirrored: boolean };
}

export interface Wanted {
  /** As somebody would ask: words, a number, `62 x 31 x 118`. */
  readonly text?: string | undefined;
  readonly like?: Shape | undefined;
  readonly kind?: Kind | undefined;
  /** Tolerance of sizes and shapes, mm. */
  readonly within: number;
}

/** Answers a question about the library, the nearest answers first. All that is asked must hold. */
export async function find(library: Library, { text = '', like, kind, within }: Wanted): Promise<Found[]> {
  await bringShapesUp(library);
  const { dimensions, words, kindAsked } = understood(text);
  const wanted = kind ?? kindAsked;
  let found: Found[] | undefined;
  const narrow = (next: readonly Found[]) => {
    const before = found;
    found = next.filter(({ entry }) => (wanted === undefined || entry.kind === wanted) && (!before || before.some((other) => sameEntry(other.entry, entry))));
  };
  if (words.length > 0 || (!dimensions && !like)) narrow(byWords(library, words, wanted));
  if (dimensions) narrow(byDimensions(library, dimensions, within));
  if (like) narrow(byShape(library, like, within));
  return found ?? [];
}

/** So many of what is found, from one on, counted from 0; where nothing narrows it down no more than these are read. */
export async function findPart(library: Library, wanted: Wanted, from: number, count: number): Promise<{ readonly total: number; readonly found: readonly Found[] }> {
  const { text = '', like, kind } = wanted;
  if (text.trim() === '' && !like) {
    // Pictures are made of shapes, so these are wanted whatever is asked.
    await bringShapesUp(library);
    return { total: countOfEntries(library, kind), found: partOfEntries(library, kind, from, count).map(toldByWords) };
  }
  const found = await find(library, wanted);
  return { total: found.length, found: found.slice(from, from + count) };
}

const ONE_SIZE = String.raw`\d+(?:\.\d+)?(?:\s*(?:mm|cm|in))?`;
const DIMENSIONS = new RegExp(String.raw`${ONE_SIZE}\s*[x×]\s*${ONE_SIZE}\s*[x×]\s*${ONE_SIZE}`, 'i');

/** Dimensions in the text leave only a word for the kind to look at: "do we have a die for 62 x 31 x 118?" */
function understood(text: string): { dimensions: readonly number[] | undefined; words: readonly string[]; kindAsked: Kind | undefined } {
  const words = text.toLowerCase().split(/\s+/).filter((word) => word !== '');
  const dimensions = parseDimensions(DIMENSIONS.exec(text)?.[0] ?? '');
  if (!dimensions) return { dimensions, words, kindAsked: undefined };
  return { dimensions, words: [], kindAsked: words.map((word) => kindOf(word.replace(/\W/g, ''))).find((kind) => kind === 'die' || kind === 'carton') };
}

function sameEntry(a: Entry, b: Entry): boolean {
  return a.kind === b.kind && a.id === b.id;
}

/** The database reads for what stands in a word whatever is around it; accents and signs are looked at here. */
function byWords(library: Library, words: readonly string[], kind: Kind | undefined): Found[] {
  return entriesHolding(library, words.flatMap((word) => word.match(/[a-z0-9]+/g) ?? []).slice(0, MOST_PIECES), kind)
    .filter((entry) => {
      // A drawing's fingerprint says nothing to anybody.
      const { drawing: _, ...told } = entry.content;
      const said = [entry.kind, entry.id, ...Object.values(told).filter((value) => ['string', 'number'].includes(typeof value))].join(' ').toLowerCase();
      return words.every((word) => said.includes(word));
    })
    .map(toldByWords);
}

/** More would make a query too long; the words themselves are all looked at. */
const MOST_PIECES = 50;

function toldByWords(entry: Entry): Found {
  return { entry, by: { how: 'words' } };
}

function byDimensions(library: Library, wanted: readonly number[], within: number): Found[] {
  const recorded = entriesHolding(library, ['dimensions'], undefined).flatMap((entry): Found[] => {
    const own = parseDimensions(String(entry.content['dimensions'] ?? ''));
    const offMm = own ? dimensionsOff(own, wanted) : Infinity;
    return offMm <= within ? [{ entry, by: { how: 'dimensions', offMm } }] : [];
  });
  const drawn = allShapes(library).flatMap(({ kind, id, creases }): Found[] => {
    const offMm = creasesOff(creases, wanted);
    const entry = offMm <= within ? entryNamed(library, kind, id) : undefined;
    // What was recorded is believed.
    return entry && entry.content['dimensions'] === undefined ? [{ entry, by: { how: 'creases', offMm } }] : [];
  });
  return [...nearestFirst(recorded), ...nearestFirst(drawn)];
}

/** Length and width may be named in either order. */
function dimensionsOff([a, b, depth]: readonly number[], [length, width, wantedDepth]: readonly number[]): number {
  const base = Math.min(Math.max(Math.abs(a - length), Math.abs(b - width)), Math.max(Math.abs(a - width), Math.abs(b - length)));
  return Math.max(base, Math.abs(depth - wantedDepth));
}

/** A folding carton has length and width along one axis of the drawing, a tray one along each; the depth is free there. */
function creasesOff({ across, up }: CreaseDistances, [length, width, depth]: readonly number[]): number {
  const nearest = (distances: readonly number[], mm: number) => Math.min(Infinity, ...distances.map((distance) => Math.abs(distance - mm)));
  const laid = (one: readonly number[], other: readonly number[]) => {
    const carton = Math.max(nearest(one, length), nearest(one, width), nearest(other, depth));
    const tray = Math.max(nearest(one, length), nearest(other, width), Math.min(nearest(one, depth), nearest(other, depth)));
    return Math.min(carton, tray);
  };
  return Math.min(laid(across, up), laid(up, across));
}

function byShape(library: Library, { outline }: Shape, within: number): Found[] {
  const found = shapesOfSize(library, sidesOf(outline), 2 * within).flatMap((shape): Found[] => {
    const likeness = outlineLikeness(outline, shape.outline, toMicrons(within));
    const entry = likeness && entryNamed(library, shape.kind, shape.id);
    if (!likeness || !entry) return [];
    return [{ entry, by: { how: 'shape', offMm: toMillimetres(Math.round(likeness.distance)), rotation: degreesOf(likeness.turn), mirrored: likeness.mirrored } }];
  });
  return nearestFirst(found);
}

function nearestFirst(found: readonly Found[]): Found[] {
  const off = ({ by }: Found) => ('offMm' in by ? by.offMm : 0);
  return found.toSorted((a, b) => off(a) - off(b));
}
