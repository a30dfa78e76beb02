import type { PDFFont } from '@cantoo/pdf-lib';
import { MM_PER_INCH } from '../base/units.ts';
import type { CurvePath } from '../geometry/curve.ts';
import type { Turn } from '../geometry/turn.ts';
import { samePoint } from '../geometry/vector.ts';
import { arcCubics } from './arc-cubics.ts';
import { plain } from './plain.ts';
import type { TextItem } from './scene.ts';

export const POINTS_PER_MM = 72 / MM_PER_INCH;

/** The paths as construction operators, in millimetres; loops are closed. Arcs become cubics of at most `longestArc` radians. */
export function pathConstruction(paths: readonly CurvePath[], longestArc = Math.PI / 2): string {
  const drawn = paths.map((path) => {
    const first = path[0];
    if (!first) return '';
    const curves = path.flatMap((curve) => (curve.kind === 'arc' ? arcCubics(curve, longestArc) : [curve]));
    const steps = curves.map((curve) =>
      curve.kind === 'line'
        ? `${plain(curve.to.x)} ${plain(curve.to.y)} l`
        : `${plain(curve.control1.x)} ${plain(curve.control1.y)} ${plain(curve.control2.x)} ${plain(curve.control2.y)} ${plain(curve.to.x)} ${plain(curve.to.y)} c`,
    );
    return `${plain(first.from.x)} ${plain(first.from.y)} m ${steps.join(' ')}${samePoint(first.from, path.at(-1)!.to) ? ' h' : ''}`;
  });
  return drawn.join('\n');
}

/** Text at its place, to stand between BT and ET; letters that the font lacks become `?`. `name` is the font's resource name. */
export function textShown({ text, at, size, anchor, turn }: TextItem, font: PDFFont, name: string): string {
  const known = new Set(font.getCharacterSet());
  const written = Array.from(text, (letter) => (known.has(letter.codePointAt(0)!) ? letter : '?')).join('');
  const width = font.widthOfTextAtSize(written, size);
  const before = anchor === 'start' ? 0 : anchor === 'middle' ? width / 2 : width;
  const start = turn === 0 ? { x: at.x - before, y: at.y } : { x: at.x, y: at.y - before };
  return `/${name} ${plain(size)} Tf ${turnMatrix(turn, start.x, start.y)} Tm ${font.encodeText(written).toString()} Tj`;
}

/** Operands of `cm` or `Tm`: turned about the origin, then moved. */
export function turnMatrix(turn: Turn, x: number, y: number): string {
  const [c, s] = [[1, 0], [0, 1], [-1, 0], [0, -1]][turn]!;
  return `${c} ${s} ${-s! + 0} ${c} ${plain(x)} ${plain(y)}`;
}
