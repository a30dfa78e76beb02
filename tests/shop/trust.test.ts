import { spawnSync } from 'node:child_process';
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import type { NestTask } from '../../src/pipeline/nest-task.ts';
import { packAnswer, unpackAnswer } from '../../src/shop/answers/kept-answers.ts';
import { readBatchJob } from '../../src/shop/batch/batch-job.ts';
import { checkedExecutor } from '../../src/shop/batch/checked-executor.ts';
import type { Done } from '../../src/shop/batch/executor.ts';
import { planCarton } from '../../src/shop/batch/plan.ts';
import computeTask, { checkPacked } from '../../src/shop/batch/task-thread.ts';
import { openLibrary } from '../../src/shop/library/open-library.ts';
import { binary, rectangle, sample, scratchFolder } from './support.ts';

/** What is doubtful is told, what contradicts itself is refused, and what a machine says is looked at before it is believed. */
const folder = scratchFolder();
const run = (...args: string[]) => spawnSync(process.execPath, [binary, ...args], { encoding: 'utf8', cwd: folder });
const write = (name: string, content: unknown) => writeFileSync(join(folder, name), typeof content === 'string' ? content : JSON.stringify(content));

/** An outline with a gap of a tenth of a millimetre, which reading closes. */
const repaired = '<svg xmlns="http://www.w3.org/2000/svg" width="120mm" height="120mm" viewBox="0 0 120 120"><g id="cut" fill="none" stroke="#000"><path d="M10 10H90V100H10V10.1"/></g></svg>';
const two = '<svg xmlns="http://www.w3.org/2000/svg" width="220mm" height="120mm" viewBox="0 0 220 120"><g id="cut" fill="none" stroke="#000"><rect x="10" y="10" width="80" height="90"/><rect x="110" y="10" width="70" height="90"/></g></svg>';

test('faults that reading a drawing warns of are told, counted and listed', () => {
  mkdirSync(join(folder, 'doubt'));
  for (let i = 0; i < 25; i++) write(join('doubt', `r${String(i).padStart(2, '0')}.svg`), repaired.replace('H90', `H${90 + i}`));
  write(join('doubt', 'whole.svg'), rectangle(60, 80));
  const added = run('library', 'add', 'doubt', '--library', 'doubt-library', '--json', 'taken.json');
  expect([added.status, added.stdout]).toEqual([1, expect.stringContaining('26 new, 0 changed, 0 unchanged, 0 refused')]);
  expect(added.stderr).toMatch(/^25 drawings were taken in but are in doubt[\s\S]*r00\.svg\n {2}warning: A gap of 0\.1 mm[\s\S]*… and 5 more; --json lists them all\.\n$/);
  const taken = JSON.parse(readFileSync(join(folder, 'taken.json'), 'utf8'));
  expect(taken.doubtful).toHaveLength(25);
  expect(taken.doubtful[0].reasons).toEqual(['A gap of 0.1 mm in the outline was closed.']);
  // Known already: not told again with every table of volumes.
  write('volumes.csv', 'number,yearly\nr00,1000\n');
  expect(run('library', 'add', 'volumes.csv', '--as', 'carton', '--library', 'doubt-library').status).toBe(0);

  write('doubt.json', { cartons: 'doubt', sheets: ['250x180'] });
  const batch = run('batch', 'doubt.json', '--library', 'doubt-batch', '--json', 'doubt-out.json');
  expect([batch.status, batch.stdout]).toEqual([1, expect.stringMatching(/Drawings in doubt: 25\n[\s\S]*r00: A gap of 0\.1 mm/)]);
  expect(JSON.parse(readFileSync(join(folder, 'doubt-out.json'), 'utf8')).doubtful).toHaveLength(25);
});

