import { describe, expect, test } from 'vitest';
import { readDrawing } from '../../src/dieline/read-drawing.ts';
import { dielineOfStyle } from '../../src/dieline/styles/dieline-of-style.ts';
import { ownDrawing } from '../../src/desk/engine/answers/own-drawing.ts';
import { kinship } from '../../src/layout/kinship.ts';
import type { Design } from '../../src/layout/layout-file.ts';
import { preparePart } from '../../src/layout/part.ts';
import type { Dieline } from '../../src/dieline/dieline.ts';

const designOf = (dieline: Dieline, id: string): Design => preparePart(dieline.blanks[0]!, { id, turns: [0], fingerprint: dieline.fingerprint }).design;
const tuck = (length: number, width = 30, depth = 110) => dielineOfStyle('straight-tuck', { length, width, depth });
const blank = (lines: string) => readDrawing(new TextEncoder().encode(`<svg xmlns="http://www.w3.org/2000/svg" width="120mm" height="80mm" viewBox="0 0 120 80"><g fill="none" stroke="#000"><path id="cut" d="M10 10H110V70H10Z"/>${lines}</g></svg>`), { roles: [] });

/** A layout's design against the drawing on the desk. */
describe('kinship', () => {
  test('the same blank, also under another name', () => {
    expect(kinship([designOf(tuck(60), 'tea')], designOf(tuck(60), 'tea'))).toBe('same');
    expect(kinship([designOf(tuck(60), 'tea')], designOf(tuck(60), 'herbs'))).toBe('same');
  });

  test('another carton; a layout of several is of the drawing where one of them is', () => {
    expect(kinship([designOf(tuck(90, 45, 150), 'herbs')], designOf(tuck(60), 'tea'))).toBe('other');
    expect(kinship([designOf(tuck(90, 45, 150), 'herbs'), designOf(tuck(60), 'mint')], designOf(tuck(60), 'tea'))).toBe('same');
  });

  test('an older revision: by its name, or because it is nearly as large', () => {
    expect(kinship([designOf(tuck(75), 'tea')], designOf(tuck(60), 'tea'))).toBe('revision');
    expect(kinship([designOf(tuck(60.5), 'tea A')], designOf(tuck(60), 'tea B'))).toBe('revision');
  });

  test('creases that moved within the same outline are another state; lines drawn in pieces are not', async () => {
    const crease = (x: number) => blank(`<path id="crease" d="M${x} 10V70"/>`);
    const drawn = designOf(await crease(40), 'box');
    expect(kinship([designOf(await crease(43), 'box')], drawn)).toBe('revision');
    expect(kinship([designOf(await blank('<path id="crease" d="M40 70V40"/><path id="crease2" class="crease" d="M40 10V40"/>'), 'box')], drawn)).toBe('same');
    expect(kinship([{ ...drawn, drawing: undefined } as unknown as Design], drawn)).toBe('same');
  });

  test('a design as a drawing of its own is the same blank', async () => {
    for (const dieline of [tuck(60), dielineOfStyle('cup-fan', { top: 90, bottom: 60, height: 110 })]) {
      const design = designOf(dieline, 'own');
      for (const given of [design, { ...design, drawing: undefined } as unknown as Design]) {
        const read = await readDrawing(new TextEncoder().encode(ownDrawing(given)), { roles: [] });
        expect(read.blanks.length).toBe(1);
        expect(kinship([given], designOf(read, 'another'))).toBe('same');
      }
    }
  });
});
