import { describe, expect, test } from 'vitest';
import { wordsIn } from '../../src/desk/words/words.ts';
import { dielineMessages } from '../../src/render/messages/english-dieline.ts';
import { englishDesk } from '../../src/render/messages/english-desk.ts';
import { estimateMessages } from '../../src/render/messages/english-estimate.ts';
import { geometryMessages } from '../../src/render/messages/english-geometry.ts';
import { artworkMessages, handoverMessages } from '../../src/render/messages/english-handover.ts';
import { layingMessages } from '../../src/render/messages/english-laying.ts';
import { layoutMessages } from '../../src/render/messages/english-layout.ts';
import { pressMessages } from '../../src/render/messages/english-press.ts';
import { styleMessages } from '../../src/render/messages/english-styles.ts';

/** What the desk never asks for, by the option of the command that does: no field, and no sentence of it on the desk. */
const NEVER_ASKED = /^(customer-page-without-price|cannot-be-guillotined|artwork-|gang-no-such-form|second-gripper-narrow|back-not-on-stations|limit-file-not-valid|stripping-|least-sheet-|judged-more-faults)/;

/** A remedy that the person cannot find on the desk is none. */
describe('remedies on the desk', () => {
  const tables = [artworkMessages, dielineMessages, estimateMessages, geometryMessages, handoverMessages, layingMessages, layoutMessages, pressMessages, styleMessages];
  const codes = tables.flatMap((table) => Object.entries(table)).flatMap(([code, text]) => (/--[a-z]/.test(text) && !NEVER_ASKED.test(code) ? [code] : []));
  const facts = { count: 2, number: 1, widthMm: 3, lines: 4, unit: 'px', stroke: '#0000ff', gap: 4, bleed: 3, needed: 6 };

  test.each(['en', 'de'] as const)('name fields, never options: %s', (locale) => {
    expect(codes.length).toBeGreaterThan(15);
    const { issue } = wordsIn(locale);
    expect(codes.map((code) => issue({ code, severity: 'error', facts })).filter((sentence) => /--[a-z]/.test(sentence))).toEqual([]);
  });

  test('a sentence for the desk stands for one that exists', () => {
    const known = new Set(tables.flatMap((table) => Object.keys(table)));
    expect(codes.filter((code) => Object.hasOwn(englishDesk, `issue-${code}`)).every((code) => known.has(code))).toBe(true);
    expect(wordsIn('en').issue({ code: 'gap-open', severity: 'error', facts })).toMatch(/“Close gaps in the outline up to”/);
  });
});