test('two things of one name that contradict one another are refused, both places named', () => {
  for (const [name, width] of [['north', 60], ['south', 70]] as const) {
    mkdirSync(join(folder, name));
    write(join(name, 'mint.svg'), rectangle(width, 80));
    write(join(name, `only-${name}.svg`), rectangle(width, 90));
  }
  const added = run('library', 'add', 'north', 'south', '--library', 'twins');
  expect([added.status, added.stdout]).toEqual([1, expect.stringContaining('2 new, 0 changed, 0 unchanged, 2 refused')]);
  expect(added.stderr).toMatch(/north.mint\.svg\n {2}error: .*carton mint is there more than once.*south.mint\.svg/);
  expect(added.stderr).toMatch(/south.mint\.svg\n {2}error: .*north.mint\.svg/);
  // A table that adds to a drawing contradicts nothing; one that says two things does.
  write('adds.csv', 'number,yearly\nonly-north,1000\n');
  expect(run('library', 'add', 'north', '--library', 'adding').status).toBe(0);
  expect(run('library', 'add', 'north', 'adds.csv', '--as', 'carton', '--library', 'adding')).toMatchObject({ status: 0, stdout: expect.stringContaining('0 new, 1 changed, 2 unchanged') });
  write('twice.csv', 'number,rack,ups\n4711,C4,12\n4711,C4,15\n4712,C5,9\n');
  expect(run('library', 'add', 'twice.csv', '--as', 'die', '--library', 'twice')).toMatchObject({ status: 1, stderr: expect.stringMatching(/line 2[\s\S]*line 3\. Give each[\s\S]*line 3[\s\S]*line 2\. Give each/) });
  // In a batch two rows of one name could never be told apart.
  write('twins.json', { cartons: ['north', 'south'], sheets: ['250x180'] });
  const batch = JSON.parse(run('batch', 'twins.json', '--library', 'twins-batch', '--json', '-').stdout);
  expect(batch.cartons.map(({ id }: { id: string }) => id)).toEqual(['only-north', 'only-south']);
  expect(batch.refused.map(({ id, reasons }: { id: string; reasons: string[] }) => [id, reasons.join()])).toEqual([[expect.stringMatching(/north/), expect.stringMatching(/south.mint/)], [expect.stringMatching(/south/), expect.stringMatching(/north.mint/)]]);
});

test('several blanks: the remedy is one that exists where it is said', () => {
  write('two.svg', two);
  const added = run('library', 'add', 'two.svg', '--library', 'several');
  expect(added).toMatchObject({ status: 2, stderr: expect.stringContaining('The drawing holds 2 blanks. Choose one with the field "blank".') });
  write('two.json', [{ number: 'a', drawing: 'two.svg', blank: 2 }]);
  expect(run('library', 'add', 'two.json', '--as', 'carton', '--library', 'several')).toMatchObject({ status: 0, stderr: '' });
  write('two-job.json', { cartons: [{ id: 'a', drawing: 'two.svg' }, { id: 'b', drawing: 'two.svg', blank: 2 }], sheets: ['250x180'] });
  const batch = JSON.parse(run('batch', 'two-job.json', '--library', 'several-batch', '--json', '-').stdout);
  expect([batch.cartons[0].id, batch.cartons[0].sheets[0].ups, batch.refused[0].reasons[0]]).toEqual(['b', 3, expect.stringContaining('the field "blank"')]);
  write('gang.json', { sheet: '520x360', designs: [{ file: 'two.svg', quantity: 100 }], forms: 1 });
  expect(run('gang', 'gang.json')).toMatchObject({ status: 2, stderr: expect.stringMatching(/^error: gang\.json: designs\[0\].*2 blanks\. Choose one with the field "blank"/) });
  write('reel.json', { width: 300, gap: 3, designs: [{ file: 'two.svg', ups: 1 }] });
  expect(run('reel', 'reel.json')).toMatchObject({ status: 2, stderr: expect.stringMatching(/reel\.json: designs\[0\].*the field "blank"/) });
  // The command that has the option still names it.
  expect(run('nest', 'two.svg', '--sheet', '520x360')).toMatchObject({ status: 2, stderr: expect.stringContaining('Choose one with --blank') });
});

test('that nothing fits is kept as an answer: asking again computes nothing', () => {
  // Fits by its box, but not beside the bar in the middle of the sheet.
  write('wide.svg', rectangle(150, 90));
  write('nothing.json', { cartons: ['wide.svg'], sheets: ['200x160'], settings: { bar: 'centre:20' } });
  const first = run('batch', 'nothing.json', '--library', 'nothing', '--progress', '--json', '-');
  expect(JSON.parse(first.stdout).cartons[0].sheets[0].ups).toBeNull();
  expect(first.stderr).toContain('1 of 1 tasks done, 0 of them known before');
  const again = run('batch', 'nothing.json', '--library', 'nothing', '--progress', '--json', '-');
  expect(again.stderr).toContain('1 of 1 tasks done, 1 of them known before');
  expect(again.stdout).toBe(first.stdout);
  const nest = (...more: string[]) => run('nest', 'wide.svg', '--sheet', '200x160', '--bar', 'centre:20', '--effort', 'quick', '--library', 'nothing-nest', ...more);
  expect(nest()).toMatchObject({ status: 2, stderr: expect.not.stringContaining('Answered from the library') });
  expect(nest()).toMatchObject({ status: 2, stderr: expect.stringMatching(/Answered from the library[\s\S]*error: wide/) });
});

