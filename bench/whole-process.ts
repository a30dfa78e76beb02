/**
 * What somebody waits for: the whole process `nest DRAWING --effort quick`, start to end, on every sample, beside the start of
 * an empty Node process in the same run. Wall time, and a checksum of the layout file.
 * Usage: node scripts/ready.mjs && tsx bench/whole-process.ts [effort] [words of the name …]
 */
import { spawnSync } from 'node:child_process';
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { performance } from 'node:perf_hooks';
import { printMachine } from './harness.ts';

const RUNS = 3;
const root = join(import.meta.dirname, '..');
const main = join(root, 'dist', 'cli', 'main.js');
const drawings = join(root, 'samples', 'drawings');
const [effort = 'quick', ...words] = process.argv.slice(2);

printMachine();
const empty = timed(['-e', '0']).median;
console.log(`${'an empty process'.padEnd(28)} ${empty.toFixed(2)} s`);
const ratios: number[] = [];
for (const name of readdirSync(drawings).filter((file) => words.every((word) => file.includes(word)))) {
  const { median, least, most, stdout } = timed([main, 'nest', join(drawings, name), '--sheet', '1020x720', '--blank', '1', '--effort', effort, '--json', '-']);
  const { ups, upperBound } = (JSON.parse(stdout) as { result: { ups: number; upperBound: number } }).result;
  ratios.push(median / empty);
  console.log(
    `${name.padEnd(28)} ${median.toFixed(2)} s (${least.toFixed(2)} … ${most.toFixed(2)}) ${(median / empty).toFixed(0).padStart(4)} × empty  ${ups} of at most ${upperBound} ups  checksum ${checksum(stdout)}`,
  );
}
ratios.sort((a, b) => a - b);
console.log(`median ${ratios[ratios.length >> 1]?.toFixed(0)} × an empty process, greatest ${ratios.at(-1)?.toFixed(0)} ×`);

interface Timed {
  readonly median: number;
  readonly least: number;
  readonly most: number;
  readonly stdout: string;
}

/** Wall seconds of the whole process over `RUNS` runs, and what the last one printed. */
function timed(args: readonly string[]): Timed {
  let stdout = '';
  const seconds = Array.from({ length: RUNS }, () => {
    const started = performance.now();
    const run = spawnSync(process.execPath, args, { encoding: 'utf8', maxBuffer: 1 << 26 });
    if (run.status !== 0 && run.status !== 1) throw new Error(run.stderr);
    stdout = run.stdout;
    return (performance.now() - started) / 1000;
  }).sort((a, b) => a - b);
  return { median: seconds[RUNS >> 1]!, least: seconds[0]!, most: seconds.at(-1)!, stdout };
}

function checksum(text: string): string {
  let sum = 0;
  for (let i = 0; i < text.length; i++) sum = (Math.imul(sum, 31) + text.charCodeAt(i)) >>> 0;
  return sum.toString(16);
}
