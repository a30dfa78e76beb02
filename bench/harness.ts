import { cpus } from 'node:os';

/**
 * Times small pieces of work in processor time, so that a busy machine spoils little: warmed up, then five rounds of a
 * tenth of a second each. Prints the median and the spread per call, and a checksum of the results, which must not change
 * when only speed was meant to.
 */

const ROUNDS = 5;
const ROUND_MS = 100;

export function printMachine(): void {
  console.log(`node ${process.version}, ${cpus()[0]?.model ?? 'unknown processor'}`);
}

/** `work` returns figures of its result; they go into the checksum. */
export function measure(name: string, work: () => readonly number[]): void {
  const checksum = work().reduce((sum, figure) => (Math.imul(sum, 31) + Math.round(figure)) >>> 0, 0);
  timeRound(work);
  const rounds = Array.from({ length: ROUNDS }, () => timeRound(work)).toSorted((a, b) => a - b);
  const [least, median, most] = [rounds[0], rounds[ROUNDS >> 1], rounds[ROUNDS - 1]].map((ms) => ms.toFixed(ms < 1 ? 4 : 2));
  console.log(`${name.padEnd(58)} ${median.padStart(9)} ms (${least} … ${most})  checksum ${checksum.toString(16)}`);
}

function timeRound(work: () => unknown): number {
  const start = process.cpuUsage();
  let calls = 0;
  let spent: number;
  do {
    work();
    calls++;
    const { user, system } = process.cpuUsage(start);
    spent = (user + system) / 1000;
  } while (spent < ROUND_MS);
  return spent / calls;
}
