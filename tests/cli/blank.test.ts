import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';

const binary = join(import.meta.dirname, '..', '..', 'dist', 'cli', 'main.js');
let folder: string;
beforeAll(() => (folder = mkdtempSync(join(tmpdir(), 'blank-'))));
afterAll(() => rmSync(folder, { recursive: true }));

function run(...args: string[]) {
  const { status, stdout, stderr } = spawnSync(process.execPath, [binary, ...args], { cwd: folder, encoding: 'utf8' });
  return { status, stdout, stderr };
}

describe('blank', () => {
  test('a drawing on standard output, which reads back with its dimensions', () => {
    const { status, stdout, stderr } = run('blank', 'glued-end-flaps', '67', '13', '130');
    expect([status, stderr]).toEqual([0, '']);
    expect(stdout).toMatch(/^<svg/);
    run('blank', 'glued-end-flaps', '67', '13', '130', '--svg', 'box.svg');
    expect(readFileSync(join(folder, 'box.svg'), 'utf8')).toBe(stdout);
    // The worked example of the handbook: 170.5 × 154.0.
    expect(JSON.parse(run('read', 'box.svg', '--json', '-').stdout)).toMatchObject({ widthMm: 170.5, heightMm: 154, grain: 'x' });
  });

  test('--explain lists parameters, limits and sources; with --svg the picture has dimensions', () => {
    const { status, stdout } = run('blank', 'straight-tuck', '--explain', '--svg', 'explained.svg');
    expect(status).toBe(0);
    for (const part of ['length: ', 'glueFlap: ', 'source: ', 'house value', 'Grain along x']) expect(stdout).toContain(part);
    const picture = readFileSync(join(folder, 'explained.svg'), 'utf8');
    for (const part of ['top tuck', 'other side', '>194.5<', 'glueFlap']) expect(picture).toContain(part);
  });

  test.each([
    [['cube'], 'there is no such style. Styles are: straight-tuck'],
    [['straight-tuck', '60', '30'], 'depth is missing'],
    [['straight-tuck', '60', '5', '110'], 'width'],
    [['straight-tuck', '60', '30', '110', '9'], 'length, width, depth'],
    [['straight-tuck', '60', 'thirty', '110'], 'width thirty'],
    [['straight-tuck', '60', '30', '110', '--set', 'glueTab=12'], 'glueTab'],
  ])('%j is refused with a word that helps, and nothing is written: exit 2', (args, message) => {
    const { status, stdout, stderr } = run('blank', ...args, '--svg', 'never.svg');
    expect([status, stdout]).toEqual([2, '']);
    expect(stderr).toContain(message);
    expect(existsSync(join(folder, 'never.svg'))).toBe(false);
  });
});
