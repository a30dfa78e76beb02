import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';

/**
 * What the pages for estimator, sales and buyer show is what the commands print. A block begins with `$ npx blankwright`;
 * a line `…` stands for any number of lines.
 */
const root = join(import.meta.dirname, '..');
const folder = mkdtempSync(join(tmpdir(), 'blankwright-docs-'));
symlinkSync(join(root, 'samples'), join(folder, 'samples'));
afterAll(() => rmSync(folder, { recursive: true }));

interface Snippet {
  readonly page: string;
  readonly command: string;
  readonly lines: readonly string[];
}

function snippetsOf(page: string): Snippet[] {
  const text = readFileSync(join(root, 'docs', page), 'utf8');
  return [...text.matchAll(/```\n\$ npx blankwright (.*)\n([\s\S]*?)```/g)].map(([, command, lines]) => ({ page, command: command!, lines: lines!.trimEnd().split('\n') }));
}

/** Words as a shell would part them; quotes hold words together. */
function wordsOf(command: string): string[] {
  return [...command.matchAll(/"([^"]*)"|(\S+)/g)].map(([, quoted, plain]) => quoted ?? plain!);
}

const printed = new Map<string, readonly string[]>();
function outputOf(command: string): readonly string[] {
  const known = printed.get(command);
  if (known) return known;
  const { status, stdout, stderr } = spawnSync(process.execPath, [join(root, 'dist', 'cli', 'main.js'), ...wordsOf(command)], { encoding: 'utf8', cwd: folder, env: { ...process.env, NO_COLOR: '1' } });
  if (status !== 0 && status !== 1) throw new Error(`${command}: exit ${status}, ${stderr}`);
  const lines = stdout.split('\n').map((line) => line.trimEnd());
  printed.set(command, lines);
  return lines;
}

/** The first line of the snippet that the output does not hold in its place; undefined where all do. */
function firstMissing(expected: readonly string[], output: readonly string[]): string | undefined {
  let at = 0;
  let isFree = false;
  for (const line of expected) {
    if (line === '…') {
      isFree = true;
      continue;
    }
    const found: number = isFree ? output.indexOf(line, at) : output[at] === line ? at : -1;
    if (found < 0) return line;
    [at, isFree] = [found + 1, false];
  }
  return undefined;
}

const PAGES = ['estimator.md', 'sales.md', 'buyer.md'];
const snippets = PAGES.flatMap(snippetsOf);

test('there are pages with commands, and the README leads to each', () => {
  const readme = readFileSync(join(root, 'README.md'), 'utf8');
  for (const page of PAGES) {
    expect(snippetsOf(page).length).toBeGreaterThan(1);
    expect(readme).toContain(`docs/${page}`);
  }
});

describe('commands print what the pages show', () => {
  test.each(snippets)('$page: $command', { timeout: 180_000 }, ({ command, lines }) => {
    expect(firstMissing(lines, outputOf(command)), 'a line of the page that the command does not print there').toBeUndefined();
  });
});
