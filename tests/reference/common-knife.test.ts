import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';

const binary = join(import.meta.dirname, '..', '..', 'dist', 'cli', 'main.js');
const folder = mkdtempSync(join(tmpdir(), 'blankwright-knife-'));
afterAll(() => rmSync(folder, { recursive: true }));

const BARE = ['--gripper', '0', '--tail', '0', '--side-margins', '0', '--ink-gripper', '0', '--ink-tail', '0', '--ink-sides', '0', '--bleed', '0', '--gap', '4', '--effort', 'quick', '--json', '-'];

function nest(path: string, ...more: string[]): { result: { ups: number; upperBound: number; source: string }; placements: { x: number; y: number }[]; rules: { commonKnife: boolean } } {
  const drawing = join(folder, 'blank.svg');
  writeFileSync(drawing, `<svg xmlns="http://www.w3.org/2000/svg" width="300mm" height="300mm" viewBox="0 0 300 300"><path d="${path}" fill="none" stroke="#000"/></svg>`);
  const { stdout, stderr } = spawnSync(process.execPath, [binary, 'nest', drawing, ...BARE, ...more], { encoding: 'utf8' });
  if (!stdout) throw new Error(stderr);
  return JSON.parse(stdout);
}

/** The worked figures of twelve blanks of 170.5 × 154 mm, four by three: 7 788 mm of rule apart, 5 038 mm with common knives. Computed; common practice, no source. */
describe('twelve blanks, four by three', () => {
  const rectangle = 'M10 10h170.5v154h-170.5z';

  test('fit with common knives where knives apart do not', () => {
    const shared = nest(rectangle, '--sheet', '682x462', '--common-knife');
    expect(shared).toMatchObject({ result: { ups: 12, upperBound: 12 }, rules: { commonKnife: true } });
    expect(nest(rectangle, '--sheet', '682x462').result.ups).toBeLessThan(12);
  });

  test('share 2 750 mm of rule', () => {
    const { placements } = nest(rectangle, '--sheet', '682x462', '--common-knife');
    const edges = placements.flatMap(({ x, y }) => [`${x},${y},y`, `${x + 170.5},${y},y`, `${x},${y},x`, `${x},${y + 154},x`]);
    const lengthOf = (edge: string) => (edge.endsWith('y') ? 154 : 170.5);
    const total = (list: Iterable<string>) => [...list].reduce((sum, edge) => sum + lengthOf(edge), 0);
    expect(total(edges)).toBe(7788);
    expect(total(new Set(edges))).toBe(5038);
  });
});

test('blanks that would meet only at points keep the gap along that axis', () => {
  // Straight sides, pointed ends: common knives in the rows, the gap between them.
  const pointed = 'M10 30L60 10L110 30V90L60 110L10 90z';
  const shared = nest(pointed, '--sheet', '400x204', '--common-knife', '--rotations', '0,180');
  expect(shared.result.ups).toBe(8);
  expect(nest(pointed, '--sheet', '400x204', '--rotations', '0,180').result.ups).toBeLessThan(8);
});
