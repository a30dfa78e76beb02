import { spawn, spawnSync, type ChildProcess } from 'node:child_process';
import { createServer } from 'node:net';
import { afterAll, test } from 'vitest';

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

/** A server of its own that keeps an append-only file, in its folder. Ended when the tests end. */
export async function startRedis(folder: string, password: string, more: readonly string[] = []): Promise<Redis> {
  const port = await freePort();
  let running: ChildProcess;
  const start = async () => {
    const args = ['--port', String(port), '--bind', '127.0.0.1', '--dir', folder, '--appendonly', 'yes', '--appendfsync', 'always', '--save', '', '--requirepass', password, ...more];
    running = spawn('redis-server', args, { stdio: ['ignore', 'pipe', 'ignore'] });
    await new Promise<void>((resolve, reject) => {
      running.stdout!.on('data', (text: Buffer) => String(text).includes('Ready to accept connections') && resolve());
      running.once('exit', () => reject(new Error('redis-server ended at once')));
    });
    running.removeAllListeners('exit');
  };
  const kill = () =>
    new Promise<void>((resolve) => {
      running.once('exit', () => resolve());
      running.kill('SIGKILL');
    });
  await start();
  afterAll(() => running.kill('SIGKILL'));
  return { port, kill, start };
}
