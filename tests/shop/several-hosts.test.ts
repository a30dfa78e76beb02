import { spawn, type ChildProcess } from 'node:child_process';
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, expect, onTestFinished, test } from 'vitest';
import { makeHosts, withHosts } from './hosts.ts';
import { startRedis, withRedis } from './redis.ts';
import { binary, ended, sample, scratchFolder } from './support.ts';

const folder = scratchFolder();
const PASSWORD = 'known-to-the-hosts';
const processes: ChildProcess[] = [];
afterAll(() => {
  for (const child of processes) child.kill('SIGKILL');
});

function start(before: readonly string[], ...args: string[]) {
  const [program, ...rest] = [...before, process.execPath, binary, ...args] as [string, ...string[]];
  const child = spawn(program, rest, { cwd: folder, stdio: ['ignore', 'pipe', 'pipe'], env: { ...process.env, BLANKWRIGHT_QUEUE_PASSWORD: PASSWORD } });
  processes.push(child);
  return { child, end: ended(child) };
}

/** Host 0 has the server, host 1 the coordinator and the library, the others are workers. */
(withHosts === test ? withRedis : test.skip)('several hosts, one of them cut off in the middle: every task once, the bytes of one machine', { timeout: 300_000 }, async () => {
  const hosts = makeHosts(4);
  mkdirSync(join(folder, 'redis'));
  const server = await startRedis(join(folder, 'redis'), PASSWORD, ['--protected-mode', 'no'], { before: hosts.on(0), bind: hosts.addressOf(0) });
  onTestFinished(() => server.kill());
  const cartons = ['tray', 'pillow', 'straight-tuck-small', 'hanging-card'].map((name) => sample('drawings', `${name}.svg`));
  writeFileSync(join(folder, 'job.json'), JSON.stringify({ name: 'several hosts', cartons, sheets: ['520x360', '450x320'], yearly: 1000 }));

  const queue = ['--queue', `redis://${hosts.addressOf(0)}:${server.port}`];
  const [first, second] = [2, 3].map((host) => start(hosts.on(host), 'work', ...queue, '--workers', '1', '--lease', '2'));
  const coordinator = start(hosts.on(1), 'batch', 'job.json', ...queue, '--library', 'shared', '--json', 'shared.json', '--progress');
  await new Promise<void>((resolve) => {
    coordinator.child.stderr!.on('data', (text: Buffer) => /[1-9]\d* of 8/.test(String(text)) && resolve());
    coordinator.child.once('exit', () => resolve());
  });
  hosts.unplug(2);
  await new Promise((resolve) => setTimeout(resolve, 3000));
  hosts.plugIn(2);
  expect((await coordinator.end).code).toBe(0);

  expect((await start([], 'batch', 'job.json', '--library', 'alone', '--workers', '1', '--json', 'alone.json').end).code).toBe(0);
  expect(readFileSync(join(folder, 'shared.json')).equals(readFileSync(join(folder, 'alone.json')))).toBe(true);
  for (const { child } of [first!, second!]) child.kill('SIGTERM');
  const done = await Promise.all([first!, second!].map(async ({ end }) => Number(/(\d+) tasks done/.exec((await end).stderr)?.[1] ?? 0)));
  expect(Math.max(...done)).toBeGreaterThan(0);
});
