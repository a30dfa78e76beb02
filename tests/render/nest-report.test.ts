import { describe, expect, test } from 'vitest';
import { nestReport } from '../../src/render/nest-report.ts';
import { createFormat } from '../../src/render/format.ts';
import { englishLanguage } from '../../src/render/messages/english-language.ts';
import { reportText } from '../../src/render/report-text.ts';
import { facts } from './facts.ts';

describe('the report in a terminal', () => {
  const lines = reportText(nestReport(facts));

  test('begins with the answer', () => {
    expect(lines[0]).toBe('15 ups on 1020 × 720 mm; at most 17 can fit (pockets); 66.0 % of the sheet is carton.');
  });

  test('says how the limit is known and why the search stopped', () => {
    const text = lines.join('\n');
    expect(text).toContain('17 (pockets)');
    expect(text).toContain('2 ups (13.3 %) not settled');
    expect(text).toContain('the effort was used up');
    expect(text).toContain('66.0 % = 15 × 323.1 cm² ÷ 7 344.0 cm²');
  });

  test('one up is one; of a search that has not come to its end it is not said why it stopped', () => {
    const text = reportText(nestReport({ ...facts, ups: 16, stopped: undefined })).join('\n');
    expect(text).toContain('1 up (6.3 %) not settled');
    expect(text).not.toContain('stopped');
  });

  test('the board adds up to the sheet', () => {
    const start = lines.indexOf('Where the board goes');
    const rows = lines.slice(start + 1, lines.indexOf('', start)).map((line) => Number(/([\d.]+) %/.exec(line)![1]));
    const sheet = rows.pop()!;
    expect(sheet).toBe(100);
    expect(rows.reduce((sum, row) => sum + Math.round(row * 10), 0)).toBe(1000);
  });

  test('a cause that took nothing is not listed', () => {
    expect(lines.some((line) => line.includes('colour bar'))).toBe(false);
  });

  test('the caution is said once, last', () => {
    const text = lines.join(' ');
    expect(text.split('before a die is ordered')).toHaveLength(2);
    expect(text.endsWith('under local law.')).toBe(true);
  });

  test('no line is longer than 100 columns', () => {
    expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(100);
  });

  test('a limit that is met says that no more can fit', () => {
    expect(nestReport({ ...facts, limit: { ups: 15, by: 'pockets' } }).answer).toBe('15 ups on 1020 × 720 mm; no more can fit (pockets); 66.0 % of the sheet is carton.');
  });

  test('a weak limit is called weak, a missing one missing', () => {
    expect(nestReport({ ...facts, limit: { ups: 20, by: 'area' } }).answer).toContain('at most 20 can fit, a limit known only from area');
    const { limit: _, ...unlimited } = facts;
    expect(nestReport(unlimited).answer).toContain('how many more could fit is not proved');
  });

  test('blanks of no named kind read well', () => {
    expect(nestReport({ ...facts, product: 'blank' }).answer).toContain('66.0 % of the sheet is used.');
  });

  test('bleeds that are cut are listed by what they keep, the narrowest first', () => {
    const bleedKept = [
      { blanks: [0, 1] as const, keptMm: 2.5 },
      ...[1, 2, 3, 4, 5, 6].map((i) => ({ blanks: [i, i + 1] as const, keptMm: 2 })),
    ];
    const text = reportText(nestReport({ ...facts, bleedMeeting: 'cut', bleedKept }));
    const start = text.indexOf('Bleed that each edge keeps');
    expect(text.slice(start + 1, start + 4)).toEqual([
      '  2 mm    between stations 2 and 3, 3 and 4, 4 and 5, 5 and 6 and 2 more pairs',
      '  2.5 mm  between stations 1 and 2',
      '  3 mm    all other edges',
    ]);
  });

  test('an improvement that brings no more ups is called an arrangement', () => {
    const again = { work: 95_000, seconds: 4.5, ups: 15, source: 'nested rows' };
    const text = reportText(nestReport({ ...facts, history: [...facts.history, again] })).join('\n');
    expect(text).toContain('– 15 ups by every second row turned after 4.1 s');
    expect(text).toContain('– 15 ups, better arranged, by nested rows after 4.5 s');
  });

  test('lengths follow the unit asked for', () => {
    expect(nestReport(facts, englishLanguage, createFormat('en', 'in')).answer).toContain('on 40.157 × 28.346 in');
  });
});
