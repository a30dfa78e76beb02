/**
 * Published and proved counts against what a run reaches. Usage: tsx bench/must-reach.ts [effort] [words of the name …]
 */
import { cpus } from 'node:os';
import type { Effort } from '../src/nesting/effort.ts';
import { solve } from '../src/nesting/solve.ts';
import { solveStrip } from '../src/nesting/strip.ts';
import { inlineRunner } from '../src/nesting/tasks.ts';
import { polyominoes, rectangles, rounds, strips, trapezoids } from '../tests/support/must-reach.ts';

const [effort = 'quick', ...words] = process.argv.slice(2);
console.log(`node ${process.version}, ${cpus()[0]?.model}, effort ${effort}`);
let short = 0;
let seconds = 0;
for (const { name, problem, ups, source } of [...rectangles(), ...trapezoids(), ...polyominoes(), ...rounds()]) {
  if (!words.every((word) => name.includes(word))) continue;
  const started = process.cpuUsage();
  const solution = await solve(problem, { effort: effort as Effort, seed: 1, runner: inlineRunner(), stop: () => undefined });
  const { user, system } = process.cpuUsage(started);
  const reached = solution.best?.figures.ups ?? 0;
  short += reached < ups ? 1 : 0;
  seconds += (user + system) / 1e6;
  const verdict = reached < ups ? 'SHORT' : reached > ups ? 'BEYOND' : 'reached';
  console.log(
    `${name.padEnd(34)} ${String(ups).padStart(4)} ${verdict.padEnd(7)} ${String(reached).padStart(4)} limit ${String(solution.limit?.ups).padStart(4)} ${((user + system) / 1e6).toFixed(2).padStart(6)} s  ${solution.best?.source} [${source}]`,
  );
}
for (const { name, problem, length } of strips()) {
  if (!words.every((word) => name.includes(word))) continue;
  const started = process.cpuUsage();
  const solution = await solveStrip(problem, { effort: effort as Effort, seed: 1, runner: inlineRunner(), stop: () => undefined });
  const { user, system } = process.cpuUsage(started);
  const reached = solution.length / 1000;
  short += reached > length + 0.01 ? 1 : 0;
  seconds += (user + system) / 1e6;
  console.log(`${name.padEnd(34)} ${length.toFixed(3)} ${reached > length + 0.01 ? 'SHORT  ' : 'reached'} ${reached.toFixed(3)} ${((user + system) / 1e6).toFixed(2).padStart(6)} s`);
}
console.log(`${short} short, ${seconds.toFixed(1)} s`);
