import { toMillimetres } from '../../base/units.ts';
import { degreesOf } from '../../geometry/turn.ts';
import { placementsOf } from '../../layout/layout-of.ts';
import type { LayoutFile, PlacedBlank } from '../../layout/layout-file.ts';
import type { Placement } from '../../layout/problem.ts';
import { stationOrder } from '../../layout/station-order.ts';
import type { SheetFrame } from './sheet-frame.ts';

/** One blank under the hand. Whole micrometres. */
export interface Blank extends Placement {
  /** Stays with the blank through all changes; never used twice. */
  readonly id: number;
  /** Stays where it is: neither hand nor search moves it. */
  readonly locked: boolean;
}

/** What undo and redo go through. Zoom, selection and all else that is only seen are kept apart. */
export interface SheetDocument {
  readonly blanks: readonly Blank[];
  /** Greater than every id ever given. */
  readonly nextId: number;
}

/** `locked`: numbers of placements in the layout that stay. Throws an InputError for an unknown design or rotation. */
export function documentOf(layout: LayoutFile, { problem }: SheetFrame, locked: readonly number[] = [], firstId = 1): SheetDocument {
  const fixed = new Set(locked);
  const blanks = placementsOf(layout, problem.parts).map((placement, i) => ({ ...placement, id: firstId + i, locked: fixed.has(i) }));
  return { blanks, nextId: firstId + blanks.length };
}

/** The blanks as stations: from the gripper, then from the lay. */
export function stationsOf({ blanks }: SheetDocument, { problem }: SheetFrame): readonly Blank[] {
  // The order hands back the very objects it was given.
  return stationOrder(blanks, problem.parts, problem.lay) as Blank[];
}

export function placedBlank({ problem }: SheetFrame, { part, turn, x, y }: Placement): PlacedBlank {
  return { design: problem.parts[part].id, rotation: degreesOf(turn), x: toMillimetres(x), y: toMillimetres(y) };
}

/** The layout file's content, in station order, and which of its placements are locked. */
export function layoutOfDocument(document: SheetDocument, frame: SheetFrame): { readonly layout: LayoutFile; readonly locked: readonly number[] } {
  const stations = stationsOf(document, frame);
  return {
    layout: { ...frame.layout, placements: stations.map((blank) => placedBlank(frame, blank)) },
    locked: stations.flatMap((blank, i) => (blank.locked ? [i] : [])),
  };
}

/** The document with some blanks put elsewhere or otherwise changed; the others are the same objects. */
export function withChanged(document: SheetDocument, changed: ReadonlyMap<number, Blank>): SheetDocument {
  return changed.size === 0 ? document : { ...document, blanks: document.blanks.map((blank) => changed.get(blank.id) ?? blank) };
}

export function chosen({ blanks }: SheetDocument, ids: ReadonlySet<number>): Blank[] {
  return blanks.filter(({ id }) => ids.has(id));
}

/** The chosen blanks that may be moved. */
export function movable(document: SheetDocument, ids: ReadonlySet<number>): Blank[] {
  return chosen(document, ids).filter(({ locked }) => !locked);
}

/** Adds copies under new ids; returns those ids too. Copies are never locked. */
export function withAdded(document: SheetDocument, added: readonly Placement[]): { readonly document: SheetDocument; readonly ids: ReadonlySet<number> } {
  const blanks = added.map(({ part, turn, x, y }, i) => ({ part, turn, x, y, id: document.nextId + i, locked: false }));
  return { document: { blanks: [...document.blanks, ...blanks], nextId: document.nextId + blanks.length }, ids: new Set(blanks.map(({ id }) => id)) };
}