/** One task, and what an honest machine answers. */
async function taskOf(drawing: Uint8Array, sheet: string, effort = 'quick'): Promise<{ task: NestTask; packed: Uint8Array }> {
  const library = openLibrary(join(folder, 'tasks'), { create: true });
  const job = readBatchJob({ cartons: 'x', sheets: [sheet], effort }, 'job', () => ({}));
  const { cells } = await planCarton(library, { kind: 'carton', id: 'x', content: { drawing: 'x' }, where: 'x', drawing: () => drawing }, job);
  library.close();
  const { task } = cells[0] as { task: NestTask };
  const done = (await computeTask(task)) as Extract<Done, { packed: unknown }>;
  return { task, packed: done.packed };
}

type Answer = ReturnType<typeof unpackAnswer>;
const tampered = (packed: Uint8Array, change: (answer: Answer) => void) => {
  const answer = structuredClone(unpackAnswer(packed)) as Answer;
  change(answer);
  return packAnswer(answer);
};
const limitOf = (answer: Answer) => answer.solution.limit as { ups: number };
const resultOf = (answer: Answer) => answer.layouts[0].file.result as Record<string, unknown>;

test('a limit that a machine states is recomputed, by closed forms and from its certificate', { timeout: 120_000 }, async () => {
  const byForm = await taskOf(Buffer.from(rectangle(90, 80)), '520x360');
  expect(unpackAnswer(byForm.packed).solution.limit.certificate).toBeUndefined();
  const byProof = await taskOf(readFileSync(sample('drawings', 'straight-tuck-small.svg')), '400x300', 'normal');
  expect(unpackAnswer(byProof.packed).solution.limit.certificate).toBeDefined();
  for (const { task, packed } of [byForm, byProof]) {
    expect(checkPacked({ task, packed })).toMatchObject({ ok: true });
    const ups = unpackAnswer(packed).layouts[0].file.placements.length;
    const lower = tampered(packed, (answer) => {
      (answer.layouts[0].file.placements as unknown[]).splice(0, 1);
      limitOf(answer).ups = ups - 1;
      Object.assign(resultOf(answer), { ups: ups - 1, upperBound: ups - 1 });
    });
    expect(checkPacked({ task, packed: lower })).toMatchObject({ ok: false, reason: expect.stringMatching(/is stated, only \d+ is proved/) });
    const brave = tampered(packed, (answer) => (limitOf(answer).ups = 1));
    expect(checkPacked({ task, packed: brave })).toMatchObject({ ok: false });
    const other = tampered(packed, (answer) => Object.assign(answer.layouts[0].file.rules, { gap: 0 }));
    expect(checkPacked({ task, packed: other })).toMatchObject({ ok: false, reason: expect.stringContaining('not for the sheet, rules or blank') });
  }
  expect(checkPacked({ task: byForm.task, packed: byProof.packed })).toMatchObject({ ok: false });
  expect(checkPacked({ task: byForm.task, packed: Buffer.from('no answer') })).toMatchObject({ ok: false });
});

test('what does not hold is computed here, and said', async () => {
  const { task, packed } = await taskOf(Buffer.from(rectangle(90, 80)), '520x360');
  const refused: string[] = [];
  const threads = { count: 1, compute: computeTask, check: async (one: NestTask, bytes: Uint8Array) => checkPacked({ task: one, packed: bytes }), close: async () => {} };
  const asked = async (done: Done) => checkedExecutor({ width: 1, run: async () => done, close: async () => {} }, threads, (reason) => refused.push(reason)).run('key', task);
  const upsOf = (done: Done) => ('packed' in done ? unpackAnswer(done.packed).layouts[0].file.placements.length : 0);
  const honest = upsOf({ packed });
  expect(upsOf(await asked({ packed }))).toBe(honest);
  expect(refused).toEqual([]);
  expect(upsOf(await asked({ packed: tampered(packed, (answer) => (limitOf(answer).ups = 1)) }))).toBe(honest);
  expect(refused).toHaveLength(1);
  expect(upsOf(await asked({ issues: [{ code: 'no-blank-fits', severity: 'error', where: 'blank' }] }))).toBe(honest);
});
