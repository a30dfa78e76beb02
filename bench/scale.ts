/**
 * What a batch costs beside the search: carton × sheet tasks at quick effort in threads of one process and over a queue,
 * each as the real command in real processes. Usage: npx tsx bench/scale.ts [tasks, default 300; up to 10 000] [cartons] [plain]
 * Wants a build (npm run build) and redis-server. Processor time says more than wall time on a machine that is shared.
 */
import { spawn, spawnSync, type ChildProcess } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createRandom } from '../src/base/random.ts';
import { dielineOfBlank, styledBlank } from '../src/dieline/styles/dieline-of-style.ts';
import { dielineSvg } from '../src/render/dieline-svg.ts';
import { printMachine } from './harness.ts';

const tasks = Math.min(10_000, Math.max(20, Number(process.argv[2] ?? 300)));
const binary = join(import.meta.dirname, '..', 'dist', 'cli', 'main.js');
const folder = mkdtempSync(join(tmpdir(), 'blankwright-scale-'));
const SHEETS = ['520x360', '500x350', '480x340', '460x330', '450x320', '440x315', '430x310', '420x300', '410x295', '400x290'];
const PORT = 7391;

printMachine();
console.log(`load of the machine at the start: ${readFileSync('/proc/loadavg', 'utf8').split(' ')[0]}`);
const asked = process.argv.slice(3);
const jobs = [
  { name: 'cartons', heading: 'Cartons, quick effort', draw: carton },
  { name: 'plain', heading: 'Rectangles, answered at once: what is left is the batch itself', draw: plainRectangle },
].filter(({ name }) => asked.length === 0 || asked.includes(name));
try {
  for (const { name, heading, draw } of jobs) {
    writeJob(name, Math.ceil(tasks / SHEETS.length), draw);
    console.log(`\n${heading}`);
    const alone = await inThreads(name, 1);
    await inThreads(name, 2);
    await overQueue(name, 1, alone);
    await overQueue(name, 2, alone);
  }
} finally {
  rmSync(folder, { recursive: true, force: true });
}

function carton(n: number): string {
  const random = createRandom(n + 1);
  const [length, width, depth] = [50 + random.below(30), 25 + random.below(15), 60 + random.below(40)];
  return dielineSvg(`carton ${n}`, dielineOfBlank(styledBlank('straight-tuck', { length, width, depth })));
}

function plainRectangle(n: number): string {
  const [width, height] = [60 + (n % 40), 80 + Math.floor(n / 40)];
  return `<svg xmlns="http://www.w3.org/2000/svg" width="300mm" height="300mm" viewBox="0 0 300 300"><g id="cut" fill="none" stroke="#000"><rect width="${width}" height="${height}"/></g></svg>`;
}

function writeJob(name: string, cartons: number, draw: (n: number) => string): void {
  mkdirSync(join(folder, name));
  for (let n = 0; n < cartons; n++) writeFileSync(join(folder, name, `${String(n).padStart(5, '0')}.svg`), draw(n));
  writeFileSync(join(folder, `${name}.json`), JSON.stringify({ name, cartons: name, sheets: SHEETS, yearly: 1000 }));
}

interface Measured {
  readonly seconds: number;
  readonly processor: number;
  readonly checksum: number;
  readonly count: number;
}

async function inThreads(job: string, threads: number): Promise<Measured> {
  const watch = watched(command('batch', `${job}.json`, '--library', `${job}-t${threads}`, '--workers', String(threads), '--json', `${job}-t${threads}.json`));
  const { seconds, processor, memory } = await watch.end;
  const { checksum, count } = resultOf(`${job}-t${threads}.json`);
  report(`${threads} thread${threads === 1 ? '' : 's'}`, count, seconds, [`${ms(processor, count)} processor`, `memory ${memory}`, `library ${bytesEach(`${job}-t${threads}`, count)}`, `checksum ${checksum}`]);
  return { seconds, processor, checksum, count };
}

