import { compose, IDENTITY, translation, type Affine } from '../../geometry/affine.ts';
import { lengthOf } from '../../geometry/vector.ts';
import type { DrawnText, NameLevel } from '../drawing.ts';
import type { Operand, PdfTextToken } from './tokens.ts';

/**
 * Texts as far as they help to understand a drawing: dimensions and words in fonts whose bytes are characters. Each line
 * stands where it begins; how far its characters reach is not reckoned. ISO 32000-1, 9.4.
 */
export function createTexts() {
  let line: Affine = IDENTITY;
  let leading = 0;
  let size = 0;

  const next = (x: number, y: number) => {
    line = compose(line, translation(x, y));
  };

  const show = (content: string, map: Affine, levels: readonly NameLevel[], add: (text: DrawnText) => void) => {
    const placed = compose(map, line);
    const length = lengthOf({ x: placed.a, y: placed.b });
    // Bytes below the blank are glyph numbers of a font with an encoding of its own.
    if (!/^[\x20-\xff]*\S[\x20-\xff]*$/.test(content) || !(length > 0 && Number.isFinite(placed.e + placed.f + length))) return;
    const heightMm = size * lengthOf({ x: placed.c, y: placed.d });
    add({ content: content.trim(), place: { x: placed.e, y: placed.f }, heightMm, anchor: 'start', direction: { x: placed.a / length, y: placed.b / length }, levels });
  };

  /** One operator; those that are no text's are passed over. */
  const run = (operator: string, operands: readonly Operand[], map: Affine, levels: readonly NameLevel[], add: (text: DrawnText) => void): void => {
    const values = operands.filter((value) => typeof value === 'number');
    const [first = 0, second = 0] = values;
    switch (operator) {
      case 'BT':
        line = IDENTITY;
        return;
      case 'Tf':
        size = first;
        return;
      case 'TL':
        leading = first;
        return;
      case 'TD':
        leading = -second;
        return next(first, second);
      case 'Td':
        return next(first, second);
      case 'T*':
        return next(0, -leading);
      case 'Tm': {
        const [a = 1, b = 0, c = 0, d = 1, e = 0, f = 0] = values;
        line = { a, b, c, d, e, f };
        return;
      }
      case "'":
      case '"':
        next(0, -leading);
        return show(textOf(operands.at(-1)), map, levels, add);
      case 'Tj':
        return show(textOf(operands[0]), map, levels, add);
      case 'TJ':
        return show(Array.isArray(operands[0]) ? (operands[0] as readonly Operand[]).map(textOf).join('') : '', map, levels, add);
    }
  };
  return { run };
}

/** Of a list's item; a number far back moves on by as much as a blank. */
function textOf(operand: Operand): string {
  if (typeof operand === 'number') return operand < -WIDE ? ' ' : '';
  return (operand as PdfTextToken | undefined)?.text ?? '';
}

/** Thousandths of the font's size. */
const WIDE = 200;
