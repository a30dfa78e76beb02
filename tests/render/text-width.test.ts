import { PDFDocument, StandardFonts } from '@cantoo/pdf-lib';
import { describe, expect, test } from 'vitest';
import { textWidth } from '../../src/render/text-width.ts';

describe('widths of text', () => {
  test('are those of the standard font, letter by letter', async () => {
    const font = await (await PDFDocument.create()).embedFont(StandardFonts.Helvetica);
    for (let code = 32; code < 127; code++) {
      const letter = String.fromCodePoint(code);
      expect([letter, Math.round(textWidth(letter, 1000))]).toEqual([letter, font.widthOfTextAtSize(letter, 1000)]);
    }
  });

  test('of bold words are not underestimated', async () => {
    const font = await (await PDFDocument.create()).embedFont(StandardFonts.HelveticaBold);
    for (const word of ['every second row turned', 'fernhollow-mint', '1020 × 720 mm', 'GRIPPER EDGE', '0123456789', '66.0 %']) {
      expect(textWidth(word, 10, true)).toBeGreaterThanOrEqual(font.widthOfTextAtSize(word, 10) * 0.995);
    }
  });
});