async function overQueue(job: string, machines: number, alone: Measured): Promise<void> {
  const name = `${job}-q${machines}`;
  mkdirSync(join(folder, name));
  const server = watched(spawn('redis-server', ['--port', String(PORT), '--dir', join(folder, name), '--appendonly', 'yes', '--save', ''], { stdio: 'ignore' }));
  const address = ['--queue', `redis://127.0.0.1:${PORT}`];
  while (redis('PING') !== 'PONG') await pause(100);
  const workers = Array.from({ length: machines }, () => watched(command('work', ...address, '--workers', '1')));
  const coordinator = await watched(command('batch', `${job}.json`, ...address, '--library', `${name}-library`, '--json', `${name}.json`)).end;
  const { checksum, count } = resultOf(`${name}.json`);
  const commands = Number(/total_commands_processed:(\d+)/.exec(redis('INFO', 'stats'))?.[1]);
  const peak = Number(/used_memory_peak:(\d+)/.exec(redis('INFO', 'memory'))?.[1]) / 2 ** 20;
  const onDisk = spawnSync('du', ['-sb', join(folder, name)], { encoding: 'utf8' }).stdout.split('\t')[0];
  for (const worker of workers) worker.child.kill('SIGTERM');
  const ends = await Promise.all(workers.map(({ end }) => end));
  server.child.kill('SIGTERM');
  const { processor: servers } = await server.end;
  const inWorkers = ends.reduce((sum, { processor }) => sum + processor, 0);
  report(`${machines} worker${machines === 1 ? '' : 's'} on a queue`, count, coordinator.seconds, [
    `workers ${ms(inWorkers, count)} processor (${ms(inWorkers - alone.processor, count)} over one process)`,
    `coordinator ${ms(coordinator.processor, count)}, memory ${coordinator.memory}`,
    `server ${ms(servers, count)}, ${(commands / count).toFixed(1)} commands a task, ${peak.toFixed(1)} MB at most, ${Math.round(Number(onDisk) / count)} bytes written a task`,
    `checksum ${checksum}${checksum === alone.checksum ? '' : ' IS ANOTHER'}`,
  ]);
}

function command(...args: string[]): ChildProcess {
  return spawn(process.execPath, [binary, ...args], { cwd: folder, stdio: 'ignore' });
}

function redis(...args: string[]): string {
  return spawnSync('redis-cli', ['-p', String(PORT), ...args], { encoding: 'utf8' }).stdout.trim();
}

/** Follows a process by what Linux tells of it: processor seconds, and memory in the first and last third of its life. */
function watched(child: ChildProcess) {
  const start = performance.now();
  const sizes: number[] = [];
  let ticks = 0;
  const look = () => {
    try {
      const fields = readFileSync(`/proc/${child.pid}/stat`, 'utf8').replace(/^.*\) /, '').split(' ');
      ticks = Number(fields[11]) + Number(fields[12]);
      sizes.push((Number(fields[21]) * 4096) / 2 ** 20);
    } catch {
      // It has ended.
    }
  };
  const timer = setInterval(look, 100);
  const end = new Promise<{ seconds: number; processor: number; memory: string }>((resolve) => {
    child.on('exit', () => {
      clearInterval(timer);
      const third = Math.max(1, Math.floor(sizes.length / 3));
      const most = (part: readonly number[]) => Math.max(0, ...part).toFixed(0);
      resolve({ seconds: (performance.now() - start) / 1000, processor: ticks / 100, memory: `${most(sizes.slice(0, third))} → ${most(sizes.slice(-third))} MB` });
    });
  });
  return { child, end };
}

function resultOf(file: string): { checksum: number; count: number } {
  const { cartons } = JSON.parse(readFileSync(join(folder, file), 'utf8')) as { cartons: { sheets: { ups: number | null }[] }[] };
  const ups = cartons.flatMap(({ sheets }) => sheets.map((one) => one.ups ?? 0));
  return { checksum: ups.reduce((sum, own) => (Math.imul(sum, 31) + own) >>> 0, 0), count: ups.length };
}

function bytesEach(library: string, count: number): string {
  const size = ['', '-wal'].reduce((sum, ending) => sum + (existsSync(join(folder, library + ending)) ? statSync(join(folder, library + ending)).size : 0), 0);
  return `${Math.round(size / count)} bytes a task`;
}

function ms(seconds: number, count: number): string {
  return `${((1000 * seconds) / count).toFixed(1)} ms a task`;
}

function report(name: string, count: number, seconds: number, more: readonly string[]): void {
  console.log(`${name.padEnd(22)} ${count} tasks in ${seconds.toFixed(1)} s, ${(count / seconds).toFixed(2)} a second\n${more.map((line) => `    ${line}`).join('\n')}`);
}

function pause(milliseconds: number): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, milliseconds));
}
