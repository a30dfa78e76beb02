import { spawn, spawnSync, type ChildProcess } from 'node:child_process';
import { createServer } from 'node:net';
import { test } from 'vitest';

const found = spawnSync('redis-server', ['--version']).status === 0;

/** Tests with a real server: skipped loudly where there is none, failed where everything must be tested. */
export const withRedis: typeof test | typeof test.skip = (() => {
  if (found) return test;
  const message = 'redis-server was not found: the queue is not tested here (Debian: apt-get install redis-server)';
  if (process.env.CI) throw new Error(message);
  process.stderr.write(`\n!! ${message}\n\n`);
  return test.skip;
})();

export async function freePort(): Promise<number> {
  const server = createServer();
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const { port } = server.address() as { port: number };
  await new Promise((resolve) => server.close(resolve));
  return port;
}

export interface Redis {
  readonly port: number;
  /** Ends the server as a power cut would. */
  kill(): Promise<void>;
  start(): Promise<void>;
}

/** Where a server runs: on another host than this one, say. */
export interface Place {
  /** Written before the command. */
  readonly before?: readonly string[];
  readonly bind?: string;
}

/** A server of its own that keeps an append-only file, in its folder. Who starts it kills it. */
export async function startRedis(folder: string, password: string, more: readonly string[] = [], { before = [], bind = '127.0.0.1' }: Place = {}): Promise<Redis> {
  const port = await freePort();
  let running: ChildProcess;
  const start = async () => {
    const args = ['--port', String(port), '--bind', bind, '--dir', folder, '--appendonly', 'yes', '--appendfsync', 'always', '--save', '', '--requirepass', password, ...more];
    const [program, ...rest] = [...before, 'redis-server', ...args] as [string, ...string[]];
    running = spawn(program, rest, { stdio: ['ignore', 'pipe', 'ignore'] });
    await new Promise<void>((resolve, reject) => {
      running.stdout!.on('data', (text: Buffer) => String(text).includes('Ready to accept connections') && resolve());
      running.once('exit', () => reject(new Error('redis-server ended at once')));
    });
    running.removeAllListeners('exit');
  };
  const kill = () =>
    new Promise<void>((resolve) => {
      if (running.exitCode !== null || running.signalCode !== null) resolve();
      running.once('exit', () => resolve());
      running.kill('SIGKILL');
    });
  await start();
  return { port, kill, start };
}
