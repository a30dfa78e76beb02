import { spawn, spawnSync } from 'node:child_process';
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { batchJobSchema, readBatchJob } from '../../src/shop/batch/batch-job.ts';
import { runBatch } from '../../src/shop/batch/run-batch.ts';
import { SetAside } from '../../src/shop/batch/executor.ts';
import computeTask from '../../src/shop/batch/task-thread.ts';
import { openLibrary } from '../../src/shop/library/open-library.ts';
import { entryNamed } from '../../src/shop/library/records.ts';
import { BAR_SVG } from '../support/bar-job.ts';
import { binary, ended, rectangle, root, sample, scratchFolder } from './support.ts';

const folder = scratchFolder();
const run = (...args: string[]) => spawnSync(process.execPath, [binary, ...args], { encoding: 'utf8', cwd: folder });
const write = (name: string, content: unknown) => writeFileSync(join(folder, name), typeof content === 'string' ? content : JSON.stringify(content));

/** Rectangles are answered in no time: their limit is met at once. They come in `sizes` different ones. */
function drawings(name: string, count: number, sizes: number, broken: (i: number) => boolean = () => false): void {
  mkdirSync(join(folder, name));
  for (let i = 0; i < count; i++) {
    const drawn = rectangle(60 + (i % sizes), 80);
    write(join(name, `c${String(i).padStart(3, '0')}.svg`), broken(i) ? drawn.slice(0, -12) : drawn);
  }
}

