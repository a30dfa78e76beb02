/**
 * What each part of the search is worth: made-up jobs in rows; ups after the patterns, ups at the end, who found them,
 * limit, counted work, processor time. Usage: tsx bench/search-table.ts [effort] [first seed] [last seed] [run seed]
 */
import { cpus } from 'node:os';
import type { Effort } from '../src/nesting/effort.ts';
import type { Improvement } from '../src/nesting/incumbents.ts';
import { solve } from '../src/nesting/solve.ts';
import { inlineRunner } from '../src/nesting/tasks.ts';
import { generatedJob } from '../tests/support/carton-generator.ts';

const [effort = 'quick', first = '1', last = '16', seed = '1'] = process.argv.slice(2);
console.log(`node ${process.version}, ${cpus()[0]?.model}, effort ${effort}, seed ${seed}`);
console.log('job name                   patterns  ups limit  Mwork  cpu s  found by');
const totals = { patterns: 0, ups: 0, limit: 0, gap: 0, closed: 0, cpu: 0 };
const jobs = Number(last) - Number(first) + 1;
let checksum = 0;
for (let job = Number(first); job <= Number(last); job++) {
  const { name, problem } = generatedJob(job);
  const started = process.cpuUsage();
  const { best, limit, work, history } = await solve(problem, { effort: effort as Effort, seed: Number(seed), runner: inlineRunner(), stop: () => undefined });
  const { user, system } = process.cpuUsage(started);
  const cpu = (user + system) / 1e6;
  const ups = best?.figures.ups ?? 0;
  const byPatterns = Math.max(0, ...history.map(upsOfPattern));
  const bound = limit?.ups ?? 0;
  console.log(
    [String(job).padStart(3), name.padEnd(24), String(byPatterns).padStart(7), String(ups).padStart(4), String(bound).padStart(5), (work / 1e6).toFixed(1).padStart(6), cpu.toFixed(2).padStart(6), ` ${best?.source ?? ''}`].join(' '),
  );
  totals.patterns += byPatterns;
  totals.ups += ups;
  totals.limit += bound;
  totals.gap += ups > 0 ? (bound - ups) / ups : 0;
  totals.closed += bound === ups ? 1 : 0;
  totals.cpu += cpu;
  for (const { part, turn, x, y } of best?.placements ?? []) checksum = (Math.imul(checksum, 31) + part + 7 * turn + 13 * x + 29 * y) >>> 0;
}
console.log(
  `patterns ${totals.patterns}, ups ${totals.ups}, limit ${totals.limit}, mean (limit − ups)/ups ${((100 * totals.gap) / jobs).toFixed(1)} %, closed ${totals.closed} of ${jobs}, ${totals.cpu.toFixed(1)} s, checksum ${checksum.toString(16)}`,
);

function upsOfPattern(event: Improvement): number {
  return event.kind === 'layout' && !event.source.startsWith('free search') ? event.ups : 0;
}
