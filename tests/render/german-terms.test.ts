import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';

const tables = join(import.meta.dirname, '..', '..', 'src', 'render', 'messages');

/**
 * One German word for each thing, on the desk as in reports and folders, and what it is not called. Right beside them:
 * Zuschnitt is the blank by its shape, Nutzen one of them in its place on the sheet; Standbogen is a layout that is there,
 * Anordnung any way in which blanks might lie.
 */
const TERMS: Readonly<Record<string, RegExp>> = {
  Standbogen: /Standbögen|Nummer des Stands|Welcher Stand\b|Stand \$|geprüfte Anordnung|der gefundenen Anordnung|diese Anordnung'/,
  'Nutzen (in its place)': /\bStände\b|Plätze|Platz \$?\{|Platznummer/,
  Stanzriss: /Stanzzeichnung|Stand der Zeichnung/,
  Abfall: /Verschnitt/,
  Kontrollstreifen: /Farbkontroll|Farbbalken/,
  Bogenende: /Hinterkante/,
  Rillung: /Rillinie|\bRillen?\b/,
  Öffnung: /Ausschnitt/,
  Seitenanlage: /\bAnlage\b/,
  Obergrenze: /'Grenze'|und Grenze/,
  Anleitung: /Handbuch/,
  Stanzformenbauer: /Stanzformbauer/,
  Flächengewicht: /Grammatur/,
  Laufrichtung: /Faser(lauf|richtung)/,
  Zuschuss: /[Mm]akulatur/,
  Einrichten: /(?<!Um)[Rr]üst(en|zeit|zuschuss)/,
  Arbeitsgang: /\bStufen?\b/,
  Mehrmenge: /Überlieferung|'darüber'/,
  Hub: /\bTakte?\b/,
};

const lines = readdirSync(tables)
  .filter((name) => name.startsWith('german-'))
  .flatMap((name) => readFileSync(join(tables, name), 'utf8').split('\n').map((text) => ({ name, text })))
  .filter(({ text }) => !/^\s*(\/\/|\/?\*)/.test(text));

test.each(Object.entries(TERMS))('%s has no other name in any German table', (_, forbidden) => {
  expect(lines.filter(({ text }) => forbidden.test(text)).map(({ name, text }) => `${name}: ${text.trim().slice(0, 160)}`)).toEqual([]);
});
