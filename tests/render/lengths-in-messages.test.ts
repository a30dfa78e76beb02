import { describe, expect, test } from 'vitest';
import { createCatalogue } from '../../src/render/messages/catalogue.ts';
import { english } from '../../src/render/messages/english.ts';
import { LANGUAGES } from '../../src/render/messages/languages.ts';

const issue = (code: string, facts: Record<string, string | number>) => ({ code, severity: 'note', facts }) as const;

describe('lengths in messages', () => {
  const catalogue = createCatalogue([
    { gap: 'gap {gap} mm', size: '{width} × {height} mm or 8 mm, {count} pieces', raised: 'from {from} to {to} mm', option: 'Give --gap {needed:mm} or more.', area: '{areaMm2} mm²', place: 'at ({x:mm}, {y:mm})', unit: 'Write it in mm: 3 mms are none.' },
  ]);

  test.each([
    ['gap', { gap: 6 }, 'gap 6 mm', 'gap 0.236 in'],
    ['gap', { gap: 0.004 }, 'gap 0.004 mm', 'gap 0.0002 in'],
    ['gap', { gap: -0.0000001 }, 'gap 0 mm', 'gap 0 in'],
    ['gap', { gap: 'any' }, 'gap any mm', 'gap any in'],
    ['size', { width: 1020, height: 720, count: 2 }, '1020 × 720 mm or 8 mm, 2 pieces', '40.157 × 28.346 in or 0.315 in, 2 pieces'],
    ['size', { width: '1020 × 720', height: 1, count: 2 }, '1020 × 720 × 1 mm or 8 mm, 2 pieces', '40.157 × 28.346 × 0.039 in or 0.315 in, 2 pieces'],
    ['raised', { from: 10, to: 12.7 }, 'from 10 to 12.7 mm', 'from 0.394 to 0.5 in'],
    ['option', { needed: 6 }, 'Give --gap 6 or more.', 'Give --gap 0.236 in or more.'],
    ['area', { areaMm2: 645.16 }, '645.16 mm²', '1 in²'],
    ['place', { x: -25.4, y: 0 }, 'at (-25.4, 0)', 'at (-1 in, 0 in)'],
    ['unit', {}, 'Write it in mm: 3 mms are none.', 'Write it in mm: 3 mms are none.'],
  ])('%s with %o', (code, facts, mm, inches) => {
    expect(catalogue.sentence(issue(code, facts))).toBe(mm);
    expect(catalogue.sentence(issue(code, facts), 'in')).toBe(inches);
  });

  test('a decimal comma where the language has one, and what a table lacks is said in inches too', () => {
    const commas = createCatalogue([{ raised: 'von {from} auf {to} mm' }], { otherwise: catalogue, decimalSign: ',' });
    expect(commas.sentence(issue('raised', { from: 10, to: 12.7 }), 'in')).toBe('von 0,394 auf 0,5 in');
    expect(commas.sentence(issue('gap', { gap: 6 }), 'in')).toBe('gap 0.236 in');
  });

  test('what the tool says of layouts and sheets in every language', () => {
    expect(english.sentence({ ...issue('bleeds-overlap', { gap: 4, bleed: 3, needed: 6 }), where: '--gap' }, 'in')).toContain('gap 0.157 in is under twice the bleed (0.118 in)');
    const raised = issue('margin-raised-for-bleed', { edge: 'tail', from: 3, to: 6, ink: 3, bleed: 3 });
    for (const { issues } of Object.values(LANGUAGES)) expect(issues.sentence(raised, 'in')).not.toMatch(/\bmm\b/);
  });
});
