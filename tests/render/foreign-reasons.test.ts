import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { InputError, type Issue } from '../../src/base/issue.ts';
import { readDrawing } from '../../src/dieline/read-drawing.ts';
import { readRows } from '../../src/press/tables/rows.ts';
import { english } from '../../src/render/messages/english.ts';
import { germanReasons } from '../../src/render/messages/german-reasons.ts';
import { reasonIn } from '../../src/render/messages/foreign-reasons.ts';
import { german } from '../../src/render/messages/german-catalogue.ts';
import { LANGUAGES } from '../../src/render/messages/languages.ts';
import { openLibrary } from '../../src/shop/library/open-library.ts';

const french = LANGUAGES['fr']!.issues;
const folder = mkdtempSync(join(tmpdir(), 'blankwright-reasons-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

async function refusal(work: () => unknown): Promise<Issue> {
  try {
    await work();
  } catch (error) {
    if (error instanceof InputError) return error.issues[0]!;
    throw error;
  }
  throw new Error('not refused');
}

const bytes = (text: string) => new TextEncoder().encode(text);
const broken = (name: string) => new Uint8Array(readFileSync(join(import.meta.dirname, '..', '..', 'samples', 'broken', name)));
const pdf = (contents: string) => bytes(`%PDF-1.7\n1 0 obj\n<< /Type /Catalog /Pages 2 0 R >>\nendobj\n2 0 obj\n<< /Kids [3 0 R] /Count 1>>\nendobj\n3 0 obj\n<< /Type /Page /MediaBox [0 0 100 100] /Contents 4 0 R>>\nendobj\n4 0 obj\n${contents}\nendobj\ntrailer << /Root 1 0 R >>\nstartxref\n0\n%%EOF`);

describe('why a drawing cannot be read is said in the language of whoever asks', () => {
  test.each([
    ['the end of the file is missing', broken('cut-off.svg'), /^Die Zeichnung ist kein gültiges XML, Zeile \d+: das Element <\w+> ist nicht geschlossen; vielleicht fehlt das Ende der Datei\. /, /the element <\w+> is not closed/, /l’élément <\w+> n’est pas fermé/],
    ['a page of the web', broken('web-page.svg'), /^Dies ist kein SVG: Das äußerste Element ist html\./, /html/, /html/],
    ['an attribute that stands twice', bytes('<svg a="1" a="2"/>'), /ein Element hat das Attribut „a“ zweimal/, /has the attribute “a” twice/, /deux fois l’attribut « a »/],
    ['text behind it', bytes('<svg/>hello'), /vor oder nach der Zeichnung steht Text/, /text stands before or after the drawing/, /du texte se trouve avant ou après/],
    ['a PDF of its head alone', bytes('%PDF-1.4\n'), /^Das PDF ist nicht lesbar: es hat keine Seite, oder sein Ende fehlt\. /, /it has no page, or its end is missing/, /il n’a pas de page/],
    ['a PDF packed otherwise', pdf('<< /Length 4 /Filter /DCTDecode>>\nstream\nabcd\nendstream'), /mit DCTDecode gepackt/, /packed by DCTDecode/, /par DCTDecode/],
    ['a PDF whose content is damaged', pdf('<< /Length 4 /Filter /FlateDecode>>\nstream\nabcd\nendstream'), /was darin gepackt ist, ist beschädigt/, /is damaged/, /est abîmé/],
  ])('%s', async (_, content, inGerman, inEnglish, inFrench) => {
    const issue = await refusal(() => readDrawing(content));
    expect(german.sentence(issue)).toMatch(inGerman);
    expect(english.sentence(issue)).toMatch(inEnglish);
    expect(french.sentence(issue)).toMatch(inFrench);
  });
});

test('the library file and tables', async () => {
  const damaged = join(folder, 'damaged');
  const whole = join(folder, 'whole');
  openLibrary(whole, { create: true }).close();
  // What stands behind the header of the file is overwritten.
  const content = readFileSync(whole).fill(0xaa, 100);
  writeFileSync(damaged, content);
  const issues = [
    await refusal(() => openLibrary(join(folder, 'none', 'x'), { create: true })),
    await refusal(() => openLibrary(damaged, { create: false }).rows('SELECT * FROM answer')),
    await refusal(() => openLibrary(folder, { create: false })),
    await refusal(() => readRows('a,b\n"1,2', 'list.csv')),
    await refusal(() => readRows('a,a\n1,2', 'list.csv')),
    await refusal(() => readRows('a,b\n1,2,3', 'list.csv')),
    await refusal(() => readRows('', 'list.csv')),
  ];
  expect(issues.map((issue) => german.sentence(issue).replace(folder, ''))).toEqual([
    'In die Bibliothek lässt sich nicht schreiben (sie lässt sich dort nicht öffnen); was darin lag, ist erhalten. Prüfen Sie Ordner, Rechte und Festplatte.',
    'Die Bibliothek ist beschädigt (ihr Inhalt hängt nicht zusammen). Spielen Sie die letzte Sicherung zurück.',
    ': Die Datei ist nicht lesbar (es ist ein Ordner).',
    'list.csv, Zeile 2: Dies ist keine Tabelle aus getrennten Werten (ein Anführungszeichen ist geöffnet und nicht geschlossen).',
    'list.csv, Zeile 1: Dies ist keine Tabelle aus getrennten Werten (die Spalte a gibt es zweimal).',
    'list.csv, Zeile 2: Dies ist keine Tabelle aus getrennten Werten (3 Zellen, aber 2 Spalten).',
    'list.csv, Zeile 1: Dies ist keine Tabelle aus getrennten Werten (es steht nichts darin).',
  ]);
});

test('a reason that nobody has met yet stands as a quotation', () => {
  const issue: Issue = { code: 'pdf-not-readable', severity: 'error', facts: { reason: 'the moon is full' } };
  expect(german.sentence(issue)).toBe('Das PDF ist nicht lesbar: „the moon is full“. Speichern Sie es neu aus dem Zeichenprogramm.');
  expect(english.sentence(issue)).toContain('“the moon is full”');
});

/** Of names with prefixes, which are not looked at; of what we never do; and what is told as an issue of its own. */
const NEVER = /namespace|prefix|cannot write after close|undefined entity|undefine/;

test('whatever the reader of XML can say has a clause of ours', () => {
  const source = readFileSync(createRequire(import.meta.url).resolve('saxes'), 'utf8');
  const said = [...source.matchAll(/fail\((?:"((?:[^"\\]|\\.)*)"|`([^`]*)`)/g)].map(([, plain, made]) => (plain?.replace(/\\(.)/g, '$1') ?? made!.replace(/\$\{[^}]*\}/g, 'x')).replace(/\.$/, '')).filter((text) => !NEVER.test(text));
  expect(said.length).toBeGreaterThan(40);
  expect(said.filter((text) => reasonIn(germanReasons, text).startsWith('„'))).toEqual([]);
});
