import { describe, expect, test } from 'vitest';
import { judgeForProduction } from '../../src/layout/sound.ts';
import { handover, handoverLanguage } from '../../src/pipeline/handover.ts';
import { dielineMessages } from '../../src/render/messages/english-dieline.ts';
import { englishLanguage } from '../../src/render/messages/english-language.ts';
import { LANGUAGES } from '../../src/render/messages/languages.ts';
import { sourceName } from '../../src/render/messages/source-name.ts';
import { at, layoutWith, rectangle } from '../support/layouts.ts';

/** Every leaf of a table of words by its path; a function is named, for it cannot be compared. */
function leaves(words: unknown, path = ''): Map<string, string> {
  if (typeof words === 'string') return new Map([[path, words]]);
  if (typeof words === 'function') return new Map([[path, 'function']]);
  return new Map(Object.entries(words as object).flatMap(([key, value]) => [...leaves(value, `${path}.${key}`)]));
}

/** Tables in which a language may have more or fewer words than English: names that stand for themselves without one. */
const OPEN = /^\.(report\.sources|picture\.roles|picture\.keepOuts|handover\.figures)/;

/** Words that are the same in both languages. */
const SAME = new Set(['version', 'date', 'note', 'rectangles', 'perforation', 'zone', 'm²/1000', '–']);

const tables = (tag: string) => {
  const { locale: _, issues: __, quote, ...words } = LANGUAGES[tag]!;
  return leaves({ ...words, quote: quote('carton') });
};

describe.each(Object.keys(LANGUAGES).filter((tag) => tag !== 'en'))('%s', (tag) => {
  const english = tables('en');
  const own = tables(tag);

  test('says everything that English says, and nothing else', () => {
    const keys = (all: Map<string, string>) => [...all.keys()].filter((key) => !OPEN.test(key)).toSorted();
    expect(keys(own)).toEqual(keys(english));
  });

  test('in words of its own', () => {
    const untranslated = [...english].filter(([key, text]) => text !== 'function' && text !== '' && own.get(key) === text && !SAME.has(text));
    expect(untranslated).toEqual([]);
  });

  test('every role and every figure of the die maker that English names has a word', () => {
    const { picture, handover: words } = LANGUAGES[tag]!;
    for (const role of Object.keys(englishLanguage.picture.roles)) expect([role, picture.roles[role as 'Cutting']]).not.toEqual([role, undefined]);
    expect(Object.keys(words.figures)).toEqual(Object.keys(LANGUAGES['de']!.handover.figures));
  });

  test('a whole handover: pages in the language, numbers with its decimal sign, no English sentence left', async () => {
    const card = { ...rectangle('card', 100, 60), drawing: { paths: [{ role: 'Creasing', d: 'M50 0 L50 60' }, { role: 'Gluing', d: 'M1 1 L14 1 L14 59 L1 59 Z' }] } };
    const layout = layoutWith([card], [at('card', 10, 10), at('card', 116.5, 10)]);
    const { files } = await handover(judgeForProduction(layout).sound!, { back: 'perfecting', board: { caliper: 0.45 }, grain: 'x', nicks: { count: 2, widthMm: 0.5, clearOf: ['left'] }, quantity: 12000 }, { language: handoverLanguage(LANGUAGES[tag]!) });
    for (const { name, content } of files.filter(({ name: file }) => file.endsWith('.html'))) {
      expect([name, String(content).includes(`lang="${tag}"`)]).toEqual([name, true]);
      expect([name, /\b(the|sheet|with|gripper|side lay|knife|blank)\b/i.exec(String(content).replace(/<style>[\s\S]*?<\/style>/, '').replace(/<[^>]+>/g, ' '))?.[0]]).toEqual([name, undefined]);
    }
    expect(String(files.find(({ name }) => name === 'die-order.html')!.content)).toMatch(/23,35/);
  });

  test('every remark on a drawing, with the same facts', () => {
    const { issues } = LANGUAGES[tag]!;
    const facts = new Proxy({}, { get: (_, name) => `<${String(name)}>` }) as Record<string, string>;
    const named = (sentence: string) => [...new Set(sentence.match(/<\w+>|--[a-z-]+/g))].toSorted();
    for (const code of Object.keys(dielineMessages)) {
      const issue = { code, severity: 'note', where: '<where>', facts } as const;
      expect([code, issues.sentence(issue)]).not.toEqual([code, englishLanguage.issues.sentence(issue)]);
      // Options are left out: what the desk says too names none.
      expect([code, named(issues.sentence(issue)).filter((name) => !name.startsWith('--'))]).toEqual([code, named(englishLanguage.issues.sentence(issue)).filter((name) => !name.startsWith('--'))]);
    }
  });

  test('issues that stand in reports; others are English', () => {
    const { issues } = LANGUAGES[tag]!;
    const raised = { code: 'margin-raised-for-bleed', severity: 'note', facts: { edge: 'gripper', from: 12, to: 13, ink: 10, bleed: 3 } } as const;
    expect(issues.sentence(raised)).not.toBe(englishLanguage.issues.sentence(raised));
    expect(issues.sentence(raised)).not.toContain('gripper');
    expect(issues.sentence({ code: 'file-not-found', severity: 'error', where: 'a.svg' })).toContain('there is no such file');
  });
});

test('names of searches part by part', () => {
  const sources = { 'nested rows': 'A', 'free search': 'B' };
  expect(sourceName(sources, 'nested rows')).toBe('A');
  expect(sourceName(sources, 'free search, nested rows')).toBe('B, A');
  expect(sourceName(sources, 'something new')).toBe('something new');
  expect(sourceName({ ...sources, and: 'und' }, 'nested rows and free search, plain rows')).toBe('A und B, plain rows');
  expect(sourceName({}, 'plain rows and nested rows')).toBe('plain rows and nested rows');
});
