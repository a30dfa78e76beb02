import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';

const root = join(import.meta.dirname, '..', '..');
const PAGES = ['blank.md', 'prepress.md', 'die-maker.md'];

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'docs-'));
  symlinkSync(join(root, 'samples'), join(folder, 'samples'));
});
afterAll(() => rmSync(folder, { recursive: true }));

describe.each(PAGES)('%s', (page) => {
  const text = readFileSync(join(root, 'docs', page), 'utf8');
  const commands = [...text.matchAll(/```console\n([\s\S]*?)```/g)].flatMap(([, block]) => block!.split('\n').filter((line) => line.startsWith('$ ')));

  test('its commands do what they say: run one after the other, none refused', { timeout: 120_000 }, () => {
    expect(commands.length).toBeGreaterThan(1);
    for (const command of commands) {
      const [npx, name, ...args] = command.slice(2).split(' ');
      expect([npx, name]).toEqual(['npx', 'blankwright']);
      const { status, stderr } = spawnSync(process.execPath, [join(root, 'dist', 'cli', 'main.js'), ...args], { cwd: folder, encoding: 'utf8' });
      expect([command, status, status === 0 ? '' : stderr]).toEqual([command, 0, '']);
    }
    for (const name of readdirSync(folder)) if (name !== 'samples') rmSync(join(folder, name), { recursive: true });
  });

  test('every picture and page it points to is there', () => {
    const links = [...text.matchAll(/\]\(([^)#:]+)\)/g)].map(([, link]) => link!);
    expect(links.filter((link) => !existsSync(join(root, 'docs', link)))).toEqual([]);
  });
});

test('every style has a picture, and the pictures are those of the command', () => {
  const listed = spawnSync(process.execPath, [join(root, 'dist', 'cli', 'main.js'), 'blank'], { encoding: 'utf8' }).stdout;
  const styles = listed.split('\n').filter((line) => /^[a-z]/.test(line)).map((line) => line.split(' ')[0]!);
  const text = readFileSync(join(root, 'docs', 'blank.md'), 'utf8');
  for (const style of styles) expect([style, text.includes(`\`${style}\``) && existsSync(join(root, 'docs', 'blank', `${style}.svg`))]).toEqual([style, true]);
});
