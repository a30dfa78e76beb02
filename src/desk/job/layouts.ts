import type { Kinship } from '../../layout/kinship.ts';
import { newId } from '../new-id.ts';
import type { KeptLayout } from './job.ts';

export type LayoutState = 'not judged' | 'sound' | 'faulty' | 'out of date';

/** The inputs of a layout that came as a file: sheet and limits are its own, its blank must be the one on the desk. */
export const FROM_FILE = 'file';
/** Of a form of several outlines: it stands for itself, whatever lies on the desk. */
const FROM_OUTLINES = 'outlines';

/** What is known of the layouts that came as files: what each is to the drawing on the desk, by its id. */
export interface Kin {
  /** Whether there is a drawing that they can be held against. */
  readonly drawn: boolean;
  readonly known: ReadonlyMap<string, Kinship>;
}

export const NO_KIN: Kin = { drawn: false, known: new Map() };

/** A layout made from other inputs than those on the desk, or for another blank, is out of date, whatever the judge said of it: also where what lies on the desk cannot be used. */
export function stateOf(layout: KeptLayout, inputs: string | undefined, kin: Kin): LayoutState {
  if (!isCurrent(layout, inputs, kin)) return 'out of date';
  return isForeign(layout) && kin.drawn && !kin.known.has(layout.id) ? 'not judged' : layout.state;
}

/** Whether it must be held against the drawing on the desk. */
export function isForeign({ inputs, fromFile }: KeptLayout): boolean {
  return inputs === FROM_FILE || (fromFile === true && inputs !== FROM_OUTLINES);
}

export function isCurrent(layout: KeptLayout, inputs: string | undefined, { known }: Kin): boolean {
  if (isForeign(layout) && (known.get(layout.id) ?? 'same') !== 'same') return false;
  return layout.inputs === FROM_FILE || layout.inputs === FROM_OUTLINES || layout.inputs === inputs;
}

/** Whether it only shows what a change would bring: its settings are not the job's. */
export function isShownOnly({ changed, inputs }: KeptLayout): boolean {
  return changed !== undefined && inputs === FROM_FILE;
}

/** Layouts of earlier inputs that are kept for comparison. */
const KEPT_OLD = 3;

/** Best first: sound ones, most ups, then as the search ranked them; those of earlier inputs come last. While there are no inputs (somebody types) all stay where they are. */
export function inOrder(layouts: readonly KeptLayout[], inputs: string | undefined, kin: Kin): KeptLayout[] {
  const now = layouts.filter((layout) => isCurrent(layout, inputs, kin) || (inputs === undefined && !isForeign(layout)));
  const old = layouts.filter((layout) => !now.includes(layout));
  const rank = ({ state }: KeptLayout) => (state === 'faulty' ? 1 : 0);
  return [...now.toSorted((a, b) => rank(a) - rank(b) || upsOf(b) - upsOf(a)), ...old.slice(-KEPT_OLD)];
}

export function upsOf({ file }: KeptLayout): number {
  return file.placements.length;
}

/** The best of those with more ups for the very inputs on the desk. What a file or a near miss brought was made with others, however many ups it has. */
export function betterThan(than: KeptLayout, sound: readonly KeptLayout[], inputs: string | undefined): KeptLayout | undefined {
  if (inputs === undefined || than.inputs !== inputs) return undefined;
  return sound.filter((one) => one.inputs === inputs && upsOf(one) > upsOf(than)).toSorted((a, b) => upsOf(b) - upsOf(a))[0];
}

/** What may be said of how many more could fit: a layout that is not sound claims nothing. */
export function claimOf({ file, limit, state }: KeptLayout): { readonly word: 'no-more-can-fit' | 'at-most' | 'not-proved'; readonly facts: { readonly limit: number | string } } | undefined {
  if (state !== 'sound') return undefined;
  if (!limit) return { word: 'not-proved', facts: { limit: '' } };
  return { word: limit.ups === file.placements.length ? 'no-more-can-fit' : 'at-most', facts: { limit: limit.ups } };
}

/** Whether two layouts put the same blanks in the same places. */
export function samePlacements(a: KeptLayout['file'], b: KeptLayout['file']): boolean {
  return JSON.stringify(a.placements) === JSON.stringify(b.placements) && JSON.stringify(a.sheet) === JSON.stringify(b.sheet);
}

/** Blank area over sheet area, openings not taken off. */
export function yieldOf({ file }: KeptLayout): number {
  const areas = new Map(file.designs.map(({ id, outline }) => [id, ringAreaMm2(outline)]));
  const used = file.placements.reduce((sum, { design }) => sum + (areas.get(design) ?? 0), 0);
  return used / (file.sheet.width * file.sheet.height);
}

function ringAreaMm2(ring: readonly (readonly [number, number])[]): number {
  return Math.abs(ring.reduce((sum, [x, y], i) => {
    const [nextX, nextY] = ring[(i + 1) % ring.length]!;
    return sum + x * nextY - nextX * y;
  }, 0) / 2);
}

/** A layout that no search of this job made: from a file, from a comparison, from a near miss. */
export function layoutFromFile(file: KeptLayout['file'], state: KeptLayout['state'], source: string): KeptLayout {
  return { id: newId(), file, state, source, inputs: FROM_FILE, limit: undefined, stopped: 'effort', seconds: undefined, notes: [], history: [], limits: [] };
}

/** One form of several outlines. */
export function layoutOfForm(file: KeptLayout['file'], source: string): KeptLayout {
  return { ...layoutFromFile(file, 'sound', source), inputs: FROM_OUTLINES };
}