describe('batch', () => {
  test('savings a year add up by hand', () => {
    write('one.svg', rectangle(100, 100));
    write('hand.json', {
      name: 'by hand', cartons: [{ id: 'square', drawing: 'one.svg', yearly: 1_000_000 }], sheets: ['224x224', '324x224'], grammage: 300, boardPricePerTonne: 900,
      settings: { gripper: 13, tail: 10, sideMargins: 6, gap: 6, bleed: 3 },
    });
    const { status, stdout } = run('batch', 'hand.json', '--library', 'hand', '--json', '-');
    expect(status).toBe(0);
    // Usable width 224 − 12 = 212 and 312, depth 224 − 23 = 201: two blanks of 100 and a gap of 6 need 206, so 2 × 1 and
    // 2 × 1 (three need 312: they fit). 224 × 224: 2 ups, 25.088 m²/1000; 324 × 224: 3 ups, 24.192 m²/1000.
    const batch = JSON.parse(stdout);
    expect(batch.cartons[0].sheets.map(({ ups, boardM2PerThousand }: { ups: number; boardM2PerThousand: number }) => [ups, boardM2PerThousand])).toEqual([[2, 25.088], [3, 24.192]]);
    // 0.896 m² a thousand × 1 000 thousand = 896 m², × 0.3 kg = 268.8 kg, × 0.9 = 241.92.
    expect(batch.cartons[0]).toMatchObject({ usual: 0, best: 1, savingPerYear: { boardM2: 896, boardKg: 268.8, money: 241.92 } });
    expect(batch.total).toEqual({ boardM2: 896, boardKg: 268.8, money: 241.92 });
  });

  test('a die-cutter whose waste must come off with tools: what is counted strips, and the answers are kept apart', () => {
    write('bar.svg', BAR_SVG);
    const job = { cartons: [{ id: 'bar', drawing: 'bar.svg', yearly: 1000 }], sheets: ['1020x720', '172x124'], settings: { gap: 4, bleed: 2 }, rotations: [0] };
    write('free.json', job);
    write('tools.json', { ...job, cutter: { name: 'D', stripping: 'with-tools', strippingRule: 'must' } });
    const upsOf = (file: string) => JSON.parse(run('batch', file, '--library', 'strip', '--json', '-').stdout).cartons[0].sheets.map(({ ups }: { ups: number | null }) => ups);
    expect([upsOf('free.json')[0], upsOf('tools.json')[0], upsOf('tools.json')[0], upsOf('free.json')[0]]).toEqual([36, 30, 30, 36]);
  });

  test('a folder of 500 drawings of which 40 are broken gives 460 results and 40 reasons', () => {
    drawings('many', 500, 10, (i) => i % 25 < 2);
    write('many.json', { cartons: 'many', sheets: ['250x180'] });
    const { status, stdout } = run('batch', 'many.json', '--library', 'many-library', '--json', '-', '--html', 'many.html');
    expect(status).toBe(1);
    const batch = JSON.parse(stdout);
    expect(batch).toMatchObject({ format: 'blankwright-batch', version: 1, complete: true });
    expect(batch.cartons).toHaveLength(460);
    expect(batch.cartons.filter(({ best }: { best: number | null }) => best !== null).length).toBe(460);
    expect(batch.refused).toHaveLength(40);
    for (const { reasons } of batch.refused) expect(reasons.join()).not.toBe('');
    const page = readFileSync(join(folder, 'many.html'), 'utf8');
    expect(page.match(/<figure/g)).toHaveLength(24);
    expect(page).toContain('c000: The drawing is not valid XML');
  });

  test('the same bytes for any number of threads, and again from the library alone', () => {
    drawings('few', 6, 6);
    write('few.json', { cartons: ['few'], sheets: ['520x360', '450x320'], yearly: 1000 });
    const results = [['one', '1'], ['three', '3'], ['one', '2']].map(([library, workers]) => run('batch', 'few.json', '--library', library, '--workers', workers, '--json', '-', '--progress'));
    expect(results.map(({ status }) => status)).toEqual([0, 0, 0]);
    expect(results[1].stdout).toBe(results[0].stdout);
    expect(results[2].stdout).toBe(results[0].stdout);
    expect(results[0].stderr).toContain('12 of 12 tasks done, 0 of them known before');
    expect(results[2].stderr).toContain('12 of 12 tasks done, 12 of them known before');
    const library = openLibrary(join(folder, 'one'), { create: false });
    expect(entryNamed(library, 'batch', 'batch')).toMatchObject({ revision: 1, content: { format: 'blankwright-batch' } });
    library.close();
  });

  test('all live cartons of the library, each against the sheet it is bought on', () => {
    write('cartons.csv', `number,drawing,yearly,sheet,live\na,one.svg,1000,224x224,yes\nb,one.svg,,,yes\nc,one.svg,1000,,no\n`);
    expect(run('library', 'add', 'cartons.csv', '--library', 'live').status).toBe(0);
    write('live.json', { cartons: 'library', sheets: ['324x224'] });
    const batch = JSON.parse(run('batch', 'live.json', '--library', 'live', '--json', '-').stdout);
    expect(batch.cartons.map(({ id, usual, best, savingPerYear }: Record<string, unknown>) => [id, usual, best, savingPerYear !== null])).toEqual([['a', 1, 0, true], ['b', 0, 0, false]]);
    expect(batch.cartons[0].sheets[1].sheet).toEqual({ width: 224, height: 224, grain: null });
  });

  test('interrupted it says so and keeps what it has; run again it goes on; killed it loses nothing that was done', async () => {
    write('slow.json', { name: 'slow', cartons: ['reverse-tuck-small', 'straight-tuck-small', 'hanging-card'].map((name) => sample('drawings', `${name}.svg`)), sheets: ['520x360', '460x340'] });
    const start = (...more: string[]) => spawn(process.execPath, [binary, 'batch', 'slow.json', '--library', 'slow', '--workers', '1', ...more], { cwd: folder, stdio: ['ignore', 'pipe', 'pipe'] });
    const answers = () => {
      const library = openLibrary(join(folder, 'slow'), { create: true });
      const [{ count }] = library.rows<{ count: number }>('SELECT count(*) AS count FROM answer');
      library.close();
      return count;
    };
    const until = async (wanted: number) => {
      while (answers() < wanted) await new Promise((resolve) => setTimeout(resolve, 50));
    };
    const killed = start();
    const killedEnd = ended(killed);
    await until(1);
    killed.kill('SIGKILL');
    await killedEnd;
    const after = answers();
    expect(after).toBeGreaterThanOrEqual(1);
    const stopped = start('--json', 'stopped.json');
    const stoppedEnd = ended(stopped);
    await until(after + 1);
    stopped.kill('SIGINT');
    const { code, stdout } = await stoppedEnd;
    expect(code).toBe(1);
    expect(stdout).toContain('ended before it was done');
    expect(JSON.parse(readFileSync(join(folder, 'stopped.json'), 'utf8')).complete).toBe(false);
    const { stderr } = run('batch', 'slow.json', '--library', 'slow', '--progress', '--json', 'whole.json');
    const known = Number(/6 of 6 tasks done, (\d+) of them known before/.exec(stderr)![1]);
    expect(known).toBeGreaterThanOrEqual(after + 1);
    expect(JSON.parse(readFileSync(join(folder, 'whole.json'), 'utf8'))).toMatchObject({ complete: true });
  });

  test('another engine’s answer is told beside the new one', () => {
    write('told.json', { cartons: ['one.svg'], sheets: ['324x224'] });
    run('batch', 'told.json', '--library', 'told');
    const library = openLibrary(join(folder, 'told'), { create: false });
    library.script(`UPDATE answer SET engine = 'earlier', ups = 2`);
    library.close();
    const { stdout } = run('batch', 'told.json', '--library', 'told', '--json', '-');
    expect(JSON.parse(stdout).changed).toEqual([{ carton: 'one', sheet: { width: 324, height: 224, grain: null }, ups: 3, before: 2, engine: 'earlier' }]);
    expect(run('batch', 'told.json', '--library', 'told').stdout).toContain('one on 324 × 224: 2 ups before (engine earlier), 3 now; both are kept.');
  });

  test.each([
    ['a setting that is misspelt', { cartons: ['one.svg'], sheets: ['1x1'], settings: { gapp: 3 } }, /settings: gapp: there is no such field; gap seems/],
    ['a field that is not known', { cartons: ['one.svg'], sheets: ['1x1'], sheeets: 1 }, /not known here/],
    ['no sheets', { cartons: ['one.svg'], sheets: [] }, /sheets/],
    ['a sheet of nonsense', { cartons: ['one.svg'], sheets: ['large'] }, /sheets[\s\S]*size/],
    ['a drawing that is not there', { cartons: ['none.svg'], sheets: ['520x360'] }, /none\.svg: there is no such file/],
    ['an empty library', { cartons: 'library', sheets: ['520x360'] }, /not one carton/],
    ['a folder that is not there', { cartons: 'nowhere', sheets: ['520x360'] }, /nowhere/],
  ])('%s: exit code 2, and what to do', (_, job, message) => {
    write('bad.json', job);
    expect(run('batch', 'bad.json', '--library', 'bad', '--json', 'never.json')).toMatchObject({ status: 2, stderr: expect.stringMatching(message) });
    expect(() => readFileSync(join(folder, 'never.json'))).toThrow();
  });
});

