import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';

const root = new URL('../..', import.meta.url).pathname;
const folder = mkdtempSync(join(tmpdir(), 'blankwright-reel-'));
afterAll(() => rmSync(folder, { recursive: true }));

function reel(job: unknown, ...args: string[]) {
  writeFileSync(join(folder, 'job.json'), JSON.stringify(job));
  return spawnSync(process.execPath, [join(root, 'dist', 'cli', 'main.js'), 'reel', 'job.json', ...args], { encoding: 'utf8', cwd: folder });
}

function drawing(name: string, points: string, width: number, height: number): string {
  writeFileSync(join(folder, name), `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}"><polygon points="${points}" fill="none" stroke="#000"/></svg>`);
  return name;
}

// THREE at 0°, optimum 6 (Pantoja-Benavides, Álvarez-Martínez, Parreño Torres, Mathematics 12 (2024) 2414), in millimetres × 10.
test('three pieces on a reel: the proved optimum', () => {
  const designs = [
    drawing('diamond.svg', '0,20 20,0 40,20 20,40', 40, 40),
    drawing('square.svg', '0,0 30,0 30,30 0,30', 30, 30),
    drawing('triangle.svg', '0,30 40,30 20,0', 40, 30),
  ].map((file) => ({ file, ups: 1, rotations: [0] }));
  const { stdout } = reel({ width: 70, gap: 0, designs }, '--effort', 'quick', '--json', '-');
  const layout = JSON.parse(stdout);
  expect(layout.result.lengthMm).toBeCloseTo(60, 2);
  expect(layout.sheet).toEqual({ width: layout.result.lengthMm, height: 70 });
  expect(layout.result.lengthLowerBoundMm).toBeLessThanOrEqual(layout.result.lengthMm);
  expect(layout.placements).toHaveLength(3);
});

test.each([
  ['no designs', { width: 70, gap: 0, designs: [] }, /designs/],
  ['a width of nonsense', { width: -1, gap: 0, designs: [{ file: 'square.svg', ups: 1 }] }, /job.json: width/],
  ['a rotation that is no quarter turn', { width: 70, gap: 0, designs: [{ file: 'square.svg', ups: 1, rotations: [45] }] }, /quarter turns/],
  ['a drawing that is not there', { width: 70, gap: 0, designs: [{ file: 'none.svg', ups: 1 }] }, /none.svg: there is no such file/],
  ['a slip of a field', { width: 70, gap: 0, blead: 3, designs: [{ file: 'square.svg', ups: 1 }] }, /blead: there is no such field; bleed/],
  ['a slip within a design', { width: 70, gap: 0, designs: [{ file: 'square.svg', ups: 1, rotatoins: [0] }] }, /rotatoins: there is no such field; rotations/],
  ['a blank wider than the reel', { width: 20, gap: 0, designs: [{ file: 'square.svg', ups: 1 }] }, /20 mm wide/],
])('%s: refused', (_, job, message) => {
  const { status, stderr } = reel(job, '--json', 'out.json');
  expect(status).toBe(2);
  expect(stderr).toMatch(message);
});

test('the report and the picture of a reel: no gripper edge, the machine direction instead', () => {
  const square = drawing('square.svg', '0,0 30,0 30,30 0,30', 30, 30);
  const { status, stdout } = reel({ width: 60, gap: 0, designs: [{ file: square, ups: 4, rotations: [0] }] }, '--effort', 'quick', '--svg', 'reel.svg', '--html', 'reel.html', '--pdf', 'reel.pdf');
  expect(status).toBe(0);
  expect(stdout).toMatch(/^4 blanks on a reel of 60 mm: cut-off 60 mm; the shortest possible; 100\.0 %/);
  expect(stdout).toContain('60 m = 60 mm × 1000');
  expect(stdout).toContain('4 000 blanks');
  const picture = readFileSync(join(folder, 'reel.svg'), 'utf8');
  expect(picture).toContain('MACHINE DIRECTION');
  expect(picture).not.toMatch(/GRIPPER|SIDE LAY|knives stay/);
  expect(readFileSync(join(folder, 'reel.html'), 'utf8')).toContain('MACHINE DIRECTION');
  expect(readFileSync(join(folder, 'reel.pdf')).subarray(0, 5).toString()).toBe('%PDF-');
});

test('in French: report, page and picture', () => {
  const square = drawing('square.svg', '0,0 30,0 30,30 0,30', 30, 30);
  const { stdout } = reel({ width: 60, gap: 0, designs: [{ file: square, ups: 4, rotations: [0] }] }, '--effort', 'quick', '--language', 'fr', '--html', 'fr.html');
  expect(stdout).toMatch(/^4 flans sur une bobine de 60 mm : longueur de coupe 60 mm ; on ne peut faire plus court ; 100,0 %/);
  const page = readFileSync(join(folder, 'fr.html'), 'utf8');
  expect(page).toContain('<html lang="fr">');
  expect(page).toContain('SENS MACHINE');
});

test('a bleed stays within reel and cut-off', () => {
  const square = drawing('square.svg', '0,0 30,0 30,30 0,30', 30, 30);
  const job = (width: number) => ({ width, gap: 4, bleed: 2, designs: [{ file: square, ups: 4, rotations: [0] }] });
  const { status, stdout } = reel(job(68), '--effort', 'quick', '--json', '-');
  expect(status).toBe(0);
  expect(JSON.parse(stdout)).toMatchObject({ sheet: { width: 68, height: 68 }, usable: { x: 2, y: 2, width: 64, height: 64 }, result: { lengthMm: 68 } });
  expect(reel(job(33), '--json', 'out.json')).toMatchObject({ status: 2, stderr: expect.stringContaining('needs 34 mm') });
});
