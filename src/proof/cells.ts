import type { Cells, Lines, ReadCertificate, SheetMap } from './clique-certificate.ts';
import { demand } from './demand.ts';

/** A closed range of whole half micrometres. */
export interface Range {
  readonly low: number;
  readonly high: number;
}

/** The place of line k, −span + 2 span k / count, rounded to either side. */
function lineBelow({ span, count }: Lines, k: number): number {
  return Math.floor((2 * span * k) / count) - span;
}

function lineAbove({ span, count }: Lines, k: number): number {
  return Math.ceil((2 * span * k) / count) - span;
}

/** Holds all places of the cells between lines k and k + 1. */
export function cellRange(lines: Lines, k: number): Range {
  return { low: lineBelow(lines, k), high: lineAbove(lines, k + 1) };
}

/** Holds all differences of places of two cells, the second so many cells on. */
export function differenceRange({ span, count }: Lines, cells: number): Range {
  return { low: Math.floor((2 * span * (cells - 1)) / count), high: Math.ceil((2 * span * (cells + 1)) / count) };
}

/** First and last of the cells that together hold all places from −half to half. */
export function cellsAcross({ span, count }: Lines, half: number): Range {
  const low = Math.floor(((span - half) * count) / (2 * span));
  return { low, high: Math.max(low, Math.ceil(((span + half) * count) / (2 * span)) - 1) };
}

/** The cells that a map of the sheet carries these to. Nothing is believed of it: the image is checked like any other clique. */
export function imageOf(cells: Cells, { swap, flipX, flipY, turns }: SheetMap, { x, y }: ReadCertificate): Cells {
  demand(!swap || (x.span === y.span && x.count === y.count), 'a map exchanges unlike lines');
  return cells.map((value, k) => {
    if (k % 3 === 0) return turns[value]!;
    const across = k % 3 === 1;
    const taken = swap ? cells[across ? k + 1 : k - 1]! : value;
    return (across ? flipX : flipY) ? (across ? x : y).count - 1 - taken : taken;
  });
}