test('a task that fails again and again is set aside with its message; the others are done, each once', async () => {
  const library = openLibrary(join(folder, 'poison'), { create: true });
  const job = readBatchJob({ cartons: 'x', sheets: ['520x360', '450x320'], yearly: 10 }, 'job', () => ({}));
  const offers = [90, 95, 90].map((width, i) => ({ kind: 'carton' as const, id: String(i), content: { drawing: 'x' }, where: 'x', drawing: () => Buffer.from(rectangle(width, 80)) }));
  const asked: string[] = [];
  const executor = {
    width: 2,
    close: async () => {},
    run: async (key: string, task: Parameters<typeof computeTask>[0]) => {
      asked.push(key);
      if (task.problem.sheet.width === 450_000 && task.problem.parts[0].outline[2].x === 95_000) throw new SetAside('it always ends like this');
      return computeTask(task);
    },
  };
  const results = await runBatch(job, offers, { library, executor, signal: new AbortController().signal, onProgress: () => {} });
  library.close();
  expect(results.map((result) => ('results' in result ? result.results.map((one) => ('ups' in one ? one.ups > 0 : 'setAside' in one ? one.setAside : 'issues')) : 'refused'))).toEqual([[true, true], [true, 'it always ends like this'], [true, true]]);
  // The first and the third are one outline: asked once.
  expect(asked).toHaveLength(4);
  expect(new Set(asked).size).toBe(4);
});

test('the sample job is a job', () => {
  const path = sample('jobs', 'batch-fernhollow.json');
  const job = readBatchJob(JSON.parse(readFileSync(path, 'utf8')), path, (file) => JSON.parse(readFileSync(sample('jobs', file), 'utf8')));
  expect(job).toMatchObject({ grammage: 300, pricePerTonne: 1120, currency: 'EUR', effort: 'quick' });
  expect(job.candidates).toHaveLength(4);
});

test('the published schema of a job is the one it is read by (UPDATE_SCHEMAS=1 writes it anew)', () => {
  const path = join(root, 'docs', 'batch-job.schema.json');
  const schema = `${JSON.stringify(z.toJSONSchema(batchJobSchema, { io: 'input' }), null, 2)}\n`;
  if (process.env['UPDATE_SCHEMAS']) writeFileSync(path, schema);
  expect(readFileSync(path, 'utf8')).toBe(schema);
});
