import { describe, expect, test } from 'vitest';
import { inputsText, sameButSheet, type Inputs } from '../../src/desk/job/inputs.ts';

const laying = { sheet: { width: 1020, height: 720 }, sheetGrain: 'x', settings: { gap: 6 } };
const base: Inputs = ['abc', 1, { roles: [] }, 'Cutting 4', 'printed', laying];
const text = (changes: Partial<Record<number, unknown>>) => inputsText(base.map((part, i) => changes[i] ?? part) as unknown as Inputs);

describe('inputs that differ in the sheet alone', () => {
  test('another sheet or its grain is the same comparison', () => {
    expect(sameButSheet(text({}), text({ 5: { ...laying, sheet: { width: 640, height: 900 }, sheetGrain: 'y' } }))).toBe(true);
  });

  test.each([
    ['drawing', { 0: 'def' }], ['scale', { 1: 0.5 }], ['what is said of it', { 2: { roles: ['Cutting=stroke:#000000'] } }], ['roles of lines', { 3: 'Creasing 4' }], ['side', { 4: 'inside' }],
    ['gap', { 5: { ...laying, settings: { gap: 5.5 } } }],
  ])('another %s is another', (_, changes) => {
    expect(sameButSheet(text({}), text(changes))).toBe(false);
  });

  test('none are like none', () => {
    expect(sameButSheet(undefined, text({}))).toBe(false);
  });
});
