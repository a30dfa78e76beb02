import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';

/** What the page shows is what the command prints: every block is run, `…` standing for lines left out. */
const root = join(import.meta.dirname, '..', '..');
const page = readFileSync(join(root, 'docs', 'planner.md'), 'utf8');
const folder = mkdtempSync(join(tmpdir(), 'planner-'));
afterAll(() => rmSync(folder, { recursive: true }));

const blocks = [...page.matchAll(/```console( free-search)?\n\$ npx blankwright (.*)\n([\s\S]*?)\n```/g)].map(([, free, command, output]) => ({ command: command!, output: output!, isFree: free !== undefined }));

function run(command: string): string[] {
  const words = command.split(' ').map((word) => (word.startsWith('samples/') ? join(root, word) : word));
  const { status, stdout } = spawnSync(process.execPath, [join(root, 'dist', 'cli', 'main.js'), ...words], { cwd: folder, encoding: 'utf8' });
  expect(status).toBe(0);
  return stdout.trimEnd().split('\n');
}

/** Runs of lines between the places where lines were left out. */
function shownRuns(output: string): string[] {
  return output.split(/^…$/m).map((run) => run.replace(/^\n|\n$/g, ''));
}

/** What no better layout changes: lines that begin at the margin, their figures left out. */
function skeleton(lines: readonly string[]): string[] {
  return lines.filter((line) => /^[A-Z]/.test(line) && !line.startsWith('Form ')).map((line) => line.replace(/\d/g, ''));
}

test('the page has its blocks', () => expect(blocks.length).toBeGreaterThanOrEqual(5));

test.each(blocks)('$command', ({ command, output, isFree }) => {
  const lines = run(command);
  if (isFree) {
    expect(skeleton(lines)).toEqual(skeleton(output.split('\n')));
    return;
  }
  const printed = lines.join('\n');
  let from = 0;
  for (const shown of shownRuns(output)) {
    const at = printed.indexOf(shown, from);
    expect(at, `not printed:\n${shown}\nprinted:\n${printed}`).toBeGreaterThanOrEqual(0);
    from = at + shown.length;
  }
});
