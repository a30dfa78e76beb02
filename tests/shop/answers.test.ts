import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, expect, test } from 'vitest';
import { chooseBlank } from '../../src/dieline/choose-blank.ts';
import { readDrawing } from '../../src/dieline/read-drawing.ts';
import { writeLayoutFile } from '../../src/layout/layout-file.ts';
import { inlineRunner } from '../../src/nesting/tasks.ts';
import { nest, prepareNest, type NestJob } from '../../src/pipeline/nest.ts';
import { answerTask, type NestAnswer, type NestTask } from '../../src/pipeline/nest-task.ts';
import { engineVersion } from '../../src/shop/answers/engine.ts';
import { answerLines, keepAnswer, keptAnswer, packAnswer, unpackAnswer } from '../../src/shop/answers/kept-answers.ts';
import { bareTask, named, taskFingerprint } from '../../src/shop/answers/task-fingerprint.ts';
import { openLibrary } from '../../src/shop/library/open-library.ts';
import { binary, sample, scratchFolder } from './support.ts';

const folder = scratchFolder();
const host = { runner: inlineRunner(), stop: () => undefined };
let job: NestJob;
let task: NestTask;
let answer: NestAnswer;

async function jobFor(name: string, id: string): Promise<NestJob> {
  const drawing = await readDrawing(readFileSync(sample('drawings', name)));
  return { id, blank: chooseBlank(drawing, undefined), drawing, layouts: 1, sheet: { width: 520, height: 360 }, settings: {}, machines: {} };
}

const taskOf = (one: NestJob, seed = 1): NestTask => {
  const { problem, design } = prepareNest(one);
  return { problem, design, layouts: 1, effort: 'quick', seed };
};

beforeAll(async () => {
  job = await jobFor('label-rounded.svg', 'FH-7');
  task = bareTask(taskOf(job));
  answer = await answerTask(task, host);
});

test('names play no part in a fingerprint; everything that can change the answer does', async () => {
  const key = taskFingerprint(task);
  expect(key).toMatch(/^[0-9a-f]{64}$/);
  expect(taskFingerprint(bareTask(taskOf(await jobFor('label-rounded.svg', 'another name'))))).toBe(key);
  const others = [
    taskOf(job, 2),
    { ...taskOf(job), effort: 'normal' as const },
    { ...taskOf(job), layouts: 2 },
    taskOf({ ...job, sheet: { width: 521, height: 360 } }),
    taskOf({ ...job, settings: { gap: 6.001 } }),
    taskOf({ ...job, rotations: [0] }),
    taskOf(await jobFor('label-round.svg', 'FH-7')),
  ].map((one) => taskFingerprint(bareTask(one)));
  expect(new Set([key, ...others]).size).toBe(others.length + 1);
});

test('a kept answer under a carton’s name is the file that nest would write, to the byte', async () => {
  const library = openLibrary(join(folder, 'one'), { create: true });
  expect(keepAnswer(library, 'task', answer)).toBe(true);
  expect(keepAnswer(library, 'task', answer)).toBe(false);
  const kept = keptAnswer(library, 'task')!;
  const direct = await nest(job, { effort: 'quick', seed: 1, ...host });
  expect(writeLayoutFile(named(kept.layouts[0].file, direct.design))).toBe(writeLayoutFile(direct.layouts[0].file));
  expect(kept.solution.limit).toEqual(JSON.parse(JSON.stringify(direct.limit)));
  expect(keptAnswer(library, 'another')).toBeUndefined();
  library.close();
});

test('an answer of another engine is kept beside this one’s and never taken for it', () => {
  const library = openLibrary(join(folder, 'two'), { create: true });
  library.run('INSERT INTO answer VALUES (?, ?, ?, ?, ?, ?)', 'task', 'earlier', '2026-01-01T00:00:00.000Z', 3, 9, Buffer.from(packAnswer(answer)));
  expect(keptAnswer(library, 'task')).toBeUndefined();
  keepAnswer(library, 'task', answer);
  expect(answerLines(library, 'task').map(({ engine }) => engine)).toEqual([engineVersion(), 'earlier']);
  expect(keptAnswer(library, 'task', 'earlier')).toBeDefined();
  library.close();
});

test('answers come from anywhere: one that is damaged or not sound is refused', () => {
  expect(unpackAnswer(packAnswer(answer)).layouts).toHaveLength(1);
  const packed = packAnswer(answer);
  expect(() => unpackAnswer(packed.subarray(0, packed.length / 2))).toThrow('answer-not-valid');
  expect(() => unpackAnswer(Buffer.from('no answer at all'))).toThrow('answer-not-valid');
  const [{ file, ranked }] = answer.layouts;
  const crowded = { ...file, placements: file.placements.map((placed, i) => (i === 1 ? { ...placed, x: file.placements[0].x + 1 } : placed)) };
  expect(() => unpackAnswer(packAnswer({ ...answer, layouts: [{ file: crowded as typeof file, ranked }] }))).toThrow('answer-not-valid');
});

test('the engine has a name that stays while its modules do', () => {
  expect(engineVersion()).toMatch(/^[0-9a-f]{16}$/);
  expect(engineVersion()).toBe(engineVersion());
});

test('nest with a library: the same question again is answered from it, to the byte; an earlier engine’s answer is told', () => {
  const ask = (json: string, ...more: string[]) => spawnSync(process.execPath, [binary, 'nest', sample('drawings', 'label-rounded.svg'), '--sheet', '520x360', '--effort', 'quick', '--library', join(folder, 'asked'), '--json', json, ...more], { encoding: 'utf8', cwd: folder });
  expect(ask('first.json').stderr).not.toContain('library');
  expect(ask('second.json').stderr).toContain('Answered from the library; found at 20');
  expect(readFileSync(join(folder, 'second.json')).equals(readFileSync(join(folder, 'first.json')))).toBe(true);
  expect(ask('other.json', '--gap', '7').stderr).not.toContain('Answered');
  const library = openLibrary(join(folder, 'asked'), { create: false });
  library.script(`UPDATE answer SET engine = 'earlier', ups = 2`);
  library.close();
  expect(ask('third.json').stderr).toMatch(/An earlier engine \(earlier\) found 2 ups .* both answers are kept/);
  expect(ask('fourth.json').stderr).toContain('Answered from the library');
});
