import type { SheetDocument } from '../document.ts';

/** What a command came to. A command that cannot do anything hands back the very document it was given, and says why. */
export interface Change {
  readonly document: SheetDocument;
  /** The blanks to be selected from then on; absent: as before. */
  readonly selected?: ReadonlySet<number>;
  readonly notice?: Notice;
}

/** Why nothing, or less than was asked, happened. The words are in the catalogue. */
export type Notice =
  | 'all-locked'
  | 'nothing-selected'
  | 'one-rotation'
  | 'needs-two'
  | 'needs-three'
  | 'needs-three-in-line'
  | 'no-equal-steps'
  | 'some-rows-stay'
  | 'steps-equal-already'
  | 'grid-does-not-fit'
  | 'places-left-out'
  | 'no-contact-that-way'
  | 'no-free-place-that-way'
  | 'gathered-already'
  | 'faulty-stays'
  | 'tidy-already'
  | 'rest-no-better'
  | 'overtaken'
  | 'too-many-blanks'
  | 'locked-stays';

export function unchanged(document: SheetDocument, notice: Notice): Change {
  return { document, notice };
}
