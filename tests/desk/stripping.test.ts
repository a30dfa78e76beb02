import { expect, test } from 'vitest';
import { compare, comparePage, recost } from '../../src/desk/engine/answers/compare.ts';
import { search } from '../../src/desk/engine/answers/search.ts';
import type { SearchEvent } from '../../src/desk/engine/protocol.ts';
import { judgeStripping } from '../../src/layout/judge-stripping.ts';
import { wordsIn } from '../../src/desk/words/words.ts';
import { barJob, quickSearch } from '../support/bar-job.ts';

async function searchOnDesk(strippingRule: 'prefer' | 'must', job = barJob) {
  const events: SearchEvent[] = [];
  const cutter = { stripping: 'with-tools', strippingRule, leastStrip: 5 };
  const host = { emit: (event: SearchEvent) => events.push(event), control: { stopped: () => false }, pool: quickSearch.runner };
  const answer = await search({ job: { ...job, machines: { cutter } } as never, effort: 'quick', seed: 1 }, host as never);
  const shown = events.flatMap((event) => (event.kind === 'layout' ? [event.found.file] : []));
  const limits = events.flatMap((event) => (event.kind === 'limit' ? [event.limit.ups] : []));
  return { answer, shown, limits };
}

const cut = { mode: 'with-tools', leastStrip: 5 } as const;

test('a rule of the chosen die-cutter holds for all that the desk shows, and the limit is still that of the sheet', async () => {
  const { answer, shown, limits } = await searchOnDesk('must');
  expect(answer.layouts[0]!.file.placements).toHaveLength(30);
  expect(shown.length).toBeGreaterThan(0);
  for (const file of [...shown, ...answer.layouts.map((found) => found.file)]) expect(judgeStripping(file, cut)).toEqual([]);
  expect([answer.limit.ups, Math.min(...limits)]).toEqual([36, 36]);
  expect(answer.notes.map((note) => wordsIn('de').issue(note).replaceAll('\u00a0', ' '))).toContain('Es gelten nur Standbogen, die alles einhalten, was Ausbrechen mit Ausbrechwerkzeug verlangt, mit Abfallstegen von 5 mm oder mehr.');
});

test('as a preference the fuller layout stands, and it is said that it falls short', async () => {
  const { answer, shown } = await searchOnDesk('prefer');
  expect([answer.layouts[0]!.file.placements.length, Math.max(...shown.map(({ placements }) => placements.length))]).toEqual([36, 36]);
  expect(answer.notes.map(({ code }) => code)).toEqual(expect.arrayContaining(['stripping-rule-prefer', 'stripping-falls-short']));
});

test('a rule that nothing keeps is told in words of the desk, in either language', async () => {
  const refused = searchOnDesk('must', { ...barJob, sheet: { width: 172, height: 124 }, settings: { gap: 4, bleed: 2, sideMargins: [2, 2], inkSides: 0, inkTail: 0, inkGripper: 0, gripper: 10, tail: 2 } });
  const { issues: [issue] } = await refused.then(() => { throw new Error('not refused'); }, (error: { issues: never[] }) => error);
  expect(wordsIn('en').issue(issue!)).toMatch(/^No layout was found that keeps what the record of the die-cutter asks/);
  expect(wordsIn('de').issue(issue!)).toMatch(/^Kein Standbogen .* Ausbrechen mit Ausbrechwerkzeug/);
});

test.each([['a rule', { cutter: { stripping: 'with-tools', strippingRule: 'must' } }, 30], ['no wish', {}, 36]] as const)('compared sheets under %s: counted anew with other terms, and kept as a page in inches', async (_, machines, ups) => {
  const quote = { job: { ups: 1, sheet: '1020x720', grammage: 300, quantities: [5000], stages: ['die-cutting'] } };
  const host = { control: { stopped: () => false }, pool: quickSearch.runner, locale: 'en', unit: 'in' };
  const { comparison, facts: { notes } } = await compare({ job: { ...barJob, machines }, sheets: { sheets: [{ sheet: '1020x720' }] }, lists: [], effort: 'quick', quote } as never, host as never);
  const ask = { name: 'bar', comparison, notes, quote } as never;
  const { facts } = recost(ask, { locale: 'en', unit: 'in' });
  expect([facts.sheets[0]!.ups, facts.notes.map(({ code }) => code)]).toEqual([ups, ups === 30 ? ['stripping-rule-must'] : []]);
  const page = comparePage(ask, { locale: 'en', unit: 'in' });
  expect(page).toMatch(/ft²\/1000/);
  expect(page).not.toContain('m²/1000');
});
