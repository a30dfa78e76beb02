import { compose, IDENTITY, translation, type Affine } from '../../geometry/affine.ts';
import { lengthOf } from '../../geometry/vector.ts';
import type { DrawnText, NameLevel } from '../drawing.ts';
import type { PdfFont } from './font.ts';
import type { Operand, PdfNameToken, PdfTextToken } from './tokens.ts';

/**
 * Texts as far as they help to understand a drawing: dimensions and words in fonts whose bytes are characters. Of a text in
 * another font only its place is told, without content. How far it reaches is known where its font is. ISO 32000-1, 9.4.
 */
export function createTexts(fontOf: (name: string) => PdfFont | undefined) {
  /** Where the line begins, and where its next letter stands. */
  let line: Affine = IDENTITY;
  let here: Affine = IDENTITY;
  let leading = 0;
  let size = 0;
  let letterSpace = 0;
  let font: PdfFont | undefined;

  const next = (x: number, y: number) => {
    line = compose(line, translation(x, y));
    here = line;
  };

  const show = (shown: readonly Operand[], map: Affine, levels: readonly NameLevel[], add: (text: DrawnText) => void) => {
    const placed = compose(map, here);
    const length = lengthOf({ x: placed.a, y: placed.b });
    const along = font && advance(shown, font);
    if (along !== undefined) here = compose(here, translation(along, 0));
    if (!(length > 0 && Number.isFinite(placed.e + placed.f + length))) return;
    const content = shown.map(textOf).join('');
    // Bytes below the blank are glyph numbers of a font with an encoding of its own.
    const isRead = font?.isPlain !== false && /^[\x20-\xff]*\S[\x20-\xff]*$/.test(content);
    if (!isRead && (along === undefined || !(along > 0))) return;
    if (!isRead && font?.isPlain !== false && content.trim() === '') return;
    const heightMm = size * lengthOf({ x: placed.c, y: placed.d });
    add({
      content: isRead ? content.trim() : '', place: { x: placed.e, y: placed.f }, heightMm, anchor: 'start', direction: { x: placed.a / length, y: placed.b / length }, levels,
      ...(along !== undefined && { widthMm: along * length }),
    });
  };

  /** Of strings and the moves between them, in units of text space. */
  const advance = (shown: readonly Operand[], { width, isPlain }: PdfFont): number =>
    shown.reduce<number>((sum, part) => {
      if (typeof part === 'number') return sum - (part / 1000) * size;
      const bytes = (part as PdfTextToken | undefined)?.text ?? '';
      return sum + width(bytes) * size + letterSpace * (isPlain ? bytes.length : bytes.length / 2);
    }, 0);

  /** One operator; those that are no text's are passed over. */
  const run = (operator: string, operands: readonly Operand[], map: Affine, levels: readonly NameLevel[], add: (text: DrawnText) => void): void => {
    const values = operands.filter((value) => typeof value === 'number');
    const [first = 0, second = 0] = values;
    switch (operator) {
      case 'BT':
        line = here = IDENTITY;
        return;
      case 'Tf':
        size = first;
        font = fontOf((operands[0] as PdfNameToken | undefined)?.name ?? '');
        return;
      case 'Tc':
        letterSpace = first;
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
        line = here = { a, b, c, d, e, f };
        return;
      }
      case "'":
      case '"':
        next(0, -leading);
        return show([operands.at(-1)], map, levels, add);
      case 'Tj':
        return show([operands[0]], map, levels, add);
      case 'TJ':
        return show(Array.isArray(operands[0]) ? (operands[0] as readonly Operand[]) : [], map, levels, add);
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
