/**
 * Every tolerance of reading, millimetres. Drawings are written with rounded numbers (two decimals in mm, points or
 * pixels: up to 0.014 mm between ends that were one), and a die is bent to about a tenth of a millimetre.
 */

/** Ends and lines nearer than this are one place. Above two roundings to 0.01 mm, well below a real gap. */
export const JOIN_TOLERANCE_MM = 0.02;

/** Straight pieces stand for curves when joining; with the opposite piece of a doubled curve this stays below joining. */
export const CHORD_TOLERANCE_MM = 0.004;

/** Gaps up to this width are closed, and listed. Wider ones are left open: they may be meant (a nick is under 1 mm). */
export const GAP_TOLERANCE_MM = 0.5;

/** A loose end this near to another, but not closed, is listed as a gap left open. */
export const NEAR_GAP_MM = 5;

/** A line that goes on past another by up to this is an overshoot inside the blank; longer it is a slit. */
export const OVERSHOOT_MM = 1;

/** A loop smaller than this part of the largest one beside it is no blank (arrowheads, register marks, dots). */
export const LEAST_BLANK_SHARE = 0.005;

/** A loop with a smaller area is no blank, mm²: a die does not cut blanks of 3 mm. */
export const LEAST_BLANK_AREA_MM2 = 9;

/** Strokes whose widths differ by this factor are two kinds of line; smaller differences come from scaled groups. */
export const WIDTH_KIND_FACTOR = 1.5;

/** A loop of cut lines inside with a smaller area is no opening but two lines that were meant to be one, mm². */
export const LEAST_OPENING_AREA_MM2 = 0.2;

/** A loose end of one line up to this long beyond a junction was drawn too far; longer it is a line of its own, mm. */
export const LONGEST_TAIL_MM = 5;

/** Where cut lines need others to close, and more than this part of them stays outside, the outline was not closed. */
export const LARGEST_CUT_SHARE_OUTSIDE = 0.1;
