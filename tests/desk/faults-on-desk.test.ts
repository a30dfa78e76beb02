import { signal } from '@preact/signals';
import { describe, expect, test } from 'vitest';
import { faultsOnDesk } from '../../src/desk/faults-on-desk.ts';
import { EMPTY_JOB, type Job } from '../../src/desk/job/job.ts';
import { layingOf } from '../../src/desk/job/laying.ts';
import { keptLength, keptSize } from '../../src/desk/job/typed-length.ts';
import { wordsIn, type Locale } from '../../src/desk/words/words.ts';

/** What is said of fields that cannot be used, with plain spaces, as the ticket and the panels of layouts say it. */
function faultsOf(job: Job, locale: Locale): readonly string[] {
  const laying = layingOf(job, { press: undefined, cutter: undefined, board: undefined });
  return faultsOnDesk({ job: signal(job), reading: signal({ kind: 'none' }), faultyFields: signal('faults' in laying ? laying.faults : []) }, wordsIn(locale)).map(({ text }) => text.replace(/\u00a0/g, ' '));
}

describe('fields that cannot be used', () => {
  test.each([['en', '1,020x720', 'Sheet size: “1,020x720” cannot be used.'], ['de', '1.020 × 720', '„1.020 × 720“'], ['en', '100000 × 100000', '“100000 × 100000”'], ['en', '', 'Sheet size is empty.']] as const)('a sheet is named as it was typed: %s, %s', (locale, typed, said) => {
    const size = keptSize(typed, wordsIn(locale).format);
    const [text, ...more] = faultsOf({ ...EMPTY_JOB, sheet: { ...EMPTY_JOB.sheet, size } }, locale);
    expect(more).toEqual([]);
    expect(text).toContain(said);
    expect(text).not.toContain('?');
  });

  test.each([['en', '1,234.5'], ['de', '1.234,5'], ['de', '-3,5'], ['en', '99999']] as const)('a gap likewise: %s, %s', (locale, typed) => {
    const gap = keptLength(typed, wordsIn(locale).format);
    expect(faultsOf({ ...EMPTY_JOB, limits: { ...EMPTY_JOB.limits, gap } }, locale)).toEqual([expect.stringMatching(new RegExp(`[“„]${typed.replace('.', '\\.')}[”“]`))]);
  });
});
