/**
 * Widths of the letters of the standard font, thousandths of the letters' size, for the printable characters of ASCII in
 * order. Metric-compatible fonts (Arial, Liberation Sans, Nimbus Sans) share them. Source: the font metrics that Adobe
 * publishes for the fourteen standard fonts of PDF; held against the font tables of pdf-lib by a test.
 */
const WIDTHS = [
  278, 278, 355, 556, 556, 889, 667, 191, 333, 333, 389, 584, 278, 333, 278, 278, 556, 556, 556, 556, 556, 556, 556, 556, 556, 556, 278, 278, 584, 584, 584, 556,
  1015, 667, 667, 722, 722, 667, 611, 778, 722, 278, 500, 667, 556, 833, 722, 778, 667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 278, 278, 278, 469, 556,
  333, 556, 556, 500, 556, 556, 278, 556, 556, 222, 222, 500, 222, 833, 556, 556, 556, 556, 333, 500, 278, 556, 500, 722, 500, 500, 500, 334, 260, 334, 584,
];
const FIRST = 32;
/** For anything else; few letters of European languages are wider. */
const OTHER = 667;
/** Bold letters are at most so much wider on average over a word. */
const BOLD = 1.1;

/** Width of a line of text at the given size, in the size's unit. */
export function textWidth(text: string, size: number, bold = false): number {
  let sum = 0;
  for (const letter of text) sum += WIDTHS[letter.codePointAt(0)! - FIRST] ?? OTHER;
  return (sum / 1000) * size * (bold ? BOLD : 1);
}
