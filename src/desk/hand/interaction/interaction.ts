import type { Point } from '../../../geometry/point.ts';
import type { SheetDocument } from '../document.ts';
import type { Moving } from '../snapping/snap.ts';

/** One pointer as the states see it: mouse, pen or finger alike. */
export interface Pointer {
  /** On the sheet, µm, any number. */
  readonly at: Point;
  /** In the picture, pixels. */
  readonly screen: Point;
  /** Id of the blank under it. */
  readonly over: number | undefined;
  /** Shift: add to the selection; while dragging: along one axis only. */
  readonly shift: boolean;
  /** Alt: nothing is snapped to. */
  readonly alt: boolean;
  /** Control or Command: drag a copy. */
  readonly control: boolean;
  /** Middle button, space bar held, or a finger beside all blanks: move the view. */
  readonly pans: boolean;
}

/** What the hand is in the middle of. Each kind has a file of its own. */
export type Interaction =
  | { readonly kind: 'idle' }
  /** The measuring tool waits for its first point. */
  | { readonly kind: 'ready-to-measure' }
  | { readonly kind: 'pressed'; readonly id: number; readonly start: Pointer; readonly wasSelected: boolean }
  | { readonly kind: 'marquee'; readonly start: Point; readonly end: Point; readonly startScreen: Point; readonly base: ReadonlySet<number> }
  | { readonly kind: 'dragging'; readonly start: Point; readonly mark: SheetDocument; readonly moving: Moving; readonly copied: boolean }
  | { readonly kind: 'panning'; readonly last: Point; readonly before: Interaction }
  | { readonly kind: 'measuring'; readonly from: Point }
  | { readonly kind: 'nudging'; readonly mark: SheetDocument; readonly moving: Moving; readonly by: Point };

/** A pointer is down and holds a blank, the sheet, a rectangle or a measure. */
export function isUnderPointer({ kind }: Interaction): boolean {
  return kind === 'pressed' || kind === 'marquee' || kind === 'dragging' || kind === 'panning' || kind === 'measuring';
}

export const IDLE: Interaction = { kind: 'idle' };

/** Movements shorter than this are a click, screen pixels. */
export const CLICK_PX = 4;
/** How near the pointer must come to be drawn to something, screen pixels. */
export const SNAP_PX = 8;
/** How far around moved blanks distances are told, screen pixels. */
export const NEAR_PX = 260;
