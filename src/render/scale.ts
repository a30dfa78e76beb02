/**
 * Sizes of text and lines on a picture of a sheet. A sheet is most often looked at on a page of A4, so the body text is
 * as high there as small print that everybody can read, whatever the sheet's own size.
 */
export interface Scale {
  /** Height of the body text, sheet millimetres. All other sizes are multiples of it. */
  readonly unit: number;
  readonly fine: number;
  readonly thin: number;
  readonly cut: number;
  readonly heavy: number;
}

/** Body text on A4, mm: 6.5 points. */
const BODY_ON_A4 = 2.3;
/** A4 less margins that every printer keeps, mm. */
const A4_LONG = 277;
const A4_SHORT = 190;
/** What stands around the sheet, in units of the body text: dimensions, gripper mark and title block. */
export const SURROUND = { left: 5.5, right: 5, top: 4.5, bottom: 6 } as const;
/** Distance of hatching lines, in units of the body text. */
export const HATCH = 0.55;
/** Usual depth of the title block with its legend, in the same units. */
const TITLE_DEPTH = 9;

export function scaleFor(sheet: { readonly width: number; readonly height: number }): Scale {
  const across = SURROUND.left + SURROUND.right;
  const along = SURROUND.top + SURROUND.bottom + TITLE_DEPTH;
  // unit = body · (side + n · unit) / page, solved for the unit.
  const solve = (side: number, n: number, page: number) => (BODY_ON_A4 * side) / (page - BODY_ON_A4 * n);
  const onPage = (pageWidth: number, pageHeight: number) => Math.max(solve(sheet.width, across, pageWidth), solve(sheet.height, along, pageHeight));
  const unit = Math.min(onPage(A4_LONG, A4_SHORT), onPage(A4_SHORT, A4_LONG));
  return { unit, fine: unit * 0.035, thin: unit * 0.055, cut: unit * 0.09, heavy: unit * 0.2 };
}
