/**
 * Lengths in the texts of messages. A figure with ` mm` after it is a length, be it a fact or written out, and so are those
 * before it in a row: `{gap} mm`, `{width} × {height} mm`, `from {from} to {to} mm`, `8 mm`; with ` mm²` they are areas. One
 * that stands without its unit, as places and options do, says so: `{needed:mm}`.
 */
const FIGURE = String.raw`(?:\{\w+\}|\d+(?:[.,]\d+)?)`;
const JOINED = String.raw`(?: × | to | bis | auf | à )`;
const ROW = new RegExp(String.raw`((?:${FIGURE}${JOINED})*${FIGURE}) mm(²?)(?![\p{L}\d²])`, 'gu');

/** The text with its lengths marked to be read in inches: `{gap:in} in`, `{area:in²} in²`, and `{needed:in} in` of one without its unit. */
export function textInInches(text: string, inches: (mm: number) => string): string {
  const marked = (row: string, square: string) =>
    row.replace(new RegExp(FIGURE, 'g'), (figure) => (figure.startsWith('{') ? `${figure.slice(0, -1)}:in${square}}` : inches(Number(figure.replace(',', '.')))));
  return text.replace(ROW, (_, row: string, square: string) => `${marked(row, square)} in${square}`).replace(/\{(\w+):mm\}/g, '{$1:in} in');
}

/** The text with its lengths in millimetres, as they are. */
export function textInMillimetres(text: string): string {
  return text.replace(/\{(\w+):mm\}/g, '{$1}');
}
