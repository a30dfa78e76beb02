import type { KeptLayout } from './job.ts';
import { newId } from '../new-id.ts';

export type LayoutState = 'not judged' | 'sound' | 'faulty' | 'out of date';

/** The inputs of a layout that came as a file: it stands for itself, whatever lies on the desk. */
export const FROM_FILE = 'file';

/** A layout made from other inputs than those on the desk is out of date, whatever the judge said of it. */
export function stateOf(layout: KeptLayout, inputs: string | undefined): LayoutState {
  return inputs !== undefined && layout.inputs !== FROM_FILE && layout.inputs !== inputs ? 'out of date' : layout.state;
}

/** Layouts of earlier inputs that are kept for comparison. */
const KEPT_OLD = 3;

/** Best first: sound ones, most ups, then as the search ranked them; those of earlier inputs come last. */
export function inOrder(layouts: readonly KeptLayout[], inputs: string | undefined): KeptLayout[] {
  const now = layouts.filter((layout) => inputs === undefined || layout.inputs === inputs || layout.inputs === FROM_FILE);
  const old = layouts.filter((layout) => !now.includes(layout));
  const rank = ({ state }: KeptLayout) => (state === 'faulty' ? 1 : 0);
  return [...now.toSorted((a, b) => rank(a) - rank(b) || upsOf(b) - upsOf(a)), ...old.slice(-KEPT_OLD)];
}

export function upsOf({ file }: KeptLayout): number {
  return file.placements.length;
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

/** A layout that stands for itself: from a file, from a comparison, from a near miss. */
export function layoutFromFile(file: KeptLayout['file'], state: KeptLayout['state'], source: string): KeptLayout {
  return { id: newId(), file, state, source, inputs: FROM_FILE, limit: undefined, stopped: 'effort', seconds: undefined, notes: [], history: [], limits: [] };
}
