import { spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';

const root = join(import.meta.dirname, '..', '..');
const page = join(root, 'docs', 'library.md');
const folder = mkdtempSync(join(tmpdir(), 'blankwright-docs-'));
cpSync(join(root, 'samples'), join(folder, 'samples'), { recursive: true });
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** What changes from day to day is shown as an ellipsis. */
const steady = (text: string) => text.replace(/\d{4}-\d\d-\d\dT[\d:.]+Z/g, '…').replace(/"[0-9a-f]{64}"/g, '"…"').trimEnd();

interface Step {
  readonly title: string;
  /** A file to write; otherwise the title is a command and the content what it says. */
  readonly file: string | undefined;
  readonly content: string;
}

/** The page from top to bottom: its files are written, its commands run, what they say is what it shows. */
const steps = [...readFileSync(page, 'utf8').matchAll(/```(console|json|csv) ?(\S*)\n([\s\S]*?)```/g)].flatMap(([, kind, name, content]): Step[] =>
  kind === 'console'
    ? content!.split(/^\$ blankwright /m).slice(1).map((part) => ({ title: part.split('\n', 1)[0]!, file: undefined, content: part.slice(part.indexOf('\n') + 1) }))
    : [{ title: name!, file: name!, content: content! }],
);

test('the page has its examples', () => expect(steps.length).toBeGreaterThan(12));

test.each(steps)('$title', ({ title, file, content }) => {
  if (file !== undefined) return writeFileSync(join(folder, file), content);
  const args = [...title.matchAll(/"([^"]*)"|(\S+)/g)].map(([, quoted, plain]) => quoted ?? plain!);
  const { stdout, stderr, status } = spawnSync(process.execPath, [join(root, 'dist', 'cli', 'main.js'), ...args], { cwd: folder, encoding: 'utf8', env: { ...process.env, BLANKWRIGHT_LIBRARY: '' } });
  const shown = steady(content);
  const said = steady(stdout);
  // An ellipsis at the end: the rest is left out on the page.
  const compared = shown.endsWith('\n…') ? `${said.slice(0, shown.length - 1)}…` : said;
  expect({ status, said: compared }).toEqual({ status: 0, said: shown });
  if (title.includes('again.json')) expect(stderr).toContain('Answered from the library');
});
